// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/rule_of_thumb.h"

#include <algorithm>
#include <cmath>

namespace borewright::test {
namespace {

constexpr double roughStopsAt_um = 4.5 * 25.4;
constexpr double closedEndLeads_um = 0.8 * 25.4;
constexpr double nextStopsAt_um = 1.0 * 25.4;
constexpr double nearSize_um = 2.6; // a step of the dial
constexpr double firstStrokes = 15;
constexpr double boldness = 0.7; // share of what the rate says

// The largest reading, but where the two axes of a depth are not even alike the smaller of them
// counts: whoever reads that looks again.
double largestOf(const std::vector<HoneReading>& read) {
    constexpr double alike_um = 20;
    double largest = std::ranges::min(read, {}, &HoneReading::size_um).size_um;
    for (const HoneReading& reading : read) {
        double size = reading.size_um;
        for (const HoneReading& other : read)
            if (other.at.depth_mm == reading.at.depth_mm && other.size_um < size - alike_um)
                size = other.size_um;
        largest = std::max(largest, size);
    }
    return largest;
}

// What a set-up took, at the half of the stations where it took most.
double taken(const std::vector<HoneReading>& before, const std::vector<HoneReading>& after) {
    std::vector<double> off;
    for (std::size_t i = 0; i < after.size(); ++i)
        off.push_back(after[i].size_um - before[i].size_um);
    std::ranges::sort(off, std::greater<>());
    double sum = 0;
    for (std::size_t i = 0; i < off.size() / 2; ++i)
        sum += off[i];
    return 2 * sum / static_cast<double>(off.size());
}

double meanAt(const std::vector<HoneReading>& read, double from_mm, double to_mm) {
    double sum = 0, count = 0;
    for (const HoneReading& reading : read)
        if (reading.at.depth_mm >= from_mm && reading.at.depth_mm <= to_mm)
            sum += reading.size_um, count += 1;
    return sum / count;
}

} // namespace

std::unique_ptr<HonePolicy> RuleOfThumb::make(const BoreAsStated& stated) {
    return std::make_unique<RuleOfThumb>(stated);
}

// The lower two stations against the rest.
RuleOfThumb::Leads RuleOfThumb::leads(const std::vector<HoneReading>& read) const {
    const std::vector<double>& at = m_stated.stations;
    const std::size_t last = at.size() - 1;
    const double rest = meanAt(read, at.front(), at[last - 2]);
    return {meanAt(read, at[last], at[last]) - rest,
            meanAt(read, at[last - 1], at[last - 1]) - rest};
}

std::size_t RuleOfThumb::stone() const {
    return m_stage == Stage::finish ? 2 : m_stage == Stage::low ? 1 : 0;
}

HoneWindow RuleOfThumb::window(std::size_t stone, bool lags) const {
    const double lowest = m_stated.lowest_mm(stone);
    if (stone != 1) return {m_stated.highest_mm(stone), lowest, 0, 0};
    // Short strokes at the very end while that is what lags, longer ones else.
    return {lowest - (lags ? 5 : 20), lowest, 0, 0};
}

double RuleOfThumb::toGo(const std::vector<HoneReading>& read) const {
    switch (m_stage) {
    case Stage::rough:
        return -largestOf(read) - roughStopsAt_um;
    case Stage::low: {
        // As far as it may lead, but never into what the later stones need.
        const Leads lead = leads(read);
        return std::min({closedEndLeads_um - std::min(lead.lowest, lead.above),
                         1.6 * closedEndLeads_um - std::max(lead.lowest, lead.above),
                         -largestOf(read) - nextStopsAt_um});
    }
    case Stage::roughAgain:
        return -largestOf(read) - nextStopsAt_um;
    default:
        return -largestOf(read);
    }
}

void RuleOfThumb::advance(const std::vector<HoneReading>& read) {
    // While there is room the short stone is taken up again when the closed end falls behind.
    const Leads lead = leads(read);
    if (m_stage == Stage::roughAgain && std::min(lead.lowest, lead.above) < closedEndLeads_um / 2)
        m_stage = Stage::low;
    while (m_stage != Stage::done && toGo(read) < nearSize_um)
        m_stage = static_cast<Stage>(static_cast<int>(m_stage) + 1);
}

void RuleOfThumb::learn(const HoneHistory& history) {
    if (history.steps.empty()) return;
    const HoneStep& last = history.steps.back();
    const std::vector<HoneReading>& before =
        history.steps.size() == 1 ? history.before : history.steps.rbegin()[1].readings;
    const double seen =
        std::max(0.05, taken(before, last.readings)) / last.setUp.windows.front().strokes;
    double& rate = m_rate[last.setUp.stone];
    rate = rate <= 0 ? seen : (rate + seen) / 2;
}

std::optional<HoneSetUp> RuleOfThumb::next(const HoneHistory& history) {
    learn(history);
    const std::vector<HoneReading>& read =
        history.steps.empty() ? history.before : history.steps.back().readings;
    advance(read);
    if (m_stage == Stage::done) return std::nullopt;
    HoneSetUp setUp;
    setUp.stone = stone();
    const Leads lead = leads(read);
    HoneWindow stroked = window(setUp.stone, lead.lowest < lead.above);
    const double rate = m_rate[setUp.stone];
    stroked.strokes =
        rate <= 0 ? firstStrokes : std::clamp(boldness * toGo(read) / rate, 2.0, 90.0);
    stroked.strokes = std::round(stroked.strokes);
    setUp.windows = {stroked};
    setUp.stations = allStations(m_stated);
    return setUp;
}

} // namespace borewright::test
