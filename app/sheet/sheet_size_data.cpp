// SPDX-License-Identifier: GPL-3.0-or-later
// Which size cleans up the block, for the record: a row a bore with both ways of centring the cut.
#include "app/pictures/reading_words.h"
#include "app/sheet/sheet_data.h"
#include "core/results/doubt_words.h"

#include <algorithm>

namespace borewright {
namespace {

// ± k·u, 95 %.
std::optional<Length> whole(const std::optional<Length>& u, double coverage) {
    if (!u) return std::nullopt;
    return Length::nearest(coverage * u->in(Unit::micrometre), Unit::micrometre);
}

class SizeRows {
public:
    SizeRows(const Workbook& workbook, const SizingResult& sizing, const DisplayUnits& units)
        : m_workbook(workbook)
        , m_sizing(sizing)
        , m_units(units) {}

    [[nodiscard]] SheetGrid grid() const {
        const QString size = unitSymbol(m_units.size);
        const QString small = unitSymbol(m_units.small);
        const bool worn = m_sizing.centring == Centring::wornBore;
        const auto centred = [](const QString& on, bool taken) {
            const QString head = SheetWords::tr("cleans up at,\n%1").arg(on);
            return taken ? head + SheetWords::tr(" (taken)") : head;
        };
        SheetGrid grid;
        grid.columns = {{SheetWords::tr("bore"), {}, true},
                        {SheetWords::tr("largest\nas found"), size},
                        {SheetWords::tr("at"), {}, true},
                        {centred(SheetWords::tr("worn bore"), worn), size},
                        {centred(SheetWords::tr("original axis"), !worn), size},
                        {SheetWords::tr("what decides"), {}, true},
                        {SheetWords::tr("size"), {}, true},
                        {SheetWords::tr("margin"), small},
                        {QStringLiteral("±"), small},
                        {SheetWords::tr("verdict"), {}, true}};
        for (std::size_t i = 0; i < m_sizing.bores.size(); ++i)
            grid.rows.push_back(row(i));
        return withoutEmptyColumns(std::move(grid));
    }

private:
    [[nodiscard]] std::vector<SheetGridCell> row(std::size_t bore) const {
        std::vector<SheetGridCell> cells{{QString::number(m_sizing.bores[bore]), {}, true}};
        const auto& cleanUp = m_sizing.cleanUps[bore];
        if (!cleanUp) {
            cells.resize(10);
            cells[5].text = qs(m_sizing.notKnown[bore]);
            return cells;
        }
        const auto size = [&](Length length) { return qs(formatSize(length, m_units)); };
        cells.push_back({size(cleanUp->largest.diameter)});
        cells.push_back({placeOf(cleanUp->largest.depth, cleanUp->largest.axis)});
        cells.push_back({size(cleanUp->wornBore.size)});
        cells.push_back({cleanUp->originalAxis ? size(cleanUp->originalAxis->size) : QString()});
        cells.push_back({decides(cleanUpBy(*cleanUp, m_sizing.centring), m_sizing.bores[bore])});
        addChoice(cells, bore, cleanUp->coverage);
        return cells;
    }

    // "1.40 B".
    [[nodiscard]] QString placeOf(Length depth, const std::string& axis) const {
        return (qs(formatDepth(depth, m_units)) + ' ' + qs(axis)).trimmed();
    }

    [[nodiscard]] QString decides(const CleanUp& cleanUp, int bore) const {
        QString what = SheetWords::tr("wear");
        const auto wear = m_workbook.sizing.bores.find(bore);
        if (cleanUp.damage && wear != m_workbook.sizing.bores.end() &&
            *cleanUp.damage < wear->second.damages.size()) {
            const Damage& damage = wear->second.damages[*cleanUp.damage];
            const QString deep = sheetTyped(damage.deep);
            what = SheetWords::tr("%1, %2 deep")
                       .arg(damage.what.empty() ? SheetWords::tr("damage") : qs(damage.what),
                            damage.felt ? SheetWords::tr("about %1").arg(deep) : deep);
        }
        return SheetWords::tr("%1, at %2").arg(what, placeOf(cleanUp.depth, cleanUp.axis));
    }

    // Size, margin, its doubt and whether it cleans, of the size that is advised for this bore.
    void addChoice(std::vector<SheetGridCell>& cells, std::size_t bore, double coverage) const {
        const SizeChoice& choice = m_sizing.choice;
        const auto chosen = m_workbook.sizing.ownSizes ? choice.own[bore] : choice.chosen;
        if (choice.beyond[bore] || !chosen) {
            cells.push_back(
                {choice.beyond[bore] ? SheetWords::tr("beyond the last: a sleeve") : QString(),
                 {},
                 choice.beyond[bore]});
            cells.resize(10);
            return;
        }
        const OfferResult& offer = choice.offers[*chosen];
        const SizeCell& cell = offer.cells[bore];
        cells.push_back({qs(offer.offer.name)});
        if (cell.cleans == Cleans::unknown) {
            cells.resize(10);
            return;
        }
        cells.push_back({qs(formatSmall(cell.margin, m_units))});
        cells.push_back({sheetDoubt(whole(cell.u, coverage), m_units)});
        cells.push_back({qs(std::string(nameOf(cell.cleans))), verdictOf(cell.cleans)});
    }

    const Workbook& m_workbook;
    const SizingResult& m_sizing;
    const DisplayUnits& m_units;
};

} // namespace

QString sheetDoubt(const std::optional<Length>& whole, const DisplayUnits& units) {
    return whole ? qs(upward(*whole, units)) : QString();
}

QStringList sheetTexts(const std::vector<std::string>& sentences) {
    QStringList texts;
    for (const std::string& sentence : sentences)
        texts << qs(sentence);
    return texts;
}

SheetGrid withoutEmptyColumns(SheetGrid grid) {
    for (std::size_t c = grid.columns.size(); c-- > 0;) {
        const auto filled = [c](const std::vector<SheetGridCell>& row) {
            return c < row.size() && (!row[c].text.isEmpty() || row[c].verdict);
        };
        if (std::ranges::any_of(grid.rows, filled)) continue;
        grid.columns.erase(grid.columns.begin() + static_cast<std::ptrdiff_t>(c));
        for (auto& row : grid.rows)
            if (c < row.size()) row.erase(row.begin() + static_cast<std::ptrdiff_t>(c));
    }
    return grid;
}

SheetSizing sheetSizing(const Workbook& workbook, const Results& results,
                        const DisplayUnits& units) {
    SheetSizing sheet;
    const SizingResult& sizing = results.sizing;
    const bool read = std::ranges::any_of(sizing.cleanUps, &std::optional<BoreCleanUp>::has_value);
    if (workbook.sizing.sizes.empty() || sizing.choice.offers.empty() || !read) return sheet;
    sheet.headline = qs(sizing.headline);
    sheet.sentences = sheetTexts(sizing.sentences);
    sheet.how = sheetTexts(sizing.how);
    sheet.cautions = sheetTexts(sizing.cautions);
    sheet.bores = SizeRows(workbook, sizing, units).grid();
    sheet.bars = sizeBarsData(workbook, results, units, 0);
    return sheet;
}

} // namespace borewright
