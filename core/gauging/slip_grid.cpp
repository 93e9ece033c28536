// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/gauging/slip_grid.h"

#include <algorithm>

namespace borewright::slips {
namespace {

// While a bore is still being read, its levels lie no farther apart than they will in the end: a
// usual stroke (common practice, no source).
constexpr Length leastSpan = Length::whole(70, Unit::millimetre);

double median(std::vector<double>& values) {
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::ranges::nth_element(values, middle);
    if (values.size() % 2 == 1) return *middle;
    return (*middle + *std::max_element(values.begin(), middle)) / 2;
}

} // namespace

double size_um(const TypedLength& typed, const GaugeSetting& gauge) {
    const double um = typed.value().in(Unit::micrometre);
    return gauge.entry == Entry::deviation && gauge.dial.larger == Dial::Larger::minus ? -um : um;
}

Grid::Grid(const Survey& survey) {
    for (const Reading& reading : survey.readings)
        if (!reading.struck) m_depths.push_back(reading.station.depth);
    std::ranges::sort(m_depths);
    m_depths.erase(std::unique(m_depths.begin(), m_depths.end()), m_depths.end());
    if (!m_depths.empty()) m_span = std::max(leastSpan, m_depths.back() - m_depths.front());

    for (std::size_t i = 0; i < survey.readings.size(); ++i) {
        const Reading& reading = survey.readings[i];
        if (reading.struck) continue;
        const auto after =
            std::ranges::lower_bound(bores, reading.station.bore, {}, &BoreCells::number);
        const auto bore = after != bores.end() && after->number == reading.station.bore
                              ? after
                              : bores.insert(after, {reading.station.bore, 0, {}});
        bore->cells.push_back({i, spotOf(reading.station),
                               size_um(reading.typed, survey.header.gauge), reading.kept});
    }
    std::vector<double> sizes;
    for (BoreCells& bore : bores) {
        std::ranges::stable_sort(bore.cells, {}, [](const Cell& c) { return placeOf(c.spot); });
        sizes.clear();
        for (const Cell& cell : bore.cells)
            sizes.push_back(cell.x_um);
        bore.middle_um = median(sizes);
        for (Cell& cell : bore.cells)
            cell.x_um -= bore.middle_um;
    }
}

Spot Grid::spotOf(const Station& station) {
    auto axis = std::ranges::find(m_axes, station.axis);
    if (axis == m_axes.end()) axis = m_axes.insert(axis, station.axis);
    const auto level = std::ranges::lower_bound(m_depths, station.depth);
    const bool known = level != m_depths.end() && *level == station.depth;
    const double span_um = m_span.in(Unit::micrometre);
    const double below_um =
        m_depths.empty() ? 0 : (station.depth - m_depths.front()).in(Unit::micrometre);
    // Between two levels that were read lies one that was not: −1 less the one above it.
    const int number = static_cast<int>(level - m_depths.begin());
    return {known ? number : -1 - number, static_cast<int>(axis - m_axes.begin()),
            span_um > 0 ? below_um / span_um : 0}; // no span: nothing was read
}

Patterns patternsFor(const std::vector<BoreCells>& bores, std::size_t bore,
                     const std::vector<Spot>& spots) {
    if (bores.size() < 2) return {};
    const bool asMedian = bores.size() > 3;
    Patterns patterns(asMedian ? 1 : bores.size() - 1);
    for (std::vector<double>& pattern : patterns)
        pattern.reserve(spots.size());
    std::vector<std::size_t> at(bores.size(), 0); // bores and spots run through in one order
    std::vector<double> there;
    for (const Spot& spot : spots) {
        there.clear();
        std::size_t single = 0;
        for (std::size_t other = 0; other < bores.size(); ++other) {
            if (other == bore) continue;
            const std::vector<Cell>& cells = bores[other].cells;
            std::size_t& i = at[other];
            while (i < cells.size() && placeOf(cells[i].spot) < placeOf(spot))
                ++i;
            const bool read = i < cells.size() && placeOf(cells[i].spot) == placeOf(spot);
            if (read) (asMedian ? there : patterns[single]).push_back(cells[i].x_um);
            ++single;
        }
        if (asMedian && there.size() < 2) return {};
        if (asMedian) patterns.front().push_back(median(there));
    }
    std::erase_if(patterns, [&](const auto& pattern) { return pattern.size() < spots.size(); });
    return patterns;
}

} // namespace borewright::slips
