// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/measure/measure_page.h"

#include "app/measure/grid_view.h"
#include "app/measure/next_panel.h"
#include "app/measure/story_bar.h"
#include "app/measure/strike_bar.h"
#include "app/measure/study_page.h"
#include "app/measure/survey_bar.h"
#include "app/measure/survey_form.h"
#include "app/pictures/plan_view.h"
#include "app/pictures/section_view.h"

#include <QShortcut>
#include <QSplitter>
#include <QStackedWidget>
#include <QVBoxLayout>

namespace borewright {

MeasurePage::MeasurePage(const PageContext& context, QWidget* parent)
    : QWidget(parent)
    , m_context(context)
    , m_walk(context)
    , m_stack(new QStackedWidget(this))
    , m_middle(new QSplitter(Qt::Horizontal, this))
    , m_bar(new SurveyBar(context, this))
    , m_plan(new PlanView(context.document, context.selection, this))
    , m_grid(new GridView(context, m_walk, this))
    , m_section(new SectionView(context.document, context.selection, this))
    , m_stories(new StoryBar(context, this))
    , m_strike(new StrikeBar(this))
    , m_next(new NextPanel(context, m_walk, this))
    , m_form(new SurveyForm(context, this))
    , m_study(new StudyPage(context, this)) {
    build();
    connectParts();
    addKeys();
}

void MeasurePage::build() {
    m_stack->addWidget(buildBench());
    m_stack->addWidget(m_form);
    m_stack->addWidget(m_study);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_stack);
}

QWidget* MeasurePage::buildBench() {
    m_middle->addWidget(m_plan);
    m_middle->addWidget(m_grid);
    m_middle->addWidget(m_section);
    m_middle->setStretchFactor(0, 0);
    m_middle->setStretchFactor(1, 3);
    m_middle->setStretchFactor(2, 2);
    m_middle->setSizes({205, 640, 305});
    m_middle->setChildrenCollapsible(false);
    auto* bench = new QWidget(this);
    auto* layout = new QVBoxLayout(bench);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(0);
    layout->addWidget(m_bar);
    layout->addWidget(m_middle, 1);
    layout->addWidget(m_stories);
    layout->addWidget(m_strike);
    layout->addWidget(m_next);
    return bench;
}

void MeasurePage::connectParts() {
    connect(m_bar, &SurveyBar::newSurvey, this, &MeasurePage::startSurvey);
    connect(m_bar, &SurveyBar::editSurvey, this, [this] {
        m_form->openFor(m_context.selection.survey());
        m_stack->setCurrentWidget(m_form);
    });
    connect(m_bar, &SurveyBar::repeatability, this, [this] {
        m_stack->setCurrentWidget(m_study);
        m_study->open();
    });
    connect(m_study, &StudyPage::closed, this, [this](const QString& sentence) {
        backToBench();
        m_next->tell(sentence, false);
    });
    connect(m_bar, &SurveyBar::zeroCheck, this, [this] {
        m_walk.startZeroCheck();
        m_next->focusEntry();
    });
    connect(m_bar, &SurveyBar::showingChosen, this,
            [this](GridModel::Showing showing) { m_grid->setShowing(showing); });
    connect(m_form, &SurveyForm::closed, this, &MeasurePage::backToBench);
    connect(m_grid, &GridView::askStrike, m_strike, &StrikeBar::ask);
    connect(m_strike, &StrikeBar::reasonGiven, this, &MeasurePage::strike);
    connect(m_strike, &StrikeBar::left, this, [this] { m_grid->setFocus(); });
    connect(m_grid, &GridView::refused, this,
            [this](const QString& why) { m_next->tell(why, true); });
    connect(m_grid, &GridView::odd, this,
            [this](const QString& why) { m_next->tell(tr("Kept, but odd: %1.").arg(why), false); });
    connect(m_grid, &GridView::done, this,
            [this](const QString& what) { m_next->tell(what, false); });
    connect(m_stories, &StoryBar::refused, this,
            [this](const QString& why) { m_next->tell(why, true); });
    connect(m_stories, &StoryBar::done, this,
            [this](const QString& what) { m_next->tell(what, false); });
    connect(m_stories, &StoryBar::left, this, &MeasurePage::focusEntry);
    connect(m_stories, &StoryBar::measureAgain, this, [this](const Station& station) {
        m_context.selection.setStation(station);
        focusEntry();
    });
    connect(m_section, &SectionView::activated, this, &MeasurePage::focusGrid);
    connect(&m_context.document, &Document::changed, this, [this](Change change) {
        if (change == Change::everything) followDocument();
    });
    followDocument();
}

void MeasurePage::addKeys() {
    const auto add = [this](const QKeySequence& key, auto action) {
        auto* shortcut = new QShortcut(key, this);
        shortcut->setContext(Qt::WidgetWithChildrenShortcut);
        connect(shortcut, &QShortcut::activated, this, action);
    };
    add(Qt::Key_F8, [this] {
        m_walk.startZeroCheck();
        m_next->focusEntry();
    });
    add(Qt::Key_F9, [this] { m_stories->next(); });
    add(Qt::Key_F6, [this] { m_grid->hasFocus() ? focusEntry() : focusGrid(); });
}

void MeasurePage::followDocument() {
    m_strike->hide();
    m_stack->setCurrentIndex(0);
}

void MeasurePage::setBench(bool bench) {
    if (bench == m_bench) return;
    m_bench = bench;
    m_plan->setVisible(!bench);
    m_grid->setVisible(!bench);
    m_bar->setVisible(!bench);
    m_next->setBench(bench);
    focusEntry();
    emit benchChanged(bench);
}

void MeasurePage::startSurvey() {
    m_stack->setCurrentWidget(m_form);
    m_form->openNew();
}

void MeasurePage::backToBench() {
    m_stack->setCurrentIndex(0);
    focusEntry();
}

void MeasurePage::focusEntry() {
    m_next->focusEntry();
}

void MeasurePage::focusGrid() {
    m_stack->setCurrentIndex(0);
    m_grid->setFocus();
}

void MeasurePage::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    if (m_stack->currentIndex() == 0) focusEntry();
}

void MeasurePage::strike(const QString& reason) {
    Document& document = m_context.document;
    const auto edit =
        strikeStations(document.workbook(), m_context.selection.survey(),
                       m_grid->selectedStations(), {reason.toStdString(), document.now()});
    m_grid->setFocus();
    if (!edit) return;
    const auto done = document.edit(*edit, tr("strike out"));
    m_next->tell(done ? tr("Struck out; the sheet shows it with its reason.")
                      : QString::fromStdString(done.error().message()),
                 !done);
}

} // namespace borewright
