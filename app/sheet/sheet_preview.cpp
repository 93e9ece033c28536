// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/sheet/sheet_preview.h"

#include "app/sheet/sheet_pdf.h"

#include <QPaintEvent>

namespace borewright {
namespace {

constexpr int gap = 16;

} // namespace

SheetPaper::SheetPaper(QWidget* parent)
    : QWidget(parent) {
    setAccessibleName(tr("Pages of the sheet"));
}

void SheetPaper::setPages(std::vector<SheetPageContent> pages, Preferences::Paper paper) {
    m_pages = std::move(pages);
    m_paper = paper;
    resizeToPages();
    update();
}

void SheetPaper::setPageWidth(int width) {
    m_pageWidth = std::max(200, width);
    resizeToPages();
    update();
}

QRectF SheetPaper::pageRect(int page) const {
    const QSizeF size = sheetSize(m_paper);
    const double height = m_pageWidth * size.height() / size.width();
    return {static_cast<double>(gap), gap + page * (height + gap), static_cast<double>(m_pageWidth),
            height};
}

void SheetPaper::resizeToPages() {
    const QRectF last = pageRect(std::max(0, pageCount() - 1));
    setFixedSize(m_pageWidth + 2 * gap, static_cast<int>(last.bottom()) + gap);
}

void SheetPaper::paintEvent(QPaintEvent* event) {
    QPainter painter(this);
    for (int i = 0; i < pageCount(); ++i) {
        const QRectF rect = pageRect(i);
        if (!rect.intersects(event->rect())) continue;
        painter.fillRect(rect, Qt::white);
        painter.save();
        painter.setClipRect(rect);
        painter.translate(rect.topLeft());
        const double scale = rect.width() / sheetSize(m_paper).width();
        painter.scale(scale, scale);
        drawSheetPage(painter, m_pages[static_cast<std::size_t>(i)]);
        painter.restore();
        painter.setPen(palette().color(QPalette::Mid));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(rect.adjusted(-0.5, -0.5, 0.5, 0.5));
    }
}

} // namespace borewright
