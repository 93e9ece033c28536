// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pictures/strip_view.h"

#include "app/pictures/strip_parts.h"

#include <QHelpEvent>
#include <QKeyEvent>
#include <QToolTip>

#include <algorithm>
#include <cmath>

namespace borewright {

StripView::StripView(Document& document, Selection& selection, QWidget* parent)
    : PictureView(document, selection, tr("Readings against the limits"), parent) {}

void StripView::rebuild() {
    m_data = stripData(m_document.workbook(), m_document.results(), m_selection.survey(),
                       m_document.units(), m_selection.bore());
}

QString StripView::describe() const {
    return describeStrip(m_data);
}

void StripView::paint(QPainter& painter, const QRectF& rect) {
    paintStrip(painter, rect, m_data, style());
}

bool StripView::event(QEvent* event) {
    if (event->type() != QEvent::ToolTip) return PictureView::event(event);
    freshen();
    const auto* help = static_cast<QHelpEvent*>(event);
    const StripPoint* point = nearest(help->pos());
    if (point == nullptr)
        QToolTip::hideText();
    else
        QToolTip::showText(help->globalPos(), point->text, this);
    return true;
}

void StripView::mousePressEvent(QMouseEvent* event) {
    freshen();
    if (event->button() != Qt::LeftButton) return;
    if (const StripPoint* point = nearest(event->position())) {
        const Station station = point->station;
        m_selection.setStation(station);
        emit activated(station);
        return;
    }
    const int bore = stripHit(pictureRect(), m_data, style(), event->position());
    if (bore != 0) m_selection.setBore(bore);
}

void StripView::keyPressEvent(QKeyEvent* event) {
    freshen();
    const int step = event->key() == Qt::Key_Left ? -1 : event->key() == Qt::Key_Right ? 1 : 0;
    if (step == 0) return PictureView::keyPressEvent(event);
    const auto at = std::ranges::find(m_data.bores, m_selection.bore(), &StripBore::number);
    if (at == m_data.bores.end()) return;
    const auto next = at - m_data.bores.begin() + step;
    if (next < 0 || next >= std::ssize(m_data.bores)) return;
    m_selection.setBore(m_data.bores[static_cast<std::size_t>(next)].number);
}

const StripPoint* StripView::nearest(const QPointF& position) const {
    const StripPoint* found = nullptr;
    double reach = 12 * style().unit();
    for (const StripPlace& place : stripPlaces(pictureRect(), m_data, style())) {
        const QPointF way = place.position - position;
        const double distance = std::hypot(way.x(), way.y());
        if (distance > reach) continue;
        reach = distance;
        found = place.point;
    }
    return found;
}

} // namespace borewright
