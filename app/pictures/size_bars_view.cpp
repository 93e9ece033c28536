// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pictures/size_bars_view.h"

#include <QKeyEvent>

#include <algorithm>

namespace borewright {
namespace {

constexpr int leastWidth = 420;
constexpr double margins = 10; // of the picture in the widget, at a unit of 1

} // namespace

SizeBarsView::SizeBarsView(Document& document, Selection& selection, QWidget* parent)
    : PictureView(document, selection, tr("Sizes of the bores and sizes on offer"), parent) {
    // The height that it asks for is that of the bores there are.
    connect(&document, &Document::changed, this, [this] {
        if (m_document.workbook().block.bores.size() != m_data.bores.size()) freshen();
    });
    freshen();
}

QSize SizeBarsView::sizeHint() const {
    const double height = sizeBarsHeight(m_data, width(), style()) + margins * style().unit();
    return {900, static_cast<int>(height) + 1};
}

QSize SizeBarsView::minimumSizeHint() const {
    const double height = leastSizeBarsHeight(m_data, width(), style()) + margins * style().unit();
    return {leastWidth, static_cast<int>(height) + 1};
}

void SizeBarsView::rebuild() {
    const std::size_t rows = m_data.bores.size();
    m_data = sizeBarsData(m_document.workbook(), m_document.results(), m_document.units(),
                          m_selection.bore());
    if (rows != m_data.bores.size()) updateGeometry();
}

QString SizeBarsView::describe() const {
    return describeSizeBars(m_data);
}

void SizeBarsView::paint(QPainter& painter, const QRectF& rect) {
    paintSizeBars(painter, rect, m_data, style());
}

void SizeBarsView::resizeEvent(QResizeEvent* event) {
    PictureView::resizeEvent(event);
    if (event->size().width() != event->oldSize().width()) updateGeometry();
}

void SizeBarsView::mousePressEvent(QMouseEvent* event) {
    freshen();
    const int bore = sizeBarsHit(pictureRect(), m_data, style(), event->position());
    if (event->button() == Qt::LeftButton && bore != 0) m_selection.setBore(bore);
}

void SizeBarsView::keyPressEvent(QKeyEvent* event) {
    const int step = event->key() == Qt::Key_Up ? -1 : event->key() == Qt::Key_Down ? 1 : 0;
    if (step == 0) return PictureView::keyPressEvent(event);
    freshen();
    const auto at = std::ranges::find(m_data.bores, m_selection.bore(), &SizeBarsBore::number);
    if (at == m_data.bores.end()) return;
    const auto next = at - m_data.bores.begin() + step;
    if (next < 0 || next >= std::ssize(m_data.bores)) return;
    m_selection.setBore(m_data.bores[static_cast<std::size_t>(next)].number);
}

} // namespace borewright
