// SPDX-License-Identifier: GPL-3.0-or-later
// The customer's table: a row a bore, what it was beside what it is now, with what is allowed at
// the head of each column.
#include "app/pictures/picture_text.h"
#include "app/pictures/verdict_mark.h"
#include "app/sheet/sheet_composer.h"
#include "app/sheet/sheet_data.h"

#include <algorithm>

namespace borewright {
namespace {

using Ink = SheetComposer::Ink;

constexpr double points = 8.5;
constexpr double smallPoints = 7.5;
constexpr double groupGap = 50;
constexpr double doubtPoints = 6;
// A longer table gives the doubts once, at its head.
constexpr std::size_t mostDoubted = 8;

// Order of the columns: smallest before largest, as they are spoken of.
constexpr std::array order{Quality::smallestSize, Quality::largestSize, Quality::outOfRound,
                           Quality::taper};

QString headOf(Quality quality) {
    switch (quality) {
    case Quality::largestSize:
        return SheetWords::tr("largest");
    case Quality::smallestSize:
        return SheetWords::tr("smallest");
    case Quality::outOfRound:
        return SheetWords::tr("out of round");
    case Quality::taper:
        return SheetWords::tr("taper");
    }
    return {};
}

} // namespace

bool doubtsStandAtEachFigure(const SheetBoreTable& table) {
    return table.hasDoubt && table.rows.size() <= mostDoubted;
}

namespace {

class TableComposer {
public:
    TableComposer(SheetComposer& sheet, const SheetBoreTable& table)
        : m_sheet(sheet)
        , m_table(table)
        , m_font(sheetFont(points))
        , m_small(sheetFont(smallPoints))
        , m_line(lineHeight(m_font))
        , m_smallLine(lineHeight(m_small)) {
        // Both sides share the page as their columns need; a side alone is not stretched to it.
        const double all = m_sheet.width() - boreWidth;
        const bool both = table.hasWas && table.hasNow;
        const double was = total(false), now = total(true);
        const double stretch = both ? (all - groupGap) / (was + now) : 1.3;
        m_wasWidth = table.hasWas ? std::min(was * stretch, all) : 0;
        m_nowWidth = table.hasNow ? std::min(now * stretch, all) : 0;
        m_rowGap = table.rows.size() > 10 ? 2 : 7;
        m_each = doubtsStandAtEachFigure(table);
        m_wasLeft = m_sheet.left() + boreWidth;
        m_nowLeft = m_wasLeft + m_wasWidth + (both ? groupGap : 0);
    }

    void compose() {
        const double row = m_line + m_rowGap + (m_each ? m_doubtLine : 0);
        m_sheet.need(headHeight() + row);
        head();
        for (const SheetBoreRow& bore : m_table.rows) {
            if (!m_sheet.need(row)) head();
            rowOf(bore);
            m_sheet.down(row);
        }
        m_sheet.down(35);
    }

private:
    static constexpr double boreWidth = 110;

    // What a column takes of its side, in sheet units.
    [[nodiscard]] double part(bool now, int index) const {
        static constexpr double parts[] = {125, 125, 110, 110, 225, 240};
        return index == 4 && !(now && m_table.hasStraight) ? 0 : parts[index];
    }
    [[nodiscard]] double total(bool now) const {
        double sum = 0;
        for (int i = 0; i < 6; ++i)
            sum += part(now, i);
        return sum;
    }
    // The room of a side's column: 0 … 3 figures, 4 straight, 5 verdict.
    [[nodiscard]] QRectF column(bool now, int index, double height) const {
        const double left = now ? m_nowLeft : m_wasLeft;
        const double width = now ? m_nowWidth : m_wasWidth;
        double before = 0;
        for (int i = 0; i < index; ++i)
            before += part(now, i);
        const double all = total(now);
        return {left + width * before / all, m_sheet.y(), width * part(now, index) / all, height};
    }

    [[nodiscard]] double headHeight() const {
        return m_line + 3 * m_smallLine +
               static_cast<double>(m_table.allowed.size() + (showsAtMost() ? 1 : 0)) *
                   (m_smallLine + 3) +
               40;
    }

