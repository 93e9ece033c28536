// SPDX-License-Identifier: GPL-3.0-or-later
// One line that asks why readings are struck out. They stay in the workbook with the reason.
#pragma once

#include <QLabel>
#include <QLineEdit>
#include <QWidget>

namespace borewright {

class StrikeBar : public QWidget {
    Q_OBJECT
public:
    explicit StrikeBar(QWidget* parent = nullptr);
    void ask(int readings);

signals:
    void reasonGiven(const QString& reason);
    void left();

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    QLabel* m_question;
    QLineEdit* m_reason;
};

} // namespace borewright
