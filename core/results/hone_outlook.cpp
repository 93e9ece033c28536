// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/results/hone_outlook.h"

#include "core/results/hone_memory.h"
#include "core/results/hone_scene.h"
#include "core/results/hone_words.h"
#include "core/results/sizing_words.h"
#include "core/results/words.h"

#include <algorithm>
#include <fmt/format.h>

namespace borewright {
namespace {

std::vector<int> boresOf(const Workbook& workbook, const std::vector<int>& asked) {
    std::vector<int> bores = asked;
    if (bores.empty())
        for (const Bore& bore : workbook.block.bores)
            bores.push_back(bore.number);
    std::ranges::sort(bores);
    bores.erase(std::ranges::unique(bores).begin(), bores.end());
    return bores;
}

std::string refusalOf(const Workbook& workbook, const Results& results) {
    if (workbook.block.bores.empty()) return "There is no bore yet: describe the block first.";
    if (std::ranges::all_of(workbook.block.bores,
                            [](const Bore& bore) { return bore.surface == Surface::plated; }))
        return "Every bore is plated: ordinary stones would break the plating, so nothing is "
               "planned. Plated bores are honed only as the plater says.";
    if (workbook.hone.stones.empty()) return "No stone is in the list: enter the stones there are.";
    const bool measured = std::ranges::any_of(
        results.surveys, [](const SurveyResult& survey) { return survey.measured > 0; });
    if (!measured) return "Nothing has been measured yet: measure the bores first.";
    return {};
}

std::vector<int> with(const HoneOutlook& outlook, const auto& holds) {
    std::vector<int> numbers;
    for (const BoreOutlook& bore : outlook.bores)
        if (holds(bore)) numbers.push_back(bore.bore);
    return numbers;
}

// "Fit the short stone: hone bores 1, 2 and 4; bores 3 and 5 wait; bore 6 is done."
void wordBlock(const HoneScene& scene, HoneOutlook& outlook) {
    const auto working = with(outlook, [](const BoreOutlook& b) { return b.next.has_value(); });
    const auto waiting = with(outlook, [](const BoreOutlook& b) { return b.waits; });
    const auto done =
        with(outlook, [](const BoreOutlook& b) { return b.outcome == HoneOutcome::done; });
    const auto toMeasure =
        with(outlook, [](const BoreOutlook& b) { return b.outcome == HoneOutcome::notMeasured; });
    const auto say = [&](const std::vector<int>& bores, const char* one, const char* many) {
        if (bores.empty()) return;
        if (!outlook.headline.empty()) outlook.headline += "; ";
        outlook.headline += boresWords(bores) + (bores.size() == 1 ? one : many);
    };
    if (outlook.fit && !working.empty())
        outlook.headline = "Fit '" + findStone(scene.workbook.hone, *outlook.fit)->name +
                           "' and hone " + boresWords(working) + ", then wash and measure";
    say(waiting, " waits for another stone", " wait for another stone");
    say(toMeasure, " is to be measured first", " are to be measured first");
    say(done, " is done", " are done");
    if (outlook.headline.empty()) outlook.headline = "Nothing is to be honed";
    outlook.headline = capitalized(outlook.headline) + ".";
}

void wordAhead(const BlockAhead& ahead, HoneOutlook& outlook) {
    outlook.stopsLeft = ahead.stops;
    outlook.changesLeft = ahead.changes;
    if (ahead.stops == 0) return;
    constexpr double minutesAnHour = 60;
    const std::string time = ahead.minutes < 2 * minutesAnHour
                                 ? fmt::format("{:.0f} minutes", ahead.minutes)
                                 : fmt::format("{:.1f} hours", ahead.minutes / minutesAnHour);
    outlook.sentences.push_back(
        fmt::format("As it looks now {} {} left and {} {} of stone, about {} with washing and "
                    "measuring (3 minutes a change, 1.5 a bore, 5 to wash and measure: common "
                    "practice).",
                    numberWord(ahead.stops), ahead.stops == 1 ? "stop is" : "stops are",
                    ahead.changes == 0 ? "no" : numberWord(ahead.changes),
                    ahead.changes == 1 ? "change" : "changes", time));
}

} // namespace

HoneOutlook honeOutlook(const Workbook& workbook, const Results& results, const DisplayUnits& units,
                        const HoneWishes& wishes, const std::vector<int>& bores,
                        bool withAlternatives, const HoneProgress& progress,
                        const std::shared_ptr<HoneMemory>& memory) {
    HoneOutlook outlook;
    outlook.cautions = honingCautions();
    outlook.refused = refusalOf(workbook, results);
    const HoneScene scene{workbook, results, units};
    HonePlanner planner(workbook, results, wishes, memory.get(), progress);
    outlook.stones = stoneOutlooks(scene, planner.groups());
    const std::vector<int> asked = boresOf(workbook, bores);
    constexpr std::size_t searchesOfAlternatives = 5;
    if (withAlternatives) planner.expect(searchesOfAlternatives * asked.size());
    std::vector<PlannedBore> planned;
    if (outlook.refused.empty())
        planned = planner.plan(asked);
    else
        for (const int number : asked)
            planned.push_back(planner.start(number));
    for (const PlannedBore& bore : planned) {
        outlook.bores.push_back(boreOutlook(scene, bore, planner.fitted(), planner.fit()));
        if (withAlternatives)
            outlook.bores.back().alternatives = alternativesOf(scene, bore, wishes, planner);
    }
    if (planner.fit()) outlook.fit = workbook.hone.stones[*planner.fit()].id;
    outlook.cancelled = planner.cancelled();
    if (!outlook.refused.empty()) {
        outlook.headline = outlook.refused;
        return outlook;
    }
    wordBlock(scene, outlook);
    wordAhead(blockAhead(planned, planner.fitted(), planner.fit()), outlook);
    return outlook;
}

} // namespace borewright
