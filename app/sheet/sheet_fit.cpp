// SPDX-License-Identifier: GPL-3.0-or-later
// Pistons, clearance and rings: in short on the customer's page, whole in the record.
#include "app/pictures/picture_text.h"
#include "app/pictures/verdict_mark.h"
#include "app/sheet/sheet_composer.h"
#include "app/sheet/sheet_data.h"

#include <algorithm>

namespace borewright {
namespace {

using Ink = SheetComposer::Ink;

constexpr double nameWidth = 330;
constexpr double headPoints = 8;
constexpr double labelWidth = 210;
constexpr double columnGap = 12;
constexpr double markHeight = 30;
constexpr double markRoom = 32;
constexpr double below = 30;
constexpr std::size_t fewPairs = 8;
constexpr std::size_t leastColumns = 5;

// The customer's short table: a column a bore. Up to eight have their ± and the verdict's word
// beside figure and mark; more have the word below, and one ± for all at the head.
class PairsComposer {
public:
    PairsComposer(SheetComposer& sheet, const SheetPairs& pairs)
        : m_sheet(sheet)
        , m_pairs(pairs)
        , m_many(pairs.pairs.size() > fewPairs) {
        const auto columns = static_cast<double>(std::max(leastColumns, pairs.pairs.size()));
        m_width = (sheet.width() - labelWidth) / columns;
        m_points = m_many ? 7.5 : 8.5;
        m_smallPoints = m_many ? 5.5 : 6.5;
        for (const SheetPair& pair : pairs.pairs) {
            m_verdictLines = std::max(m_verdictLines, verdictLines(pair).size());
            m_pistonLines = std::max(m_pistonLines, pistonLines(pair).size());
        }
    }

    [[nodiscard]] double height() const {
        return headHeight() + 6 + 2 * line() + pistonHeight() + 5 + verdictHeight() + below;
    }

    void compose() {
        m_sheet.paragraph(m_sheet.left(), m_sheet.width(), headText(), sheetFont(headPoints),
                          Ink::faint);
        m_sheet.down(6);
        row(SheetWords::tr("bore"), line(), &SheetPair::bore, sheetFont(m_points, true));
        m_sheet.rule(m_sheet.y() + 1, m_sheet.left(), m_sheet.right());
        m_sheet.down(5);
        pistons();
        if (!m_many) doubtsBeside();
        row(SheetWords::tr("clearance"), line(), &SheetPair::clearance, sheetFont(m_points));
        verdicts();
        m_sheet.down(below);
    }

private:
    [[nodiscard]] double line() const { return lineHeight(sheetFont(m_points)); }
    [[nodiscard]] double smallLine() const { return lineHeight(sheetFont(m_smallPoints)); }
    [[nodiscard]] QString headText() const {
        if (!m_many || m_pairs.doubtAtMost.isEmpty()) return m_pairs.head;
        return SheetWords::tr("%1; %2 at most").arg(m_pairs.head, m_pairs.doubtAtMost);
    }
    [[nodiscard]] double headHeight() const {
        const QFont font = sheetFont(headPoints);
        return static_cast<double>(sheetLines(headText(), font, m_sheet.width()).size()) *
               lineHeight(font);
    }
    [[nodiscard]] double verdictHeight() const {
        return (m_many ? markHeight : 0) + static_cast<double>(m_verdictLines) * smallLine();
    }
    [[nodiscard]] QRectF room(std::size_t column, double height) const {
        return {m_sheet.left() + labelWidth + m_width * static_cast<double>(column), m_sheet.y(),
                m_width - columnGap, height};
    }
    [[nodiscard]] QStringList verdictLines(const SheetPair& pair) const {
        return sheetLines(pair.verdictText, verdictFont(pair),
                          m_width - columnGap - (m_many ? 0 : markRoom));
    }
    // What is scribed on a piston, whole: in small type and on several lines where it is long.
    [[nodiscard]] bool isLong(const SheetPair& pair) const {
        return textWidth(pair.piston, sheetFont(m_points)) > m_width - columnGap;
    }
    [[nodiscard]] QStringList pistonLines(const SheetPair& pair) const {
        const QFont font = sheetFont(isLong(pair) ? m_smallPoints : m_points);
        return sheetLines(pair.piston, font, m_width - columnGap);
    }
    [[nodiscard]] double pistonHeight() const {
        return std::max(line(), static_cast<double>(m_pistonLines) * smallLine());
    }
    [[nodiscard]] QFont verdictFont(const SheetPair& pair) const {
        return sheetFont(m_smallPoints, pair.verdict == Verdict::outside);
    }
    [[nodiscard]] Qt::Alignment align() const { return m_many ? Qt::AlignHCenter : Qt::AlignLeft; }

