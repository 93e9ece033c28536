// SPDX-License-Identifier: GPL-3.0-or-later
// A sentence across the top of the window, for what the user should know but need not answer:
// a file that was refused, a save that failed. Never a box that stops the work.
#pragma once

#include <QFrame>

class QLabel;
class QToolButton;

namespace borewright {

class Banner : public QFrame {
    Q_OBJECT
public:
    explicit Banner(QWidget* parent = nullptr);
    void say(const QString& sentence);
    void clear();
    [[nodiscard]] QString sentence() const;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    QLabel* m_label;
};

} // namespace borewright
