// SPDX-License-Identifier: GPL-3.0-or-later
// Page one, the customer's: who, what was found, what was done, and a place to sign.
#include "app/pictures/picture_text.h"
#include "app/sheet/sheet_composer.h"
#include "app/sheet/sheet_data.h"

#include <algorithm>
#include <cmath>

namespace borewright {
namespace {

using Ink = SheetComposer::Ink;

constexpr double gap = 42;
constexpr double planWidth = 560;
constexpr double nameWidth = 290;
constexpr double leastSections = 240;

double lineOf(double points) {
    return lineHeight(sheetFont(points));
}

// The shop's picture at the left; returns the width it takes.
double composePicture(SheetComposer& sheet, const SheetData& data) {
    if (data.shopPicture.isNull()) return 0;
    const QSizeF size =
        QSizeF(data.shopPicture.size()).scaled(QSizeF(450, 170), Qt::KeepAspectRatio);
    const QRectF rect(QPointF(sheet.left(), sheet.y()), size);
    sheet.draw([rect, picture = data.shopPicture](QPainter& painter, const PictureStyle&) {
        painter.setRenderHint(QPainter::SmoothPixmapTransform);
        painter.drawImage(rect, picture);
    });
    return size.width() + 40;
}

void composeHead(SheetComposer& sheet, const SheetData& data) {
    const double top = sheet.y();
    const double titleWidth = 640;
    const double left = sheet.left() + composePicture(sheet, data);
    const double room = sheet.right() - titleWidth - 40 - left;
    double y = top;
    if (!data.shopName.isEmpty()) {
        const QFont font = sheetFont(15, true);
        for (const QString& line : sheetLines(data.shopName, font, room).mid(0, 2)) {
            sheet.text({left, y, room, lineOf(15)}, Qt::AlignLeft, line, font);
            y += lineOf(15);
        }
    }
    for (const QString& line : data.shopAddress.mid(0, 5)) {
        sheet.text({left, y, room, lineOf(8.5)}, Qt::AlignLeft, line.trimmed(), sheetFont(8.5),
                   Ink::faint);
        y += lineOf(8.5);
    }
    const double x = sheet.right() - titleWidth;
    double right = top;
    sheet.text({x, right, titleWidth, lineOf(15)}, Qt::AlignRight, SheetWords::tr("Bore sheet"),
               sheetFont(15));
    right += lineOf(15);
    sheet.text({x, right, titleWidth, lineOf(8.5)}, Qt::AlignRight, data.printed, sheetFont(8.5),
               Ink::faint);
    right += lineOf(8.5);
    if (data.invented) {
        right += 8;
        sheet.text({x, right, titleWidth, lineOf(9)}, Qt::AlignRight,
                   SheetWords::tr("Invented demonstration"), sheetFont(9, true), Ink::accent);
        right += lineOf(9);
    }
    const double picture = data.shopPicture.isNull() ? top : top + 170;
    sheet.down(std::max({y, right, picture}) - top + 22);
    const double line = sheet.y();
    sheet.draw([line, from = sheet.left(), to = sheet.right()](QPainter& painter,
                                                               const PictureStyle& style) {
        painter.setPen(QPen(style.ink, 5, Qt::SolidLine, Qt::FlatCap));
        painter.drawLine(QPointF(from, line), QPointF(to, line));
    });
    sheet.down(gap);
}

double sentencesHeight(const QStringList& sentences, double width) {
    double height = 0;
    for (const QString& sentence : sentences)
        height +=
            static_cast<double>(sheetLines(sentence, sheetFont(11), width).size()) * lineOf(11) +
            10;
    return height;
}

// Facts and sentences at the left, the block from above at the right.
void composeJob(SheetComposer& sheet, const SheetData& data) {
    const bool hasPlan = !data.plan.bores.empty();
    QStringList sentences = data.sentences;
    if (!data.whichSize.isEmpty()) sentences << data.whichSize;
    const double width = sheet.width() - (hasPlan ? planWidth + 60 : 0);
    const double top = sheet.y();
    const double height =
        sheetFactsHeight(data.facts, width, nameWidth, 9) + 30 + sentencesHeight(sentences, width);
    if (hasPlan) {
        const QRectF rect(sheet.right() - planWidth, top - 10, planWidth,
                          std::clamp(height + 10, 400.0, 560.0));
        sheet.draw([rect, plan = data.plan](QPainter& painter, const PictureStyle& style) {
            PictureStyle own = sheetStyle(7);
            own.log = style.log;
            paintPlan(painter, rect, plan, own);
        });
    }
    composeFacts(sheet, data.facts, sheet.left(), width, nameWidth, 9);
    if (!data.facts.empty()) sheet.down(30);
    for (const QString& sentence : sentences) {
        sheet.paragraph(sheet.left(), width, sentence, sheetFont(11));
        sheet.down(10);
    }
    if (hasPlan && sheet.y() > top) sheet.down(std::max(0.0, top + 400 - sheet.y()));
    sheet.down(gap);
}

double footHeight(const SheetData& data, double width) {
    return sheetFactsHeight(data.means, width, nameWidth, 8) +
           static_cast<double>(sheetLines(data.cautions.join(' '), sheetFont(8), width).size()) *
               lineOf(8) +
           20 + 170;
}

void composeShapes(SheetComposer& sheet, const QStringList& shapes) {
    if (shapes.isEmpty()) return;
    for (const QString& shape : shapes)
        sheet.paragraph(sheet.left(), sheet.width(), shape, sheetFont(8));
    sheet.down(22);
}

// The height at which sections side by side have the shape of a bore: one row up to eight bores,
// two rows above where there is `room` for them.
double sectionsHeight(std::size_t bores, double width, double room) {
    const auto heightOf = [&](double rows) {
        const double columns = std::ceil(static_cast<double>(bores) / rows);
        return std::min(1150.0, rows * (width / columns * 1.35 + 60) + 90);
    };
    if (bores > 8 && heightOf(2) <= room) return heightOf(2);
    // A crowded page has lower sections rather than no place to sign.
    const double least = std::clamp(room, 0.5 * leastSections, leastSections);
    return std::max(least, std::min(heightOf(1), room));
}

double sectionsHead() {
    return lineOf(8.5) + 12;
}

// What the sections take at least, with the gap below them.
double sectionsLeast(const SheetData& data) {
    return data.sections.bores.empty() ? 0 : sectionsHead() + 0.5 * leastSections + gap;
}

void composeSections(SheetComposer& sheet, const SheetData& data, double below) {
    if (data.sections.bores.empty()) return;
    const double head = sectionsHead();
    sheet.need(head + 0.5 * leastSections);
    sheet.text({sheet.left(), sheet.y(), sheet.width(), lineOf(8.5)}, Qt::AlignLeft,
               SheetWords::tr("Shape of the bores cut open, each about its own mean, all on one "
                              "scale: as found faint, now dark"),
               sheetFont(8.5), Ink::faint);
    sheet.down(head);
    const double height =
        sectionsHeight(data.sections.bores.size(), sheet.width(), sheet.rest() - below - gap);
    const QRectF rect(sheet.left(), sheet.y(), sheet.width(), std::min(height, sheet.rest()));
    sheet.draw([rect, sections = data.sections](QPainter& painter, const PictureStyle& style) {
        PictureStyle own = sheetStyle(sections.bores.size() > 5 ? 6 : 7);
        own.log = style.log;
        paintBlockSections(painter, rect, sections, own);
    });
    sheet.down(rect.height() + gap);
}

// A line to write on, with what goes there beneath it.
void signHere(SheetComposer& sheet, double x, double width, const QString& what) {
    const double y = sheet.y() + 95;
    sheet.draw([=](QPainter& painter, const PictureStyle& style) {
        painter.setPen(QPen(style.faintInk, 2.5));
        painter.drawLine(QPointF(x, y), QPointF(x + width, y));
    });
    sheet.text({x, y + 6, width, lineOf(7.5)}, Qt::AlignLeft, what, sheetFont(7.5), Ink::faint);
}

void composeFoot(SheetComposer& sheet, const SheetData& data) {
    // At the bottom of the page, where people look for the place to sign.
    sheet.down(std::max(0.0, sheet.rest() - footHeight(data, sheet.width())));
    composeFacts(sheet, data.means, sheet.left(), sheet.width(), nameWidth, 8);
    if (!data.means.empty()) sheet.down(10);
    sheet.paragraph(sheet.left(), sheet.width(), data.cautions.join(' '), sheetFont(8));
    sheet.down(10);
    sheet.need(150);
    const double part = (sheet.width() - 2 * 60) / 3;
    signHere(sheet, sheet.left(), part, SheetWords::tr("Name"));
    signHere(sheet, sheet.left() + part + 60, part, SheetWords::tr("Signed"));
    signHere(sheet, sheet.left() + 2 * (part + 60), part, SheetWords::tr("Date"));
    sheet.down(150);
}

} // namespace

void composeFront(SheetComposer& sheet, const SheetData& data) {
    composeHead(sheet, data);
    composeJob(sheet, data);
    composeTable(sheet, data.table);
    if (doubtsStandAtEachFigure(data.table)) composeShapes(sheet, data.shapes);
    const double below = footHeight(data, sheet.width());
    composePairs(sheet, data.fit.pairs, sheet.rest() - below - sectionsLeast(data));
    composeSections(sheet, data, below);
    composeFoot(sheet, data);
}

} // namespace borewright