    void label(const QString& name, double height) {
        m_sheet.text({m_sheet.left(), m_sheet.y(), labelWidth - 10, height},
                     Qt::AlignLeft | Qt::AlignVCenter, name, sheetFont(7.5), Ink::faint);
    }

    void row(const QString& name, double height, QString SheetPair::*what, const QFont& font) {
        label(name, height);
        for (std::size_t i = 0; i < m_pairs.pairs.size(); ++i)
            m_sheet.text(room(i, height), align(), m_pairs.pairs[i].*what, font);
        m_sheet.down(height);
    }

    void pistons() {
        label(SheetWords::tr("piston"), line());
        for (std::size_t i = 0; i < m_pairs.pairs.size(); ++i) {
            QRectF at = room(i, line());
            const bool small = isLong(m_pairs.pairs[i]);
            if (small) at.setHeight(smallLine());
            for (const QString& text : pistonLines(m_pairs.pairs[i])) {
                m_sheet.text(at, align(), text, sheetFont(small ? m_smallPoints : m_points));
                at.translate(0, smallLine());
            }
        }
        m_sheet.down(pistonHeight());
    }

    void doubtsBeside() {
        for (std::size_t i = 0; i < m_pairs.pairs.size(); ++i) {
            const double width = textWidth(m_pairs.pairs[i].clearance, sheetFont(m_points));
            m_sheet.text(room(i, line()).adjusted(width + 14, 0, 0, 0),
                         Qt::AlignLeft | Qt::AlignVCenter, m_pairs.pairs[i].doubt,
                         sheetFont(m_smallPoints), Ink::faint);
        }
    }

    void verdicts() {
        const double top = m_many ? markHeight : smallLine();
        label(SheetWords::tr("verdict"), top);
        for (std::size_t i = 0; i < m_pairs.pairs.size(); ++i) {
            const SheetPair& pair = m_pairs.pairs[i];
            QRectF at = room(i, top);
            const double x = m_many ? at.center().x() - 11 : at.left();
            const QRectF mark(x, at.center().y() - 11, 22, 22);
            m_sheet.draw(
                [mark, verdict = pair.verdict](QPainter& painter, const PictureStyle& style) {
                    paintVerdictMark(painter, mark, verdict, style);
                });
            at = m_many ? QRectF(at.left(), at.bottom(), at.width(), smallLine())
                        : QRectF(at.adjusted(markRoom, 0, 0, 0));
            for (const QString& text : verdictLines(pair)) {
                m_sheet.text(at, align(), text, verdictFont(pair));
                at.translate(0, smallLine());
            }
        }
        m_sheet.down(verdictHeight());
    }

    SheetComposer& m_sheet;
    const SheetPairs& m_pairs;
    bool m_many;
    double m_width = 0, m_points = 0, m_smallPoints = 0;
    qsizetype m_verdictLines = 1, m_pistonLines = 1;
};

} // namespace

double sheetPairsHeight(SheetComposer& sheet, const SheetPairs& pairs) {
    return pairs.pairs.empty() ? 0 : PairsComposer(sheet, pairs).height();
}

void composePairs(SheetComposer& sheet, const SheetPairs& pairs, double room) {
    if (pairs.pairs.empty()) return;
    PairsComposer table(sheet, pairs);
    if (table.height() <= room) {
        table.compose();
        return;
    }
    const QFont font = sheetFont(headPoints);
    if (lineHeight(font) + below > room) return;
    sheet.paragraph(sheet.left(), sheet.width(),
                    SheetWords::tr("Which piston is for which bore, and with what clearance, "
                                   "stands in the shop's record."),
                    font);
    sheet.down(below);
}

void composeFit(SheetComposer& sheet, const SheetFit& fit) {
    if (!fit.there) return;
    composeSectionHead(sheet, SheetWords::tr("Pistons, clearance and rings"), fit.headline,
                       sheetFactsHeight(fit.facts, sheet.width(), nameWidth, 7.5) +
                           std::min(sheetGridHeight(sheet, fit.pistons), 400.0) + 150);
    composeFacts(sheet, fit.facts, sheet.left(), sheet.width(), nameWidth, 7.5);
    sheet.down(18);
    composeGrid(sheet, fit.pistons);
    composeSentences(sheet, fit.sentences, 8);
    if (!fit.sentences.isEmpty()) sheet.down(20);
    for (const SheetGrid& grid : fit.across)
        composeGrid(sheet, grid);
    if (!fit.ringHeadline.isEmpty()) {
        sheet.need(150);
        composeSentences(sheet, {fit.ringHeadline}, 9);
        sheet.down(10);
    }
    for (const SheetGrid& grid : fit.rings)
        composeGrid(sheet, grid);
    composeSentences(sheet, fit.ringSentences + fit.cautions, 8);
    sheet.down(40);
}

} // namespace borewright
