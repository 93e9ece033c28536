// SPDX-License-Identifier: GPL-3.0-or-later
// A station passed over: the readings behind it stand one station too early, and the last of the
// column is empty.
#include "core/gauging/slip_candidates.h"
#include "core/gauging/slip_judge.h"

#include "core/length/format.h"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace borewright::slips {
namespace {

// An empty station with readings typed after it is rare unless one was passed over: of such
// columns, this many (common practice, no source).
constexpr double leftBehindShare = 0.05;

// One column of the plan: where a reading stands, which it is.
struct Column {
    std::vector<Station> stations;
    std::vector<std::optional<std::size_t>> cells;
};

std::vector<Column> columnsOf(const BoreCase& bore) {
    const int number = (*bore.bores)[bore.bore].number;
    const Bore* plan = findBore(bore.workbook->block, number);
    std::vector<Column> columns;
    if (plan == nullptr) return columns;
    std::vector<Station> stations = askedStations(*bore.workbook, bore.survey->header);
    std::erase_if(stations, [&](const Station& s) {
        return s.bore != number || !hasWall(*plan, s.depth, s.axis);
    });
    std::ranges::sort(stations, {}, [](const Station& s) { return std::tuple(s.axis, s.depth); });
    for (const Station& station : stations) {
        if (columns.empty() || columns.back().stations.front().axis != station.axis)
            columns.emplace_back();
        columns.back().stations.push_back(station);
        std::optional<std::size_t> there;
        for (std::size_t i = 0; i < bore.cells->size(); ++i)
            if (bore.survey->readings[(*bore.cells)[i].reading].station == station) there = i;
        columns.back().cells.push_back(there);
    }
    return columns;
}

// Tries every station that may have been passed over when the column's empty station `hole` should
// hold the reading beside it; `step` is +1 where the readings above move down, −1 for up.
class SkipTrial {
public:
    SkipTrial(const BoreCase& bore, const Column& column, std::size_t hole, int step, bool onlyOne)
        : m_case(bore)
        , m_column(column)
        , m_hole(hole)
        , m_step(step)
        , m_onlyOne(onlyOne)
        , m_cells(*bore.cells) {
        Cell empty;
        empty.spot = bore.grid->spotOf(column.stations[hole]);
        const auto after = std::ranges::upper_bound(m_cells, placeOf(empty.spot), {},
                                                    [](const Cell& c) { return placeOf(c.spot); });
        m_added = static_cast<std::size_t>(after - m_cells.begin());
        m_cells.insert(after, empty);
    }

    void weigh(std::vector<Hypothesis>& slips) {
        std::vector<Spot> spots;
        for (const Cell& cell : m_cells)
            spots.push_back(cell.spot);
        const Patterns patterns = patternsFor(*m_case.bores, m_case.bore, spots);
        const BoreModel model(spots, m_case.noise_um);
        double share = wasLeftBehind() ? leftBehindShare : shareOf(Slip::stationSkipped);
        std::vector<SlipFix> fixes;
        std::vector<std::size_t> accused;
        std::size_t to = m_hole;
        while (const auto from = next(to)) {
            const std::size_t cell = *m_column.cells[*from];
            if (m_cells[place(cell)].settled) return;
            const std::size_t reading = (*m_case.cells)[cell].reading;
            m_cells[to == m_hole ? m_added : place(*m_column.cells[to])].x_um =
                (*m_case.cells)[cell].x_um;
            fixes.push_back({m_column.stations[to], occupant(to),
                             m_case.survey->readings[reading].typed, reading});
            accused.push_back(reading);
            share *= 0.7;
            std::vector<double> x_um;
            for (const Cell& c : m_cells)
                x_um.push_back(c.x_um);
            const double log =
                BoreFit(model, x_um, patterns).logWithout(place(cell)) + std::log(share);
            slips.push_back(hypothesis(log, fixes, accused, *from));
            to = *from;
        }
    }

private:
    // Where a cell of the case stands once the empty one is among them.
    [[nodiscard]] std::size_t place(std::size_t cell) const {
        return cell < m_added ? cell : cell + 1;
    }
    // Whether he went on to other columns and never came back for the empty station, the only one
    // of its bore.
    [[nodiscard]] bool wasLeftBehind() const {
        if (!m_onlyOne) return false;
        std::size_t last = 0;
        for (const auto& cell : m_column.cells)
            if (cell) last = std::max(last, (*m_case.cells)[*cell].reading);
        return last + 1 < m_case.survey->readings.size();
    }
    // The station whose reading belongs at `to`, or nothing at the end of the run.
    [[nodiscard]] std::optional<std::size_t> next(std::size_t to) const {
        const std::ptrdiff_t from = static_cast<std::ptrdiff_t>(to) - m_step;
        if (from < 0 || from >= std::ssize(m_column.cells)) return std::nullopt;
        const auto index = static_cast<std::size_t>(from);
        return m_column.cells[index] ? std::optional(index) : std::nullopt;
    }
    [[nodiscard]] std::optional<std::size_t> occupant(std::size_t station) const {
        const auto cell = m_column.cells[station];
        return cell ? std::optional((*m_case.cells)[*cell].reading) : std::nullopt;
    }
    [[nodiscard]] Hypothesis hypothesis(double log, std::vector<SlipFix> fixes,
                                        std::vector<std::size_t> accused,
                                        std::size_t skipped) const {
        const Station& empty = m_column.stations[skipped];
        const std::size_t stands = *occupant(skipped);
        fixes.push_back({empty, stands, std::nullopt, stands});
        std::ranges::sort(accused);
        const bool inch = isInchFamily(m_case.survey->readings[stands].typed.unit());
        std::string words =
            "the station at " +
            depthWithUnit(empty.depth, inch ? DisplayUnits::inch() : DisplayUnits::metric()) +
            " on " + empty.axis + " was passed over, and what lies behind it moved " +
            (m_step > 0 ? "up" : "down");
        return {Slip::stationSkipped, log, std::move(accused), std::move(fixes), std::move(words)};
    }

    const BoreCase& m_case;
    const Column& m_column;
    std::size_t m_hole;
    int m_step;
    bool m_onlyOne;
    std::vector<Cell> m_cells;
    std::size_t m_added = 0;
};

} // namespace

void weighSkipped(const BoreCase& bore, std::vector<Hypothesis>& slips) {
    if (bore.workbook == nullptr) return;
    const std::vector<Column> columns = columnsOf(bore);
    std::ptrdiff_t empty = 0;
    for (const Column& column : columns)
        empty += std::ranges::count(column.cells, std::optional<std::size_t>());
    for (const Column& column : columns)
        for (std::size_t hole = 0; hole < column.cells.size(); ++hole) {
            if (column.cells[hole]) continue;
            SkipTrial(bore, column, hole, 1, empty == 1).weigh(slips);
            SkipTrial(bore, column, hole, -1, empty == 1).weigh(slips);
        }
}

} // namespace borewright::slips