    void head() {
        for (const bool now : {false, true}) {
            if (!(now ? m_table.hasNow : m_table.hasWas)) continue;
            const double left = now ? m_nowLeft : m_wasLeft;
            m_sheet.text({left, m_sheet.y(), now ? m_nowWidth : m_wasWidth, m_line}, Qt::AlignLeft,
                         now ? m_table.nowHead : m_table.wasHead, sheetFont(points, true));
            m_sheet.rule(m_sheet.y() + m_line + 6, left, left + (now ? m_nowWidth : m_wasWidth));
        }
        m_sheet.down(m_line + 14);
        m_sheet.text({m_sheet.left(), m_sheet.y() + 2 * m_smallLine, boreWidth, m_smallLine},
                     Qt::AlignLeft, SheetWords::tr("bore"), m_small, Ink::faint);
        if (m_table.hasWas) columnHeads(false);
        if (m_table.hasNow) columnHeads(true);
        m_sheet.down(3 * m_smallLine + 4);
        for (const SheetAllowed& allowed : m_table.allowed)
            allowedRow(allowed);
        if (showsAtMost()) atMostRow();
        m_sheet.rule(m_sheet.y() + 5, m_sheet.left(), m_sheet.right());
        m_sheet.down(14);
    }

    void columnHeads(bool now) {
        const auto at = [&](const QRectF& room, const QString& name, const QString& unit) {
            const QStringList lines = name.split(' ');
            if (lines.size() > 1)
                m_sheet.text(room, Qt::AlignRight, lines.mid(0, lines.size() - 1).join(' '),
                             m_small, Ink::faint);
            m_sheet.text(room.translated(0, m_smallLine), Qt::AlignRight, lines.last(), m_small,
                         Ink::faint);
            m_sheet.text(room.translated(0, 2 * m_smallLine), Qt::AlignRight, unit, m_small,
                         Ink::faint);
        };
        for (int i = 0; i < 4; ++i)
            at(column(now, i, m_smallLine), headOf(order[static_cast<std::size_t>(i)]),
               i < 2 ? m_table.sizeUnit : m_table.smallUnit);
        if (now && m_table.hasStraight)
            at(straightFigure(m_smallLine), SheetWords::tr("straight"), m_table.smallUnit);
        const QRectF room = column(now, 5, m_smallLine).adjusted(60, 0, 0, 0);
        m_sheet.text(room.translated(0, 2 * m_smallLine), Qt::AlignLeft, SheetWords::tr("verdict"),
                     m_small, Ink::faint);
    }

    [[nodiscard]] QRectF straightFigure(double height) const {
        QRectF room = column(true, 4, height);
        room.setWidth(room.width() * 0.52);
        return room;
    }

    [[nodiscard]] QRectF straightWord(double height) const {
        QRectF room = column(true, 4, height);
        room.setLeft(room.left() + room.width() * 0.52 + 14);
        return room;
    }

    [[nodiscard]] bool showsAtMost() const { return m_table.hasDoubt && !m_each; }

    // The doubts of a side's figures, `down` from here.
    void doubtsOf(const SheetSide& side, bool now, double down) {
        const QFont font = sheetFont(doubtPoints);
        for (int i = 0; i < 4; ++i)
            m_sheet.text(
                column(now, i, m_doubtLine).translated(0, down), Qt::AlignRight,
                side.figures[static_cast<std::size_t>(order[static_cast<std::size_t>(i)])].doubt,
                font, Ink::faint);
        if (now && m_table.hasStraight)
            m_sheet.text(straightFigure(m_doubtLine).translated(0, down), Qt::AlignRight,
                         side.straight.doubt, font, Ink::faint);
    }

    void atMostRow() {
        m_sheet.text({m_sheet.left(), m_sheet.y(), boreWidth + 20, m_smallLine}, Qt::AlignLeft,
                     SheetWords::tr("± at most"), m_small, Ink::faint);
        if (m_table.hasWas) doubtsOf(m_table.wasAtMost, false, 0);
        if (m_table.hasNow) doubtsOf(m_table.nowAtMost, true, 0);
        m_sheet.down(m_smallLine + 3);
    }

