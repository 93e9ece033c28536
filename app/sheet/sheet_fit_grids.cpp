// SPDX-License-Identifier: GPL-3.0-or-later
// The record's tables of pistons, clearance by depth, and ring gaps.
#include "app/pictures/reading_words.h"
#include "app/pictures/verdict_mark.h"
#include "app/sheet/sheet_data.h"
#include "core/results/fit_figures.h"
#include "core/results/fit_words.h"

#include <algorithm>
#include <set>

namespace borewright {
namespace {

// Columns of clearances side by side; more bores get another table.
constexpr std::size_t mostAcross = 24;

QString pairWord(bool decided) {
    return decided ? SheetWords::tr("decided") : SheetWords::tr("proposed");
}

class PistonRows {
public:
    PistonRows(const Workbook& workbook, const FitResult& fit, const DisplayUnits& units)
        : m_workbook(workbook)
        , m_fit(fit)
        , m_units(units) {}

    [[nodiscard]] SheetGrid grid() const {
        const QString size = unitSymbol(m_units.size), small = unitSymbol(m_units.small);
        SheetGrid grid;
        grid.title = SheetWords::tr("Pistons and clearance, total on the diameter, at 20 °C");
        grid.columns = {{SheetWords::tr("bore"), {}, true},
                        {SheetWords::tr("piston"), {}, true},
                        {SheetWords::tr("its size,\nas measured"), size},
                        {SheetWords::tr("measured,\n°C"), {}},
                        {SheetWords::tr("at height\nof skirt"), size},
                        {SheetWords::tr("bore's\nsmallest"), size},
                        {SheetWords::tr("at"), {}, true},
                        {SheetWords::tr("least\nclearance"), small},
                        {QStringLiteral("±"), small},
                        {SheetWords::tr("verdict"), {}, true},
                        {SheetWords::tr("hone to"), size},
                        {SheetWords::tr("pair"), {}, true},
                        {SheetWords::tr("remark"), {}, true}};
        for (const BoreFit& bore : m_fit.bores)
            grid.rows.push_back(row(bore));
        return withoutEmptyColumns(std::move(grid));
    }

private:
    [[nodiscard]] std::vector<SheetGridCell> row(const BoreFit& bore) const {
        std::vector<SheetGridCell> cells(13);
        cells[0] = {QString::number(bore.bore), {}, true};
        const auto placed = sheetPlaced(m_workbook, m_fit, bore);
        if (!placed) return cells;
        addPiston(cells, m_workbook.fit.pistons[placed->piston]);
        cells[11].text = pairWord(placed->decided);
        if (placed->honeTo) {
            cells[10].text = qs(formatSize(*placed->honeTo, m_units));
            return cells;
        }
        if (bore.clearance) addClearance(cells, bore);
        cells[12].text = bore.clearance ? qs(bore.clearance->why) : qs(bore.clearanceRefused);
        return cells;
    }

    void addPiston(std::vector<SheetGridCell>& cells, const Piston& piston) const {
        cells[1].text = qs(nameOf(piston));
        if (piston.size) cells[2].text = qs(formatSize(piston.size->value(), m_units));
        if (piston.temperature)
            cells[3].text = QString::number(piston.temperature->celsius(), 'g', 3);
        cells[4].text = piston.height ? qs(formatDepth(piston.height->value(), m_units))
                                      : SheetWords::tr("not given");
    }

    void addClearance(std::vector<SheetGridCell>& cells, const BoreFit& bore) const {
        const Clearance& clearance = *bore.clearance;
        const auto measured = std::ranges::find(m_fit.measured, bore.bore, &MeasuredBore::bore);
        if (measured != m_fit.measured.end())
            for (const MeasuredAt& at : measured->at)
                if (at.depth == clearance.depth && at.axis == clearance.axis)
                    cells[5].text = qs(formatSize(at.diameter, m_units));
        cells[6].text = qs(formatDepth(clearance.depth, m_units)) + ' ' + qs(clearance.axis);
        cells[7].text = qs(formatSmall(clearance.value, m_units));
        cells[8].text = sheetDoubt(wholeDoubt(clearance), m_units);
        cells[9] = {verdictWord(clearance.verdict), clearance.verdict,
                    clearance.verdict == Verdict::outside};
    }

