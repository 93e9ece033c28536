// SPDX-License-Identifier: GPL-3.0-or-later
// The way into the room: the sheet as a PDF, as pictures of its pages, and on a printer. All three
// are one drawing.
#pragma once

#include "app/sheet/sheet_data.h"
#include "core/result.h"
#include "core/storage/file_system.h"

#include <QByteArray>
#include <QImage>

#include <vector>

class QPrinter;

namespace borewright {

// How many pages the sheet takes on this paper.
int sheetPageCount(const SheetData& data, Preferences::Paper paper);

// The sheet as a PDF: vectors, fonts embedded, text selectable, titled.
Result<QByteArray> renderSheetPdf(const SheetData& data, Preferences::Paper paper);

// Writes the PDF to `path` by the saver: a file that is whole, or a refusal in words.
Result<void> exportSheetPdf(FileSystem& files, const QString& path, const SheetData& data,
                            Preferences::Paper paper);

// Every page as an image; `pixelsPerMm` of the paper.
std::vector<QImage> renderSheetPages(const SheetData& data, Preferences::Paper paper,
                                     double pixelsPerMm);

// Prints every page on a printer that is set up; the paper is the printer's.
Result<void> printSheet(QPrinter& printer, const SheetData& data, Preferences::Paper paper);

} // namespace borewright