    void verdictOf(const SheetSide& side, const QRectF& room) {
        const QFont font = side.verdict == Verdict::outside ? sheetFont(points, true) : m_font;
        const bool broken = side.verdict == Verdict::tooCloseToCall &&
                            textWidth(side.verdictText, font) > room.width();
        m_sheet.text(room, Qt::AlignLeft, broken ? SheetWords::tr("too close") : side.verdictText,
                     font);
        if (broken && m_each)
            m_sheet.text(room.translated(0, m_line - 8), Qt::AlignLeft, SheetWords::tr("to call"),
                         font);
    }

    void allowedRow(const SheetAllowed& allowed) {
        const double width = boreWidth + (m_table.hasWas || m_table.hasNow ? 20 : 0);
        m_sheet.text({m_sheet.left(), m_sheet.y(), width, m_smallLine}, Qt::AlignLeft,
                     allowed.bores.isEmpty() ? SheetWords::tr("allowed")
                                             : SheetWords::tr("for %1").arg(allowed.bores),
                     m_small, Ink::faint);
        for (const bool now : {false, true}) {
            if (!(now ? m_table.hasNow : m_table.hasWas)) continue;
            const auto& texts = now ? allowed.now : allowed.was;
            for (int i = 0; i < 4; ++i)
                m_sheet.text(column(now, i, m_smallLine), Qt::AlignRight,
                             texts[static_cast<std::size_t>(order[static_cast<std::size_t>(i)])],
                             m_small, Ink::faint);
            if (now && m_table.hasStraight)
                m_sheet.text(straightFigure(m_smallLine).adjusted(-20, 0, 0, 0), Qt::AlignRight,
                             allowed.aim, m_small, Ink::faint);
        }
        m_sheet.down(m_smallLine + 3);
    }

    void rowOf(const SheetBoreRow& row) {
        m_sheet.text({m_sheet.left(), m_sheet.y(), boreWidth, m_line}, Qt::AlignLeft, row.bore,
                     sheetFont(points, true));
        if (m_table.hasWas) sideOf(row.was, false);
        if (m_table.hasNow) sideOf(row.now, true);
    }

    void sideOf(const SheetSide& side, bool now) {
        if (!side.there) {
            m_sheet.text(column(now, 0, m_line), Qt::AlignRight, QStringLiteral("–"), m_font,
                         Ink::faint);
            return;
        }
        for (int i = 0; i < 4; ++i) {
            const SheetFigure& figure =
                side.figures[static_cast<std::size_t>(order[static_cast<std::size_t>(i)])];
            // What is outside stands in bold, so that it is found without colour.
            const bool bold = figure.verdict == Verdict::outside;
            m_sheet.text(column(now, i, m_line), Qt::AlignRight, figure.text,
                         bold ? sheetFont(points, true) : m_font);
        }
        if (now && m_table.hasStraight) {
            m_sheet.text(straightFigure(m_line), Qt::AlignRight, side.straight.text, m_font);
            m_sheet.text(straightWord(m_line), Qt::AlignLeft, side.aim, m_small, Ink::faint);
        }
        const QRectF room = column(now, 5, m_line);
        const QRectF mark(room.left() + 26, room.center().y() - 12, 24, 24);
        m_sheet.draw([mark, verdict = side.verdict](QPainter& painter, const PictureStyle& style) {
            paintVerdictMark(painter, mark, verdict, style);
        });
        verdictOf(side, room.adjusted(60, 0, 0, 0));
        if (m_each) doubtsOf(side, now, m_line - 2);
    }

    SheetComposer& m_sheet;
    const SheetBoreTable& m_table;
    QFont m_font;
    QFont m_small;
    double m_line;
    double m_smallLine;
    double m_doubtLine = lineHeight(sheetFont(doubtPoints));
    bool m_each = false; // a doubt below each figure
    double m_rowGap = 7, m_wasLeft = 0, m_wasWidth = 0, m_nowLeft = 0, m_nowWidth = 0;
};

} // namespace

void composeTable(SheetComposer& sheet, const SheetBoreTable& table) {
    if (table.rows.empty() || (!table.hasWas && !table.hasNow)) return;
    TableComposer(sheet, table).compose();
}

} // namespace borewright
