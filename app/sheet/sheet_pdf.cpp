// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/sheet/sheet_pdf.h"

#include "app/sheet/sheet_composer.h"
#include "core/storage/saver.h"

#include <QBuffer>
#include <QPageSize>
#include <QPdfWriter>
#include <QPrinter>

#include <cmath>

namespace borewright {
namespace {

QPageLayout layoutOf(Preferences::Paper paper) {
    const auto size = paper == Preferences::Paper::a4 ? QPageSize::A4 : QPageSize::Letter;
    return {QPageSize(size), QPageLayout::Portrait, QMarginsF(), QPageLayout::Millimeter};
}

// The pages one after another on a device that has pages.
bool drawAll(QPagedPaintDevice& device, double scale, const std::vector<SheetPageContent>& pages) {
    QPainter painter;
    if (!painter.begin(&device)) return false;
    painter.scale(scale, scale);
    for (std::size_t i = 0; i < pages.size(); ++i) {
        if (i > 0 && !device.newPage()) return false;
        drawSheetPage(painter, pages[i]);
    }
    return painter.end();
}

} // namespace

void drawSheetPage(QPainter& painter, const SheetPageContent& page, TextLog* log) {
    PictureStyle style = sheetStyle(7.5);
    style.log = log;
    painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
    for (const SheetDraw& draw : page) {
        painter.save();
        draw(painter, style);
        painter.restore();
    }
}

int sheetPageCount(const SheetData& data, Preferences::Paper paper) {
    return static_cast<int>(composeSheet(data, paper).size());
}

Result<QByteArray> renderSheetPdf(const SheetData& data, Preferences::Paper paper) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    if (!buffer.open(QIODevice::WriteOnly)) return refuse("there is no memory left for the sheet");
    {
        QPdfWriter writer(&buffer);
        writer.setResolution(sheetDotsPerInch);
        writer.setPageLayout(layoutOf(paper));
        writer.setTitle(data.title);
        writer.setCreator(QStringLiteral("Borewright"));
        if (!drawAll(writer, 1, composeSheet(data, paper)))
            return refuse("the sheet could not be drawn");
    }
    return bytes;
}

Result<void> exportSheetPdf(FileSystem& files, const QString& path, const SheetData& data,
                            Preferences::Paper paper) {
    const auto bytes = renderSheetPdf(data, paper);
    if (!bytes) return tl::unexpected(bytes.error());
    const std::string_view content(bytes->constData(), static_cast<std::size_t>(bytes->size()));
    const auto saved = save(files, path.toStdString(), content);
    if (!saved) return tl::unexpected(saved.error());
    return {};
}

std::vector<QImage> renderSheetPages(const SheetData& data, Preferences::Paper paper,
                                     double pixelsPerMm) {
    const double scale = pixelsPerMm / sheetUnitsPerMm;
    const QSizeF size = sheetSize(paper) * scale;
    std::vector<QImage> images;
    for (const SheetPageContent& page : composeSheet(data, paper)) {
        QImage image(static_cast<int>(std::lround(size.width())),
                     static_cast<int>(std::lround(size.height())), QImage::Format_RGB32);
        image.fill(Qt::white);
        QPainter painter(&image);
        painter.scale(scale, scale);
        drawSheetPage(painter, page);
        painter.end();
        images.push_back(std::move(image));
    }
    return images;
}

Result<void> printSheet(QPrinter& printer, const SheetData& data, Preferences::Paper paper) {
    printer.setFullPage(true);
    printer.setDocName(data.title);
    const double scale = static_cast<double>(printer.resolution()) / sheetDotsPerInch;
    if (!drawAll(printer, scale, composeSheet(data, paper)))
        return refuse("the printer did not take the sheet");
    return {};
}

} // namespace borewright
