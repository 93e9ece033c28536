// SPDX-License-Identifier: GPL-3.0-or-later
// Pistons: which goes where, at what clearance; the pistons as measured; what the clearance may be;
// bores still to be honed.
#pragma once

#include "app/context/page_context.h"

#include <QLabel>
#include <QPushButton>
#include <QWidget>

namespace borewright {

class FinishForm;
class FitLimitsForm;
class HotForm;
class MatchModel;
class MatchView;
class PairPanel;
class PistonModel;
class RecordForm;
class Sentences;
class SkirtForm;
class Fold;

class PistonsTab : public QWidget {
    Q_OBJECT
public:
    explicit PistonsTab(const PageContext& context, QWidget* parent = nullptr);
    void refresh(Change change);

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void connectParts();
    QWidget* buildContent();
    QWidget* buildMatching();
    QWidget* buildPistons();
    void turnPair(const QModelIndex& index);
    void takeMatching();
    void freePairs();
    void chooseCell();
    void choosePiston(int row);
    void refreshVerbs();
    void change(FitRecord fit, const QString& step);

    PageContext m_context;
    MatchModel* m_matches;
    PistonModel* m_pistons;
    QLabel* m_headline;
    Sentences* m_sentences;
    QLabel* m_legend;
    QLabel* m_refusal;
    QWidget* m_matching = nullptr;
    MatchView* m_table;
    PairPanel* m_pair;
    QPushButton* m_fix;
    QPushButton* m_take;
    QPushButton* m_free;
    RecordForm* m_form;
    FitLimitsForm* m_limits;
    SkirtForm* m_skirt;
    FinishForm* m_finish;
    HotForm* m_hot;
    Fold* m_skirtFold = nullptr;
    Fold* m_finishFold = nullptr;
    bool m_pistonsFirst = false; // no bore is ready for its piston yet
};

} // namespace borewright