    const Workbook& m_workbook;
    const FitResult& m_fit;
    const DisplayUnits& m_units;
};

// Clearance by depth of the bores from `first` to `last`, a column an axis of a bore.
SheetGrid acrossOf(const std::vector<const BoreFit*>& bores, const Block& block,
                   const DisplayUnits& units) {
    SheetGrid grid;
    grid.columns.push_back({SheetWords::tr("depth"), unitSymbol(units.size)});
    std::set<Length> depths;
    std::vector<std::pair<const Clearance*, std::string>> columns;
    for (const BoreFit* bore : bores) {
        for (const ClearanceAt& at : bore->clearance->at)
            depths.insert(at.depth);
        for (const Axis& axis : block.axes) {
            if (!std::ranges::any_of(bore->clearance->at,
                                     [&](const ClearanceAt& at) { return at.axis == axis.id; }))
                continue;
            columns.emplace_back(&*bore->clearance, axis.id);
            grid.columns.push_back(
                {QStringLiteral("%1 %2").arg(QString::number(bore->bore), qs(axis.id)), {}});
        }
    }
    for (const Length depth : depths) {
        std::vector<SheetGridCell> row{{qs(formatDepth(depth, units))}};
        for (const auto& [clearance, axis] : columns) {
            const auto at = std::ranges::find_if(clearance->at, [&](const ClearanceAt& one) {
                return one.depth == depth && one.axis == axis;
            });
            row.push_back({at != clearance->at.end() ? qs(formatSmall(at->value, units))
                                                     : QStringLiteral("–")});
        }
        grid.rows.push_back(std::move(row));
    }
    return grid;
}

class RingRows {
public:
    RingRows(const Workbook& workbook, const FitResult& fit, const DisplayUnits& units)
        : m_workbook(workbook)
        , m_fit(fit)
        , m_units(units) {}

    [[nodiscard]] SheetGrid grid(int groove) const {
        const QString size = unitSymbol(m_units.size), small = unitSymbol(m_units.small);
        SheetGrid grid;
        grid.title = SheetWords::tr("Ring gaps, groove %1 from the crown").arg(groove);
        grid.columns = {{SheetWords::tr("bore"), {}, true},
                        {SheetWords::tr("ring"), {}, true},
                        {SheetWords::tr("its gap,\nmeasured"), small},
                        {SheetWords::tr("in\nbore"), {}},
                        {SheetWords::tr("at"), size},
                        {SheetWords::tr("smallest:\nmeasure at"), size},
                        {SheetWords::tr("smallest"), small},
                        {QStringLiteral("±"), small},
                        {SheetWords::tr("largest"), small},
                        {SheetWords::tr("above\nports"), small},
                        {SheetWords::tr("below\nports"), small},
                        {SheetWords::tr("still\nto file"), small},
                        {SheetWords::tr("in steps of"), {}, true},
                        {SheetWords::tr("verdict"), {}, true},
                        {SheetWords::tr("pair"), {}, true},
                        {SheetWords::tr("remark"), {}, true}};
        for (const BoreFit& bore : m_fit.bores)
            for (const BoreFit::RingHere& here : bore.rings)
                if (here.groove == groove && (here.ring || !here.refused.empty()))
                    grid.rows.push_back(row(bore, here));
        return withoutEmptyColumns(std::move(grid));
    }

private:
    [[nodiscard]] std::vector<SheetGridCell> row(const BoreFit& bore,
                                                 const BoreFit::RingHere& here) const {
        std::vector<SheetGridCell> cells(16);
        cells[0] = {QString::number(bore.bore), {}, true};
        if (here.ring) {
            addMeasured(cells, m_workbook.fit.rings[*here.ring]);
            cells[14].text = pairWord(here.decided);
        }
        cells[15].text = qs(here.refused);
        if (here.gap) addGap(cells, *here.gap);
        if (here.gap && here.gap->filing) addFiling(cells, *here.gap->filing);
        return cells;
    }

