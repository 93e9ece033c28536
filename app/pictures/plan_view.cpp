// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pictures/plan_view.h"

#include <QHelpEvent>
#include <QKeyEvent>
#include <QToolTip>

#include <algorithm>

namespace borewright {

PlanView::PlanView(Document& document, Selection& selection, QWidget* parent)
    : PictureView(document, selection, tr("The block from above"), parent) {}

void PlanView::setNumbersOnly(bool on) {
    m_numbersOnly = on;
    markOld();
}

const PlanData& PlanView::data() {
    freshen();
    return m_data;
}

void PlanView::rebuild() {
    m_data = m_numbersOnly ? planOfNumbers(m_document.workbook().block, m_selection.bore())
                           : planData(m_document.workbook(), m_document.surveyResults(),
                                      m_selection.survey(), m_selection.bore());
}

QString PlanView::describe() const {
    return describePlan(m_data);
}

void PlanView::paint(QPainter& painter, const QRectF& rect) {
    paintPlan(painter, rect, m_data, style());
}

bool PlanView::event(QEvent* event) {
    if (event->type() != QEvent::ToolTip) return PictureView::event(event);
    freshen();
    const auto* help = static_cast<QHelpEvent*>(event);
    const int number = planHit(pictureRect(), m_data, style(), help->pos());
    const auto bore = std::ranges::find(m_data.bores, number, &PlanBore::number);
    if (bore == m_data.bores.end()) {
        QToolTip::hideText();
        return true;
    }
    QString text = tr("Bore %1").arg(number);
    if (!bore->word.isEmpty()) text += QStringLiteral(": ") + bore->word;
    if (!bore->why.isEmpty()) text += QStringLiteral(" (") + bore->why + QStringLiteral(")");
    QToolTip::showText(help->globalPos(), text, this);
    return true;
}

void PlanView::mousePressEvent(QMouseEvent* event) {
    freshen();
    const int bore = planHit(pictureRect(), m_data, style(), event->position());
    if (event->button() != Qt::LeftButton || bore == 0) return;
    m_selection.setBore(bore);
    emit clicked(bore);
}

void PlanView::mouseDoubleClickEvent(QMouseEvent* event) {
    freshen();
    const int bore = planHit(pictureRect(), m_data, style(), event->position());
    if (event->button() == Qt::LeftButton && bore != 0) emit activated(bore);
}

void PlanView::keyPressEvent(QKeyEvent* event) {
    freshen();
    const auto key = static_cast<Qt::Key>(event->key());
    switch (key) {
    case Qt::Key_Left:
    case Qt::Key_Right:
    case Qt::Key_Up:
    case Qt::Key_Down:
        m_selection.setBore(planNeighbour(pictureRect(), m_data, style(), m_selection.bore(), key));
        return;
    case Qt::Key_Return:
    case Qt::Key_Enter: {
        const int bore = m_selection.bore();
        if (bore == 0) return;
        emit clicked(bore);
        emit activated(bore);
        return;
    }
    default:
        PictureView::keyPressEvent(event);
    }
}

} // namespace borewright
