// SPDX-License-Identifier: GPL-3.0-or-later
// A bore's plan put into what is shown.
#include "core/results/hone_scene.h"
#include "core/results/hone_words.h"
#include "core/results/sizing_words.h"
#include "core/results/words.h"

#include <algorithm>
#include <cmath>

namespace borewright {
namespace {

constexpr double normal95 = 1.96;
constexpr double secondsAMinute = 60;

HoneLine lineOf(const Foreseen& foreseen) {
    HoneLine line;
    for (Eigen::Index i = 0; i < foreseen.wall.size(); ++i) {
        line.mean_um.push_back(foreseen.wall[i]);
        line.band_um.push_back(std::max(0.0, foreseen.largest[i] - foreseen.wall[i]) +
                               normal95 * foreseen.deviation[i]);
    }
    return line;
}

// Depths as the shop's scale has them: hundredths of an inch, half millimetres.
TypedLength handy(double mm, const DisplayUnits& units) {
    const bool inch = isInchFamily(units.size);
    const double step_mm = inch ? 0.254 : 0.5;
    const double steps = std::round(mm / step_mm);
    const Length length =
        inch ? Length::whole(static_cast<std::int64_t>(steps) * 100, Unit::tenth)
             : Length::whole(static_cast<std::int64_t>(steps) * 500, Unit::micrometre);
    return typedFrom(length, units.size);
}

// Never beyond what the stone reaches, however the step falls.
PlannedWindow windowOf(const HoneScene& scene, const Stroking& stroking, const StoneReach& reach) {
    PlannedWindow window;
    const auto within = [&](double mm) {
        const TypedLength typed = handy(mm, scene.units);
        if (typed.value() < reach.highest) return typedFrom(reach.highest, scene.units.size);
        if (typed.value() > reach.lowest) return typedFrom(reach.lowest, scene.units.size);
        return typed;
    };
    const double beats = scene.workbook.hone.hone.beatsPerMinute;
    window.from = within(stroking.from_mm);
    window.to = within(stroking.to_mm);
    window.strokes = std::round(stroking.strokes);
    window.seconds = window.strokes * secondsAMinute / beats;
    window.holdSeconds = std::round(stroking.held * secondsAMinute / beats);
    return window;
}

std::vector<PlannedWindow> windowsOf(const HoneScene& scene, const SetUp& setUp,
                                     const StoneReach& reach) {
    std::vector<PlannedWindow> windows;
    for (const Stroking& stroking : setUp.windows) {
        const PlannedWindow window = windowOf(scene, stroking, reach);
        if (window.strokes > 0 || window.holdSeconds > 0) windows.push_back(window);
    }
    return windows;
}

std::vector<std::string> outlineOf(const HoneScene& scene, const PlannedBore& bore,
                                   const HonePlan& plan, std::size_t from) {
    std::vector<std::string> lines;
    const Bore& recorded = *findBore(scene.workbook.block, bore.bore);
    for (std::size_t i = from; i < plan.setUps.size(); ++i) {
        const Stone& stone = scene.workbook.hone.stones[bore.recorded(plan.setUps[i].stone)];
        const auto reach = reachOf(stone, recorded);
        const auto windows = windowsOf(scene, plan.setUps[i], *reach);
        lines.push_back(capitalized(stone.name) + ": about " +
                        windowsWords(windows, scene.workbook.hone.hone, scene.units) + ".");
    }
    const int more = plan.setUpsLeft - static_cast<int>(plan.setUps.size());
    if (more > 0)
        lines.push_back("Then about " + numberWord(more) + " more, planned anew after each check.");
    return lines;
}

int changesIn(const HonePlan& plan, std::optional<std::size_t> fitted) {
    int changes = 0;
    for (const SetUp& setUp : plan.setUps) {
        if (fitted && *fitted != setUp.stone) ++changes;
        fitted = setUp.stone;
    }
    return changes;
}

std::string waitsWords(const HoneScene& scene, const PlannedBore& bore,
                       std::optional<std::size_t> fit) {
    const auto& stones = scene.workbook.hone.stones;
    const Stone& needs = stones[bore.recorded(bore.plan.setUps.front().stone)];
    std::string text = "Waits for '" + needs.name + "'";
    if (fit) text += ": nothing to do in it with '" + stones[*fit].name + "' at this stop";
    return text + ".";
}

void takeNext(const HoneScene& scene, const PlannedBore& bore, std::optional<std::size_t> fitted,
              std::optional<std::size_t> fit, BoreOutlook& outlook) {
    const HonePlan& plan = bore.waits ? bore.plan : bore.chosen;
    outlook.setUpsLeft = plan.setUpsLeft;
    outlook.stoneChanges =
        changesIn(plan, fitted ? bore.group->group.stoneAt(*fitted) : std::nullopt);
    const std::size_t stone = plan.setUps.front().stone;
    outlook.modelOnly =
        bore.group->learner.passes(stone) == 0 && !bore.group->group.bench.stones[stone].proven;
    if (bore.waits) {
        outlook.waits = true;
        outlook.headline = waitsWords(scene, bore, fit);
        outlook.outline = outlineOf(scene, bore, plan, 0);
        return;
    }
    outlook.next = plannedSetUp(scene, bore, plan, fitted);
    outlook.headline = outlook.next->sentence;
    outlook.outline = outlineOf(scene, bore, plan, 1);
}

void suggestMeasuring(const HoneScene& scene, const PlannedBore& bore, BoreOutlook& outlook) {
    outlook.toRead = stationsOf(scene.workbook.block, bore.bore,
                                worthReading(bore.group->learner, bore.place, bore.aim->aim));
    if (outlook.toRead.empty()) return;
    outlook.sentences.push_back(
        "What tells most: " + measureWords(outlook.toRead, scene.workbook.block, scene.units) +
        " " + std::string(symbol(scene.units.size)) + ".");
}

} // namespace

std::vector<Station> stationsOf(const Block& block, int number, const std::vector<Look>& looks) {
    std::vector<Station> stations;
    const Bore* bore = findBore(block, number);
    if (bore == nullptr) return stations;
    std::vector<Level> levels = bore->levels;
    for (const Level& level : proposeLevels(*bore))
        levels.push_back(level);
    for (const Look& look : looks)
        for (const Axis& axis : block.axes) {
            if (axisShare(block, axis.id) != look.axis) continue;
            const auto level = std::ranges::find_if(levels, [&](const Level& one) {
                return one.depth.value().in(Unit::millimetre) == look.depth_mm;
            });
            if (level != levels.end()) stations.push_back({number, level->depth.value(), axis.id});
            break;
        }
    return stations;
}

PlannedSetUp plannedSetUp(const HoneScene& scene, const PlannedBore& bore, const HonePlan& plan,
                          std::optional<std::size_t> fitted) {
    const SetUp& setUp = plan.setUps.front();
    const Foreseen& then = plan.foreseen.front();
    const std::size_t recorded = bore.recorded(setUp.stone);
    const Stone& stone = scene.workbook.hone.stones[recorded];
    const auto reach = reachOf(stone, *findBore(scene.workbook.block, bore.bore));
    PlannedSetUp next;
    next.stone = stone.id;
    next.windows = windowsOf(scene, setUp, *reach);
    next.measure = stationsOf(scene.workbook.block, bore.bore, plan.measure);
    next.sentence = setUpSentence(next, stone, scene.workbook, scene.units);
    next.minutes = hone_time::bore_min + hone_time::measure_min +
                   (fitted == recorded ? 0 : hone_time::change_min);
    next.chanceOver = then.chanceOver;
    next.overWords = overWords(then.chanceOver);
    next.spread_um = then.spread_um;
    next.spreadAll_um = then.spreadAll_um;
    return next;
}

HoneCurves curvesOf(const PlannedBore& bore, const Foreseen& now, const Foreseen* then) {
    HoneCurves curves;
    const WallGrid& grid = bore.group->group.bench.grid;
    for (std::size_t cell = 0; cell < grid.cells; ++cell)
        curves.depth_mm.push_back(grid.middle_mm(cell));
    curves.now = lineOf(now);
    if (then != nullptr) curves.then = lineOf(*then);
    return curves;
}

BoreOutlook boreOutlook(const HoneScene& scene, const PlannedBore& bore,
                        std::optional<std::size_t> fitted, std::optional<std::size_t> fit) {
    BoreOutlook outlook;
    outlook.bore = bore.bore;
    outlook.outcome = bore.outcome;
    if (bore.aim) {
        outlook.finishSize = bore.aim->size;
        outlook.cap_um = bore.aim->aim.upperLimit_um;
        if (bore.aim->lower)
            outlook.lower_um = (*bore.aim->lower - bore.aim->size).in(Unit::micrometre);
    }
    outlook.headline = headlineOf(scene, bore);
    outlook.oddities = honeOddities(scene, bore);
    if (!bore.canBePlanned()) return outlook;
    if (bore.learned->passSince) suggestMeasuring(scene, bore, outlook);
    outlook.good = !bore.learned->passSince && isGood(bore);
    const Foreseen now = asItStands(bore.group->learner, bore.place, bore.aim->aim);
    if (bore.outcome == HoneOutcome::next) takeNext(scene, bore, fitted, fit, outlook);
    const bool then = outlook.next.has_value() && !bore.chosen.foreseen.empty();
    outlook.curves = curvesOf(bore, now, then ? &bore.chosen.foreseen.front() : nullptr);
    outlook.checked = checkedOf(scene, bore);
    for (std::string& remark : remarksOf(scene, bore))
        outlook.sentences.push_back(std::move(remark));
    return outlook;
}

} // namespace borewright
