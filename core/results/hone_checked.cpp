// SPDX-License-Identifier: GPL-3.0-or-later
// The last check against what was expected of it, and what could explain where it differs.
#include "core/results/hone_scene.h"
#include "core/results/hone_words.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace borewright {
namespace {

constexpr double normal95 = 1.96;

struct Compared {
    double difference_um = 0; // found less expected, mean over the readings
    double band_um = 0;       // ± 95 % of one reading, mean
    int within = 0;
    int counted = 0;
    double lean_um = 0; // of the difference, from the topmost to the lowest reading
};

Compared compare(const Found& found) {
    Compared result;
    double depths = 0, squares = 0, products = 0;
    for (const Found::At& at : found.readings) {
        if (at.odd) continue;
        const double difference = at.found_um - at.expected.mean_um;
        const double band = normal95 * at.expected.deviation_um;
        result.difference_um += difference;
        result.band_um += band;
        result.within += std::abs(difference) <= band ? 1 : 0;
        ++result.counted;
        depths += at.look.depth_mm;
    }
    if (result.counted == 0) return result;
    const double count = result.counted;
    result.difference_um /= count;
    result.band_um /= count;
    double first = found.readings.front().look.depth_mm, last = first;
    for (const Found::At& at : found.readings) {
        if (at.odd) continue;
        const double from = at.look.depth_mm - depths / count;
        squares += from * from;
        products += from * (at.found_um - at.expected.mean_um);
        first = std::min(first, at.look.depth_mm);
        last = std::max(last, at.look.depth_mm);
    }
    if (squares > 0) result.lean_um = products / squares * (last - first);
    return result;
}

std::string againstExpected(const Compared& one, const DisplayUnits& units) {
    const std::string amount = amountWords(std::abs(one.difference_um), units);
    const bool shown = amount.find_first_of("123456789") != std::string::npos;
    const bool alike = !shown || std::abs(one.difference_um) < 0.3 * one.band_um;
    return fmt::format("{} of {} readings lie within what was expected of them (± {} on the "
                       "average); on the whole the bore is {}.",
                       one.within, one.counted, amountWords(one.band_um, units),
                       alike                   ? "as expected"
                       : one.difference_um > 0 ? amount + " larger than expected"
                                               : amount + " smaller than expected");
}

// Common practice, no source.
std::string explanations(const Compared& one) {
    if (std::abs(one.lean_um) > 2 * std::abs(one.difference_um))
        return "What could explain it: the stone's face has gone out of line or it tilts in its "
               "holder, the stroke went further or less far than logged, a hard spot, one end of "
               "the block still warm.";
    return one.difference_um > 0
               ? "What could explain it: more strokes than logged, the hone caught or its feed "
                 "was set harder, another stone than logged, a freshly dressed stone, a bore "
                 "still warm, the gauge moved."
               : "What could explain it: the stone is loaded or glazed, fewer strokes than "
                 "logged, another stone than logged, a weaker feed, the gauge moved.";
}

std::string oddWords(const HoneScene& scene, const PlannedBore& bore, const Found& found) {
    std::vector<Look> looks;
    for (const Found::At& at : found.readings)
        if (at.odd) looks.push_back(at.look);
    const auto stations = stationsOf(scene.workbook.block, bore.bore, looks);
    if (stations.empty()) return {};
    return (stations.size() == 1 ? "One reading does not fit: " : "Some readings do not fit: ") +
           measureWords(stations, scene.workbook.block, scene.units) + " " +
           std::string(symbol(scene.units.size)) + ". Read it again; it counts for little.";
}

} // namespace

std::optional<BoreOutlook::Checked> checkedOf(const HoneScene& scene, const PlannedBore& bore) {
    const auto found = bore.group->checks.find(bore.place);
    if (found == bore.group->checks.end() || bore.learned->passSince) return std::nullopt;
    const Found& last = found->second.found;
    BoreOutlook::Checked checked;
    checked.survey = found->second.survey;
    checked.readings = last.readings;
    checked.surprised = last.surprised;
    const Compared compared = compare(last);
    if (compared.counted > 0) checked.sentences.push_back(againstExpected(compared, scene.units));
    if (last.surprised) {
        checked.sentences.push_back(explanations(compared));
        checked.sentences.emplace_back("What follows is planned more carefully for it: the model "
                                       "is trusted less.");
    }
    if (std::string odd = oddWords(scene, bore, last); !odd.empty())
        checked.sentences.push_back(std::move(odd));
    return checked;
}

} // namespace borewright
