// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/judge/doubt_page.h"

#include "app/context/when_shown.h"
#include "app/judge/doubt_text.h"
#include "app/pictures/budget_bars_view.h"
#include "app/pictures/reading_words.h"
#include "core/results/doubt_words.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QStackedWidget>
#include <QTableWidget>
#include <QVBoxLayout>

namespace borewright {

DoubtPage::DoubtPage(Document& document, Selection& selection, QWidget* parent)
    : QWidget(parent)
    , m_document(document)
    , m_selection(selection)
    , m_line(new QLabel(this))
    , m_whole(new QPushButton(tr("Tab&le"), this))
    , m_sources(new QStackedWidget(this))
    , m_table(new QTableWidget(this))
    , m_sums(new QLabel(this))
    , m_words(new QLabel(this)) {
    m_line->setAccessibleName(tr("How far a figure may be off"));
    m_line->setWordWrap(true);
    m_line->setTextInteractionFlags(Qt::TextSelectableByMouse);
    m_whole->setCheckable(true);
    m_whole->setToolTip(tr("Shows the whole budget as a table instead of bars"));
    auto* head = new QHBoxLayout;
    head->addWidget(m_line, 1);
    head->addWidget(m_whole);
    auto* row = new QHBoxLayout;
    row->setSpacing(24);
    row->addWidget(buildSources(), 3);
    row->addWidget(buildWords(), 2);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 8, 0, 0);
    layout->addLayout(head);
    layout->addLayout(row, 1);
    connect(m_whole, &QPushButton::toggled, this,
            [this](bool whole) { m_sources->setCurrentIndex(whole ? 1 : 0); });
    auto* whenShown = new WhenShown(this, [this](Change) { refresh(); });
    connect(&document, &Document::changed, whenShown, &WhenShown::follow);
    connect(&selection, &Selection::changed, whenShown,
            [whenShown] { whenShown->follow(Change::readings); });
    refresh();
}

QWidget* DoubtPage::buildSources() {
    m_table->setAccessibleName(tr("The budget, a row a source"));
    m_table->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->setTabKeyNavigation(false);
    m_table->setShowGrid(false);
    m_table->setFrameShape(QFrame::NoFrame);
    m_table->setWordWrap(false);
    m_table->verticalHeader()->hide();
    m_table->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    m_table->horizontalHeader()->setHighlightSections(false);
    m_sums->setAccessibleName(tr("What the budget comes to"));
    m_sums->setWordWrap(true);
    m_sums->setTextInteractionFlags(Qt::TextSelectableByMouse);
    auto* whole = new QWidget(m_sources);
    auto* layout = new QVBoxLayout(whole);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_table, 1);
    layout->addWidget(m_sums);
    m_sources->addWidget(new BudgetBarsView(m_document, m_selection, m_sources));
    m_sources->addWidget(whole);
    return m_sources;
}

QWidget* DoubtPage::buildWords() {
    m_words->setAccessibleName(tr("What would help, and what to beware of"));
    m_words->setWordWrap(true);
    m_words->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    m_words->setTextInteractionFlags(Qt::TextSelectableByMouse);
    auto* scroll = new QScrollArea(this);
    scroll->setAccessibleName(m_words->accessibleName());
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setWidgetResizable(true);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll->setWidget(m_words);
    return scroll;
}

void DoubtPage::refresh() {
    const SurveyResult* survey = findResult(m_document.results(), m_selection.survey());
    const bool known = survey != nullptr && survey->doubts.budget.known();
    m_line->setVisible(survey != nullptr);
    m_whole->setVisible(known);
    if (!known) m_whole->setChecked(false);
    m_words->setText(survey != nullptr ? doubt_text::page(*survey, m_document.units()) : QString());
    if (survey == nullptr) return;
    m_line->setText(qs(trustWords(survey->doubts.budget, m_document.units())));
    fillTable(*survey);
}

void DoubtPage::fillTable(const SurveyResult& survey) {
    const DisplayUnits& units = m_document.units();
    const QStringList heads = budgetHeads(units);
    const auto rows = budgetRows(survey.doubts.budget, units);
    m_table->setColumnCount(static_cast<int>(heads.size()));
    m_table->setHorizontalHeaderLabels(heads);
    m_table->setRowCount(static_cast<int>(rows.size()));
    for (std::size_t r = 0; r < rows.size(); ++r)
        for (qsizetype c = 0; c < rows[r].size(); ++c) {
            auto* item = new QTableWidgetItem(rows[r][c]);
            const bool words = c < 2 || c == 3;
            item->setTextAlignment((words ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignVCenter);
            m_table->setItem(static_cast<int>(r), static_cast<int>(c), item);
        }
    m_sums->setText(budgetSums(survey.doubts.budget, units).join(' '));
}

} // namespace borewright
