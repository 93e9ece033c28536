// SPDX-License-Identifier: GPL-3.0-or-later
// Of the commands that read a workbook.
#include "app/cli/options.h"

#include <CLI/CLI.hpp>

namespace borewright {
namespace {

void addUnits(CLI::App& sub, std::string& units) {
    sub.add_option("--units", units, "inch or metric; else as the workbook has it")
        ->check(CLI::IsMember({"inch", "metric"}));
}

// An empty code, as a script's empty variable gives, is no wish to do without one.
CLI::Option* addCode(CLI::App& sub, std::string& code, const std::string& what) {
    return sub.add_option("--code", code, what)->check([](const std::string& typed) {
        return typed.find_first_not_of(" \t") == std::string::npos
                   ? std::string("there is no code in it")
                   : std::string();
    });
}

} // namespace

void addAnyway(CLI::App& sub, bool& anyway) {
    sub.add_flag("--anyway", anyway, "writes though another bench has the workbook open");
}

void addOptions(CLI::App& sub, CheckOptions& options) {
    auto* survey =
        sub.add_option("--survey", options.survey, "name or id of a survey; else the last");
    addCode(sub, options.code,
            "instead: which sheet of the workbook has this check code; exits 0 the sheet as "
            "it stands now, 1 one printed earlier, 2 none, 3 mistyped or file wrong")
        ->excludes(survey);
    sub.add_flag("--json", options.json, "what the code is, as JSON");
    addUnits(sub, options.units);
}

void addOptions(CLI::App& sub, SizesOptions& options) {
    sub.add_flag("--json", options.json, "as JSON instead of a table");
    addUnits(sub, options.units);
}

void addOptions(CLI::App& sub, FitCommandOptions& options) {
    sub.add_flag("--json", options.json, "as JSON instead of a table");
    addUnits(sub, options.units);
}

void addOptions(CLI::App& sub, CopiesOptions& options) {
    sub.add_option("--folder", options.folder, "of all copies; else as in the window");
    sub.add_flag("--json", options.json, "as JSON");
}

void addOptions(CLI::App& sub, HistoryOptions& options) {
    auto* json = sub.add_flag("--json", options.json, "as JSON");
    sub.add_flag("--csv", options.csv, "as CSV")->excludes(json);
}

void addOptions(CLI::App& sub, SheetOptions& options) {
    sub.add_option("OUT.pdf", options.target, "where the sheet goes")->required();
    sub.add_option("--paper", options.paper, "a4 or letter")
        ->check(CLI::IsMember({"a4", "letter"}));
    addCode(sub, options.code, "prints the sheet with this check code again");
    sub.add_flag("--note", options.note,
                 "notes in the workbook that it was printed, so that it can be printed again");
    addAnyway(sub, options.anyway);
    addUnits(sub, options.units);
}

void addOptions(CLI::App& sub, ResultsOptions& options) {
    sub.add_option("OUT", options.target, "OUT.json or OUT.csv")->required();
    sub.add_option("--survey", options.survey, "name or id of a survey; else all");
    addUnits(sub, options.units);
}

void addOptions(CLI::App& sub, NextOptions& options) {
    sub.add_option("--bore", options.bore, "of this bore alone");
    sub.add_flag("--json", options.json, "as JSON instead of sentences");
    sub.add_option("--fitted", options.fitted,
                   "stone that is in the hone now; else that of the last pass");
    sub.add_flag("--one-stone", options.oneStone, "with one stone only");
    sub.add_flag("--no-short", options.noShort, "there is no short stone");
    sub.add_flag("--fewer-stops", options.fewerStops, "fewer set-ups, less straight");
    addUnits(sub, options.units);
}

void addOptions(CLI::App& sub, PicturesOptions& options) {
    sub.add_option("FOLDER", options.folder, "where the pictures go")->required();
    sub.add_option("--survey", options.survey, "name or id of a survey; else the last");
    sub.add_option("--theme", options.theme, "light, dark or both")
        ->check(CLI::IsMember({"light", "dark", "both"}));
}

} // namespace borewright
