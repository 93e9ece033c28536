// SPDX-License-Identifier: GPL-3.0-or-later
// The block from above, and giving the holes the engine's numbers by tapping them in order.
#pragma once

#include "app/document/document.h"
#include "app/document/selection.h"

#include <QLabel>
#include <QPushButton>
#include <QWidget>

#include <vector>

namespace borewright {

class PlanView;

class PlanForm : public QWidget {
    Q_OBJECT
public:
    PlanForm(Document& document, Selection& selection, QWidget* parent = nullptr);
    // True while taps give numbers.
    [[nodiscard]] bool isNumbering() const { return m_numbering; }

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    void start();
    void tap(int bore);
    void finish();
    void leave();
    void say();

    Document& m_document;
    PlanView* m_plan;
    QLabel* m_sentence;
    QPushButton* m_button;
    bool m_numbering = false;
    std::vector<int> m_tapped;
};

} // namespace borewright
