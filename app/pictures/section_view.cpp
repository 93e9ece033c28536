// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pictures/section_view.h"

#include "app/pictures/station_step.h"

#include <QHelpEvent>
#include <QKeyEvent>
#include <QToolTip>

namespace borewright {
namespace {

constexpr double reach = 16; // of a hand, at a type of 14 pixels

} // namespace

SectionView::SectionView(Document& document, Selection& selection, QWidget* parent)
    : PictureView(document, selection, tr("Section of the bore"), parent) {}

void SectionView::setMode(SectionOptions::Mode mode) {
    m_options.mode = mode;
    markOld();
}

void SectionView::setEarlierShown(bool shown) {
    m_options.earlier = shown;
    markOld();
}

void SectionView::setValuesShown(bool shown) {
    m_options.values = shown;
    markOld();
}

const SectionData& SectionView::data() {
    freshen();
    return m_data;
}

void SectionView::rebuild() {
    m_options.chosen = m_selection.station();
    m_data = sectionData(m_document.workbook(), m_document.surveyResults(), m_selection.survey(),
                         m_selection.bore(), m_document.units(), m_options);
}

QString SectionView::describe() const {
    return describeSection(m_data);
}

void SectionView::paint(QPainter& painter, const QRectF& rect) {
    paintSection(painter, rect, m_data, style());
}

bool SectionView::event(QEvent* event) {
    if (event->type() != QEvent::ToolTip) return PictureView::event(event);
    freshen();
    const auto* help = static_cast<QHelpEvent*>(event);
    const auto points = sectionPoints(pictureRect(), m_data, style());
    const SectionPoint* point = nearestPoint(points, help->pos(), reach * style().unit());
    if (point == nullptr)
        QToolTip::hideText();
    else
        QToolTip::showText(help->globalPos(), point->text, this);
    return true;
}

void SectionView::mousePressEvent(QMouseEvent* event) {
    freshen();
    const auto points = sectionPoints(pictureRect(), m_data, style());
    const SectionPoint* point = nearestPoint(points, event->position(), reach * style().unit());
    if (event->button() != Qt::LeftButton || point == nullptr) return;
    const Station station = point->station;
    m_selection.setStation(station);
    emit activated(station);
}

void SectionView::keyPressEvent(QKeyEvent* event) {
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

void SectionView::step(int levels, int axes) {
    const auto next = steppedStation(m_document.workbook().block, m_selection.bore(),
                                     m_selection.station(), levels, axes);
    if (!next) return;
    m_selection.setStation(*next);
    // The keyboard tells the number, as the mouse does.
    freshen();
    for (const SectionPoint& point : sectionPoints(pictureRect(), m_data, style()))
        if (point.station == *next)
            return QToolTip::showText(mapToGlobal(point.position.toPoint()), point.text, this);
    QToolTip::hideText();
}

} // namespace borewright
