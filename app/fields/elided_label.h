// SPDX-License-Identifier: GPL-3.0-or-later
// A quiet line that never breaks: where the room is short its end gives way to dots, and the whole
// is said where the pointer rests and to a screen reader.
#pragma once

#include <QLabel>

namespace borewright {

class ElidedLabel : public QLabel {
    Q_OBJECT
public:
    explicit ElidedLabel(QWidget* parent = nullptr);
    void setText(const QString& line, const QString& whole);

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void elide();
    QString m_line;
};

} // namespace borewright
