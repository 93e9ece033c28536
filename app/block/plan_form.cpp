// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/block/plan_form.h"

#include "app/block/block_verbs.h"
#include "app/fields/fold.h"
#include "app/pictures/plan_view.h"

#include <QKeyEvent>
#include <QVBoxLayout>

#include <algorithm>

namespace borewright {

PlanForm::PlanForm(Document& document, Selection& selection, QWidget* parent)
    : QWidget(parent)
    , m_document(document)
    , m_plan(new PlanView(document, selection, this))
    , m_sentence(makePassingWord({}, this))
    , m_button(new QPushButton(this)) {
    m_plan->setNumbersOnly(true);
    m_plan->setMinimumHeight(240);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(m_plan, 1);
    column->addWidget(m_sentence);
    column->addWidget(m_button, 0, Qt::AlignLeft);
    connect(m_plan, &PlanView::clicked, this, &PlanForm::tap);
    connect(m_button, &QPushButton::clicked, this, [this] { m_numbering ? finish() : start(); });
    connect(&document, &Document::changed, this, [this](Change change) {
        if (change == Change::everything) leave();
    });
    say();
}

void PlanForm::start() {
    m_numbering = true;
    m_tapped.clear();
    m_plan->setFocus();
    say();
}

void PlanForm::tap(int bore) {
    if (!m_numbering || std::ranges::find(m_tapped, bore) != m_tapped.end()) return;
    m_tapped.push_back(bore);
    if (m_tapped.size() == m_document.workbook().block.bores.size()) return finish();
    say();
}

// What was not tapped follows in the order it had.
void PlanForm::finish() {
    if (!m_tapped.empty())
        (void)m_document.edit(numbered(m_document.workbook().block, m_tapped),
                              tr("numbers of the bores"));
    leave();
}

void PlanForm::leave() {
    m_numbering = false;
    m_tapped.clear();
    say();
}

void PlanForm::say() {
    if (m_numbering)
        m_sentence->setText(
            tr("Tap the hole that is number %1 on the engine. Esc leaves them as they were.")
                .arg(m_tapped.size() + 1));
    else
        m_sentence->setText(tr("Numbers as the engine has them, not as the bench sees them."));
    m_button->setText(m_numbering ? tr("That is all") : tr("Number the bores"));
    m_button->setAccessibleName(m_button->text());
}

void PlanForm::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape && m_numbering) return leave();
    QWidget::keyPressEvent(event);
}

} // namespace borewright
