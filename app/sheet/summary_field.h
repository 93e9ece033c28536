// SPDX-License-Identifier: GPL-3.0-or-later
// The customer's sentences as a field of several lines, told once when the user leaves it.
#pragma once

#include <QPlainTextEdit>

namespace borewright {

class SummaryField : public QPlainTextEdit {
    Q_OBJECT
public:
    explicit SummaryField(QWidget* parent = nullptr);

    // Shows what the data hold; leaves alone what the user is typing at this moment.
    void showData(const QString& text);
    // Tells what stands here if it was changed.
    void commitNow();

signals:
    void committed(const QString& text);

protected:
    void focusOutEvent(QFocusEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    QString m_shown;
};

} // namespace borewright
