// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pictures/depth_map_view.h"

#include "app/pictures/reading_words.h"

#include <QHelpEvent>
#include <QKeyEvent>
#include <QToolTip>

#include <algorithm>

namespace borewright {

DepthMapView::DepthMapView(Document& document, Selection& selection, QWidget* parent)
    : PictureView(document, selection, tr("Map of depth and bore"), parent) {}

void DepthMapView::rebuild() {
    m_data = depthMapData(m_document.workbook(), m_document.results(), m_selection.survey(),
                          m_document.units(), m_selection.station());
}

QString DepthMapView::describe() const {
    return describeDepthMap(m_data);
}

void DepthMapView::paint(QPainter& painter, const QRectF& rect) {
    paintDepthMap(painter, rect, m_data, style());
}

bool DepthMapView::event(QEvent* event) {
    if (event->type() != QEvent::ToolTip) return PictureView::event(event);
    freshen();
    const auto* help = static_cast<QHelpEvent*>(event);
    const auto at = depthMapHit(pictureRect(), m_data, style(), help->pos());
    const SurveyResult* survey = findResult(m_document.results(), m_selection.survey());
    const BoreResult* bore = at && survey ? findBoreResult(*survey, at->bore) : nullptr;
    const StationResult* station = bore ? findStation(*bore, at->depth, at->axis) : nullptr;
    if (station == nullptr)
        QToolTip::hideText();
    else
        QToolTip::showText(
            help->globalPos(),
            readingInWords(*station, m_document.workbook().block, m_document.units()), this);
    return true;
}

void DepthMapView::mousePressEvent(QMouseEvent* event) {
    freshen();
    const auto station = depthMapHit(pictureRect(), m_data, style(), event->position());
    if (event->button() == Qt::LeftButton && station) m_selection.setStation(*station);
}

void DepthMapView::mouseDoubleClickEvent(QMouseEvent* event) {
    freshen();
    const auto station = depthMapHit(pictureRect(), m_data, style(), event->position());
    if (event->button() == Qt::LeftButton && station) emit activated(*station);
}

void DepthMapView::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
    case Qt::Key_Up:
        return step(-1, 0);
    case Qt::Key_Down:
        return step(1, 0);
    case Qt::Key_Left:
        return step(0, -1);
    case Qt::Key_Right:
        return step(0, 1);
    case Qt::Key_Return:
    case Qt::Key_Enter:
        if (m_selection.station()) emit activated(*m_selection.station());
        return;
    default:
        PictureView::keyPressEvent(event);
    }
}

// Goes on over places without a station, to the next that has one; an edge holds.
void DepthMapView::step(int rows, int columns) {
    freshen();
    int row = -1;
    int column = -1;
    std::optional<Station> first;
    for (std::size_t r = 0; r < m_data.rows.size(); ++r)
        for (std::size_t c = 0; c < m_data.rows[r].size(); ++c) {
            const auto& cell = m_data.rows[r][c];
            if (!cell) continue;
            if (!first && cell->station.bore == m_selection.bore()) first = cell->station;
            if (m_selection.station() != cell->station) continue;
            row = static_cast<int>(r);
            column = static_cast<int>(c);
        }
    if (row < 0) {
        if (first) m_selection.setStation(*first);
        return;
    }
    for (;;) {
        row += rows;
        column += columns;
        if (row < 0 || row >= std::ssize(m_data.rows)) return;
        const auto& cells = m_data.rows[static_cast<std::size_t>(row)];
        if (column < 0 || column >= std::ssize(cells)) return;
        const auto& cell = cells[static_cast<std::size_t>(column)];
        if (cell) return m_selection.setStation(cell->station);
    }
}

} // namespace borewright