    void addMeasured(std::vector<SheetGridCell>& cells, const Ring& ring) const {
        cells[1].text = qs(ring.label.empty() ? ring.id : ring.label);
        if (ring.gap) cells[2].text = qs(formatSmall(ring.gap->value(), m_units));
        if (ring.measuredIn) cells[3].text = QString::number(*ring.measuredIn);
        if (ring.measuredAt) cells[4].text = qs(formatDepth(ring.measuredAt->value(), m_units));
    }

    void addGap(std::vector<SheetGridCell>& cells, const RingGap& gap) const {
        const auto small = [&](Length length) { return qs(formatSmall(length, m_units)); };
        cells[5].text = qs(formatDepth(gap.smallest.depth, m_units));
        cells[6].text = small(gap.smallest.gap);
        cells[7].text = sheetDoubt(wholeDoubt(gap), m_units);
        cells[8].text = small(gap.largest.gap);
        if (gap.abovePorts) cells[9].text = small(gap.abovePorts->gap);
        if (gap.belowPorts) cells[10].text = small(gap.belowPorts->gap);
        const Verdict verdict = worse(gap.smallestVerdict, gap.largestVerdict);
        cells[13] = {verdictWord(verdict), verdict, verdict == Verdict::outside};
    }

    // Equal steps are told as "3 × 2.0".
    void addFiling(std::vector<SheetGridCell>& cells, const Filing& filing) const {
        cells[11].text = qs(formatSmall(filing.total, m_units));
        QStringList steps;
        for (std::size_t i = 0; i < filing.steps.size();) {
            const auto other = std::find_if(filing.steps.begin() + static_cast<std::ptrdiff_t>(i),
                                            filing.steps.end(),
                                            [&](Length step) { return step != filing.steps[i]; });
            const auto same = other - filing.steps.begin() - static_cast<std::ptrdiff_t>(i);
            const QString step = qs(formatSmall(filing.steps[i], m_units));
            steps << (same > 1 ? SheetWords::tr("%1 × %2").arg(same).arg(step) : step);
            i += static_cast<std::size_t>(same);
        }
        cells[12].text = steps.join(QStringLiteral(", "));
    }

    const Workbook& m_workbook;
    const FitResult& m_fit;
    const DisplayUnits& m_units;
};

} // namespace

SheetGrid sheetPistons(const Workbook& workbook, const FitResult& fit, const DisplayUnits& units) {
    return PistonRows(workbook, fit, units).grid();
}

std::vector<SheetGrid> sheetAcross(const Workbook& workbook, const FitResult& fit,
                                   const DisplayUnits& units) {
    std::vector<const BoreFit*> bores;
    for (const BoreFit& bore : fit.bores) {
        const auto placed = sheetPlaced(workbook, fit, bore);
        if (bore.clearance && placed && !placed->honeTo) bores.push_back(&bore);
    }
    std::vector<SheetGrid> grids;
    if (bores.empty()) return grids;
    const std::size_t most =
        std::max<std::size_t>(1, mostAcross / std::max<std::size_t>(1, workbook.block.axes.size()));
    const std::size_t tables = (bores.size() + most - 1) / most;
    const std::size_t each = (bores.size() + tables - 1) / tables;
    for (std::size_t first = 0; first < bores.size(); first += each) {
        const auto from = bores.begin() + static_cast<std::ptrdiff_t>(first);
        const auto to =
            bores.begin() + static_cast<std::ptrdiff_t>(std::min(first + each, bores.size()));
        grids.push_back(acrossOf({from, to}, workbook.block, units));
    }
    grids.front().title =
        SheetWords::tr("Clearance by depth, bore and axis, %1").arg(unitSymbol(units.small));
    return grids;
}

std::vector<SheetGrid> sheetRings(const Workbook& workbook, const FitResult& fit,
                                  const DisplayUnits& units) {
    std::set<int> grooves;
    for (const BoreFit& bore : fit.bores)
        for (const BoreFit::RingHere& here : bore.rings)
            grooves.insert(here.groove);
    std::vector<SheetGrid> grids;
    for (const int groove : grooves)
        if (auto grid = RingRows(workbook, fit, units).grid(groove); !grid.rows.empty())
            grids.push_back(std::move(grid));
    return grids;
}

} // namespace borewright
