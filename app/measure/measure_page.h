// SPDX-License-Identifier: GPL-3.0-or-later
// The page at the bench: the block from above, the grid of readings, the section of the bore being
// read, and the next reading in large type. Answers: what do I read next, and what did it become?
#pragma once

#include "app/measure/entry_walk.h"

#include <QWidget>

class QSplitter;
class QStackedWidget;

namespace borewright {

class GridView;
class NextPanel;
class PlanView;
class SectionView;
class StoryBar;
class StrikeBar;
class StudyPage;
class SurveyBar;
class SurveyForm;

class MeasurePage : public QWidget {
    Q_OBJECT
public:
    explicit MeasurePage(const PageContext& context, QWidget* parent = nullptr);

    // Large type: the grid gives way to the next reading and the section.
    void setBench(bool bench);
    [[nodiscard]] bool isBench() const { return m_bench; }
    // Opens the form of a new survey.
    void startSurvey();
    // To where the number pad types.
    void focusEntry();
    // To the chosen station's cell in the grid.
    void focusGrid();

signals:
    void benchChanged(bool bench);

protected:
    void showEvent(QShowEvent* event) override;

private:
    void build();
    QWidget* buildBench();
    void connectParts();
    void addKeys();
    void strike(const QString& reason);
    void backToBench();
    void followDocument();

    PageContext m_context;
    bool m_bench = false;
    EntryWalk m_walk;
    QStackedWidget* m_stack;
    QSplitter* m_middle;
    SurveyBar* m_bar;
    PlanView* m_plan;
    GridView* m_grid;
    SectionView* m_section;
    StoryBar* m_stories;
    StrikeBar* m_strike;
    NextPanel* m_next;
    SurveyForm* m_form;
    StudyPage* m_study;
};

} // namespace borewright
