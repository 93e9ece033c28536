// SPDX-License-Identifier: GPL-3.0-or-later
// The page that answers: what next with the hone? The sentence first; the bores, the drawing of the
// chosen one and what he does with it; beneath, the plan, the log and what all of it rests on.
#pragma once

#include "app/context/page_context.h"
#include "app/hone/hone_search.h"

#include <QTabWidget>
#include <QWidget>

class QLabel;
class QProgressBar;
class QPushButton;

namespace borewright {

class BoreList;
class Fold;
class HoneSectionView;
class LogTab;
class OwnForm;
class PlanTab;
class SetUpPanel;
class StagesTab;
class StonesTab;
class TicksTab;
class ToolTab;

class HonePage : public QWidget {
    Q_OBJECT
public:
    explicit HonePage(const PageContext& context, QWidget* parent = nullptr);
    // Waits until what is being searched has been found: for pictures and tests.
    void settle();
    [[nodiscard]] HoneSearch& search() { return *m_search; }

signals:
    void measureAsked(); // to the Measure page: a check waits there

protected:
    void showEvent(QShowEvent* event) override;

private:
    QWidget* buildHead();
    QWidget* buildMiddle();
    QWidget* buildTabs();
    QWidget* buildCautions();
    void connectParts();
    void addKeys();
    void follow(Change change);
    void refresh(bool anew);
    void refreshOutlook();
    void refreshHead();
    [[nodiscard]] BoreOutlook asRead(BoreOutlook outlook) const;
    void askIfOld();
    void openOwn();
    void showOwn();
    void dragged(int window, Length from, Length to);

    PageContext m_context;
    HoneSearch* m_search;
    QLabel* m_headline;
    QProgressBar* m_progress;
    QPushButton* m_next;
    QPushButton* m_usual;
    BoreList* m_bores;
    HoneSectionView* m_section;
    SetUpPanel* m_panel;
    QTabWidget* m_tabs;
    PlanTab* m_plan;
    OwnForm* m_own;
    LogTab* m_log;
    StonesTab* m_stones;
    ToolTab* m_tool;
    StagesTab* m_stages;
    TicksTab* m_ticks;
    int m_boreShown = 0;
    bool m_anew = false; // another workbook came while nobody looked
};

} // namespace borewright
