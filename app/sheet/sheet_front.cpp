// SPDX-License-Identifier: GPL-3.0-or-later
// Page one, the customer's: who, what was found, what was done, and a place to sign.
#include "app/pictures/picture_text.h"
#include "app/sheet/sheet_composer.h"
#include "app/sheet/sheet_data.h"

#include <algorithm>

namespace borewright {
namespace {

using Ink = SheetComposer::Ink;

constexpr double gap = 42;
constexpr double planWidth = 560;
constexpr double nameWidth = 290;

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

double sentencesHeight(const SheetData& data, double width) {
    double height = 0;
    for (const QString& sentence : data.sentences)
        height +=
            static_cast<double>(sheetLines(sentence, sheetFont(11), width).size()) * lineOf(11) +
            10;
    return height;
}

// Facts and sentences at the left, the block from above at the right.
void composeJob(SheetComposer& sheet, const SheetData& data) {
    const bool hasPlan = !data.plan.bores.empty();
    const double width = sheet.width() - (hasPlan ? planWidth + 60 : 0);
    const double top = sheet.y();
    const double height =
        sheetFactsHeight(data.facts, width, nameWidth, 9) + 30 + sentencesHeight(data, width);
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
    for (const QString& sentence : data.sentences) {
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

bool composeFront(SheetComposer& sheet, const SheetData& data) {
    composeHead(sheet, data);
    composeJob(sheet, data);
    composeTable(sheet, data.table);
    if (doubtsStandAtEachFigure(data.table)) composeShapes(sheet, data.shapes);
    composeHoneFront(sheet, data.hone);
    const double below = footHeight(data, sheet.width());
    const double room = sheet.rest() - below;
    const double pairs = sheetPairsHeight(sheet, data.fit.pairs);
    // The clearances before the sections, where the page has not the room for both.
    const bool sections = pairs > room || pairs + sheetSectionsLeast(data) <= room;
    composePairs(sheet, data.fit.pairs, room - (sections ? sheetSectionsLeast(data) : 0));
    if (sections) composeSections(sheet, data, below);
    composeFoot(sheet, data);
    return sections;
}

} // namespace borewright
