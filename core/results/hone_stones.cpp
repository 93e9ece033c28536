// SPDX-License-Identifier: GPL-3.0-or-later
// What has been learned of each stone: how fast it cuts, and whether its face has gone out of line.
#include "core/results/doubt_words.h"
#include "core/results/hone_scene.h"
#include "core/results/hone_words.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace borewright {
namespace {

constexpr double normal95 = 1.96;
// A wedge worth turning or dressing a stone for, printed on the diameter: 0.3 thou (common
// practice, no source).
constexpr double wedgeWorth_um = 7.62;
constexpr double strokesSaid = 60;

// The straight line through a face by least squares, from its upper to its lower end, twice as it
// stands on both sides: what the lower end stands back, printed on the diameter.
void takeWedge(const Belief& belief, std::size_t stone, std::size_t cells, StoneOutlook& outlook) {
    if (cells < 2) return;
    const double middle = 0.5 * static_cast<double>(cells - 1);
    double squares = 0;
    for (std::size_t i = 0; i < cells; ++i)
        squares += (static_cast<double>(i) - middle) * (static_cast<double>(i) - middle);
    Eigen::RowVectorXd row = Eigen::RowVectorXd::Zero(belief.layout.size());
    for (std::size_t i = 0; i < cells; ++i)
        // Cells count from the lower end up.
        row[belief.layout.face(stone, i)] =
            2 * (middle - static_cast<double>(i)) / squares * static_cast<double>(cells - 1);
    outlook.wedge_um = row.dot(belief.mean);
    outlook.wedgeDoubt_um = std::sqrt(std::max(0.0, (row * belief.covariance).dot(row)));
}

bool wedgeIsSure(const StoneOutlook& one) {
    return std::abs(one.wedge_um) > normal95 * one.wedgeDoubt_um;
}

std::string faceWords(const StoneOutlook& one, const DisplayUnits& units) {
    if (!wedgeIsSure(one))
        return "its face is straight as far as can be told (" + amountWords(one.wedge_um, units) +
               " ± " + amountWords(normal95 * one.wedgeDoubt_um, units) + " on the diameter)";
    return fmt::format("its {} end stands back, which prints {} ± {} on the diameter",
                       one.wedge_um > 0 ? "lower" : "upper",
                       amountWords(std::abs(one.wedge_um), units),
                       amountWords(normal95 * one.wedgeDoubt_um, units));
}

std::string lengthWords(const StoneOutlook& one, const DisplayUnits& units) {
    if (one.longer_mm == 0) return {};
    return fmt::format(
        " It cuts as if its abrasive were {} {} {} than entered.",
        formatDepth(Length::nearest(std::abs(one.longer_mm), Unit::millimetre), units),
        symbol(units.size), one.longer_mm > 0 ? "longer" : "shorter");
}

std::string sentenceOf(const Stone& stone, const StoneOutlook& one, bool proven,
                       const DisplayUnits& units) {
    if (one.passes == 0 && !proven)
        return "'" + stone.name + "': how fast it cuts is not known yet; its first pass tells.";
    const double most = one.rate_um * strokesSaid * (one.rateFactor95 - 1);
    std::string text =
        fmt::format("'{}' takes {} ± {} off the diameter in {:.0f} strokes", stone.name,
                    amountWords(one.rate_um * strokesSaid, units),
                    upward(Length::nearest(most, Unit::micrometre), units), strokesSaid);
    if (one.passes == 0) return text + ", by earlier work; not measured here.";
    return text +
           fmt::format(" ({} measured); ", one.passes == 1 ? std::string("one pass")
                                                           : fmt::format("{} passes", one.passes)) +
           faceWords(one, units) + "." + lengthWords(one, units);
}

// The group in which this stone was measured most often.
const LearnedGroup* bestGroup(const std::vector<LearnedGroup>& groups, std::size_t recorded) {
    const LearnedGroup* best = nullptr;
    int most = -1;
    for (const LearnedGroup& group : groups) {
        const auto stone = group.group.stoneAt(recorded);
        const bool told = std::ranges::any_of(
            group.bores, [](const LearnedBore& bore) { return bore.place.has_value(); });
        if (!stone || !told || group.learner.passes(*stone) <= most) continue;
        most = group.learner.passes(*stone);
        best = &group;
    }
    return best;
}

std::size_t anyPlace(const LearnedGroup& group) {
    for (const LearnedBore& bore : group.bores)
        if (bore.place) return *bore.place;
    return 0;
}

std::optional<std::string> adviceOf(const Stone& stone, const StoneOutlook& one) {
    std::vector<std::string> advice;
    if (one.longer_mm != 0)
        advice.push_back("Measure the abrasive of '" + stone.name +
                         "' and correct the list if it is so; until then plans take it to be so.");
    if (one.passes > 0 && wedgeIsSure(one) && std::abs(one.wedge_um) > wedgeWorth_um)
        advice.push_back("Turn '" + stone.name +
                         "' end for end where its carrier lets you, or dress it straight, and log "
                         "that.");
    if (advice.empty()) return std::nullopt;
    return fmt::format("{}", fmt::join(advice, " "));
}

} // namespace

std::vector<StoneOutlook> stoneOutlooks(const HoneScene& scene,
                                        const std::vector<LearnedGroup>& groups) {
    std::vector<StoneOutlook> stones;
    for (std::size_t i = 0; i < scene.workbook.hone.stones.size(); ++i) {
        const Stone& stone = scene.workbook.hone.stones[i];
        StoneOutlook one;
        one.stone = stone.id;
        const LearnedGroup* group = bestGroup(groups, i);
        if (group == nullptr) {
            one.sentence = "'" + stone.name + "': nothing is known of it yet.";
            stones.push_back(std::move(one));
            continue;
        }
        const std::size_t at = *group->group.stoneAt(i);
        const BenchStone& bench = group->learner.bench().stones[at];
        const Belief belief = group->learner.belief(anyPlace(*group));
        const Eigen::Index rate = belief.layout.figure(at, ToolFigure::rate);
        one.rate_um = std::exp(belief.mean[rate]);
        one.rateFactor95 = std::exp(normal95 * std::sqrt(belief.covariance(rate, rate)));
        one.passes = group->learner.passes(at);
        takeWedge(belief, at, bench.grid.cells, one);
        one.longer_mm = group->learner.longer_mm(at);
        one.sentence = sentenceOf(stone, one, bench.proven, scene.units);
        one.advice = adviceOf(stone, one);
        stones.push_back(std::move(one));
    }
    return stones;
}

} // namespace borewright
