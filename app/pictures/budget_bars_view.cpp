// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pictures/budget_bars_view.h"

namespace borewright {

BudgetBarsView::BudgetBarsView(Document& document, Selection& selection, QWidget* parent)
    : PictureView(document, selection, tr("Where the doubt comes from"), parent) {}

void BudgetBarsView::rebuild() {
    const SurveyResult* survey = findResult(m_document.results(), m_selection.survey());
    m_data = survey != nullptr ? budgetBarsData(survey->doubts.budget, m_document.units())
                               : BudgetBarsData{};
    if (survey == nullptr) m_data.friendly = tr("Nothing has been measured yet.");
}

QString BudgetBarsView::describe() const {
    return describeBudgetBars(m_data);
}

void BudgetBarsView::paint(QPainter& painter, const QRectF& rect) {
    paintBudgetBars(painter, rect, m_data, style());
}

} // namespace borewright
