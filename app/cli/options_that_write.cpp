// SPDX-License-Identifier: GPL-3.0-or-later
// Of the commands that write into a workbook.
#include "app/cli/options.h"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <map>
#include <tuple>

namespace borewright {
namespace {

// The options as they stood on the line, one after the other.
std::vector<TypedOption> asTyped(const CLI::App& sub, const std::vector<CLI::Option*>& wanted) {
    std::vector<TypedOption> typed;
    std::map<const CLI::Option*, std::size_t> seen;
    for (const CLI::Option* option : sub.parse_order())
        if (std::ranges::find(wanted, option) != wanted.end())
            typed.push_back({option->get_name(), option->results()[seen[option]++]});
    return typed;
}

} // namespace

void addOptions(CLI::App& sub, RecordOptions& options) {
    sub.add_option("READINGS.csv", options.readings, "bore, depth, axis, reading, unit");
    sub.add_option("--bore", options.bore, "instead of a file: of the readings typed here");
    sub.add_option("--reading", options.typed,
                   "depth, axis and what was read: 0.6in,A,3.4381; with decimal commas "
                   "0,6in;A;3,4381; as often as there are readings")
        ->allow_extra_args(false);
    sub.add_option("--survey", options.survey, "survey to add to, or name of a new one");
    sub.add_option("--kind", options.kind, "of a new survey")
        ->check(CLI::IsMember({"as-found", "before-boring", "check", "final"}));
    sub.add_option("--set", options.setSize,
                   "of a new survey: size the gauge was set to (3.42in); readings are then "
                   "deviations from it, else diameters");
    sub.add_option("--larger", options.larger,
                   "what a larger bore reads: plus or minus; else as in the survey "
                   "before, plus in the first")
        ->check(CLI::IsMember({"plus", "minus"}));
    sub.add_flag("--add-levels", options.addLevels, "add depths that the plan does not have");
    sub.add_flag("--take-good-rows", options.takeGoodRows,
                 "take the good rows of a file with wrong ones");
    addAnyway(sub, options.anyway);
}

void addOptions(CLI::App& sub, StoneOptions& options) {
    sub.add_option("--name", options.name, "which; a new name adds a stone");
    sub.add_option("--grit", options.grit, "in your words");
    auto* rough = sub.add_flag("--rough", options.rough, "it takes stock");
    sub.add_flag("--finish", options.finish, "it takes the last thou")->excludes(rough);
    sub.add_option("--begins", options.begins,
                   "where its abrasive begins, from the carrier's lower end up");
    sub.add_option("--ends", options.ends, "where its abrasive ends");
    sub.add_option("--out-open", options.outOpen,
                   "how far it may stand out of the open end; else a third of it");
    sub.add_option("--out-closed", options.outClosed, "the same of the closed end");
    sub.add_option("--rate", options.rate, "takes off the diameter a stroke: 1.2um");
    sub.add_option("--rate-doubt", options.rateDoubt, "within which factor: 1.5");
    sub.add_option("--care", options.care, "logs that it was dressed, turned or run in reverse")
        ->check(CLI::IsMember({"dressed", "turned", "reverse"}));
    sub.add_option("--time", options.time, "of the care, ISO 8601; else now");
    sub.add_flag("--json", options.json, "list as JSON instead of a table");
    addAnyway(sub, options.anyway);
}

void addOptions(CLI::App& sub, HoneOptions& options) {
    sub.add_option("--speed", options.speed, "of the spindle, turns a minute");
    sub.add_option("--beat", options.beat, "strokes a minute, a stroke being down and back");
    sub.add_option("--feed", options.feed, "spring or feed setting, in your words");
    auto* oil = sub.add_flag("--oil", options.oil, "honed with oil");
    sub.add_flag("--dry", options.dry, "honed dry")->excludes(oil);
    sub.add_option("--rough-stops-at", options.roughStopsAt,
                   "full rough stones stop with so much to go: 4.5thou");
    sub.add_option("--lead", options.closedEndLead,
                   "short stones bring the closed end to lead by: 0.8thou");
    sub.add_option("--next-stops-at", options.nextStopsAt,
                   "the next stones stop with so much to go: 1thou");
    sub.add_option("--cool-below", options.coolBelow,
                   "with less to go only on a cool bore: 0.3thou");
    sub.add_option("--bore", options.bore, "number of the bore that is ticked");
    for (auto [name, list, help] : {std::tuple{"--done", &options.done, "ticks it"},
                                    std::tuple{"--not-done", &options.undone, "unticks it"}})
        sub.add_option(name, *list, std::string(help) + ": chamfered (the ports), washed")
            ->check(CLI::IsMember({"chamfered", "washed"}))
            ->allow_extra_args(false);
    addAnyway(sub, options.anyway);
}

void addOptions(CLI::App& sub, NewOptions& options) {
    sub.add_option("--bores", options.bores, "how many")->required();
    sub.add_option("--size", options.size, "standard size: 3.5in, 88mm")->required();
    sub.add_option("--depth", options.depth, "depth of a bore: 4in, 120mm")->required();
    sub.add_option("--arrangement", options.arrangement, "inline, v or opposed");
    sub.add_option("--open-end", options.openEnd, "what the open end is: \"head face\"");
    sub.add_option("--levels", options.levels, "depths to measure at: 0.5,1.75,3");
    sub.add_flag("--blind", options.blind, "no room for a stone beyond the closed end");
    sub.add_option("--worn-size-to", options.wornTo, "largest size still good: 3.504in");
    sub.add_option("--worn-out-of-round", options.wornOutOfRound, "still good: 3thou, 0.05mm");
    sub.add_option("--worn-taper", options.wornTaper, "still good: 3thou, 0.05mm");
    sub.add_option("--finish-size", options.finishSize, "what the hone aims at: 3.52in");
    sub.add_option("--finish-from", options.finishFrom, "smallest finished size: 3.5195in");
    sub.add_option("--finish-to", options.finishTo, "largest finished size: 3.5205in");
    sub.add_option("--aim", options.aim, "straight within: 0.25thou, 6um");
}

void addOptions(CLI::App& sub, PassOptions& options, PassTyped& typed) {
    sub.add_option("--bore", options.bore, "its number; needed");
    sub.add_option("--stone", options.stone, "name or id; needed");
    const std::array<std::pair<const char*, const char*>, 5> windows{
        {{"--from", "of a window: depth of the abrasive's lower end at the upper reversal"},
         {"--to", "the same at the lower reversal"},
         {"--strokes", "down and back, so often"},
         {"--seconds", "or so long, at the hone's beat"},
         {"--hold", "seconds standing at the lower reversal"}}};
    std::vector<CLI::Option*> of;
    for (std::size_t i = 0; i < windows.size(); ++i)
        of.push_back(
            sub.add_option(windows[i].first, typed[i], windows[i].second)->allow_extra_args(false));
    sub.add_option("--time", options.time, "when it ended, ISO 8601; else now");
    sub.add_option("--speed", options.speed, "of the spindle, a minute, where not the hone's");
    sub.add_option("--after", options.after, "survey it follows; else the last");
    sub.add_flag("--simulated", options.simulated, "nothing was honed");
    sub.add_flag("--foresee", options.foresee,
                 "tells also, once it is logged, whether some depth may be over size now");
    sub.add_option("--note", options.note, "in your words");
    sub.add_option("--strike", options.strike,
                   "instead of all these: strikes a wrong pass out, by its id as it was logged "
                   "(h3); it stays readable and counts no more");
    sub.add_option("--why", options.why, "of --strike, in your words; needed");
    addAnyway(sub, options.anyway);
    sub.parse_complete_callback([&sub, &options, of] { options.windows = asTyped(sub, of); });
}

} // namespace borewright
