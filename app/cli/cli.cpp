// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/cli.h"

#include "app/cli/commands.h"
#include "app/cli/ledger_options.h"
#include "core/storage/posix_file_system.h"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <array>
#include <functional>
#include <iostream>
#include <map>
#include <tuple>

namespace borewright {
namespace {

// The options of every command, filled in by the parser, and which command was named.
class Parser {
public:
    explicit Parser(const CliOutside& outside)
        : m_outside(outside) {
        m_app.set_version_flag("--version", "borewright " BOREWRIGHT_VERSION);
        m_app.add_option("FILE", m_window, "workbook to open in the window");
        m_app.require_subcommand(0, 1);
        m_app.failure_message(CLI::FailureMessage::simple);
        addCheck();
        addSizes();
        addFit();
        addCopies();
        addSheet();
        addResults();
        addRecord();
        addStone();
        addHone();
        addPlan();
        addPass();
        addNew();
        addPictures();
        addLedgerCommand(m_app, m_ledger, [this] {
            m_command = [this] { return ledgerCommand(m_ledger, m_outside); };
        });
    }

    std::optional<int> run(std::vector<std::string> arguments) {
        std::ranges::reverse(arguments); // CLI11 takes them from the back
        try {
            m_app.parse(arguments);
        } catch (const CLI::ParseError& error) {
            // --help and --version come this way too, with a status of zero.
            const int status = m_app.exit(error, m_outside.out, m_outside.err);
            return status == 0 ? exitWithin : exitWrong;
        }
        if (!m_command) return std::nullopt;
        const Result<int> result = m_command();
        if (result) return *result;
        m_outside.err << "borewright: " << result.error().message() << "\n";
        return exitWrong;
    }

private:
    template<class Options, class Command>
    CLI::App* add(const char* name, const char* help, Options& options, Command command) {
        CLI::App* sub = m_app.add_subcommand(name, help);
        sub->add_option("FILE", options.file, "workbook")->required();
        sub->callback([this, &options, command] {
            m_command = [this, &options, command] { return command(options, m_outside); };
        });
        return sub;
    }

    void addCheck() {
        CLI::App* sub = add("check",
                            "judge a survey; exits 0 all within, 1 something outside, 2 "
                            "undecided, 3 file or usage wrong",
                            m_check, checkCommand);
        sub->add_option("--survey", m_check.survey, "name or id of a survey; else the last");
        addUnits(sub, m_check.units);
    }
    void addSizes() {
        CLI::App* sub = add("sizes",
                            "which size cleans up the block; exits 0 one does, 1 a bore is beyond "
                            "the last, 2 undecided, 3 file or usage wrong",
                            m_sizes, sizesCommand);
        sub->add_flag("--json", m_sizes.json, "as JSON instead of a table");
        addUnits(sub, m_sizes.units);
    }
    void addFit() {
        CLI::App* sub = add("fit",
                            "which piston and ring go where; exits 0 all within, 1 something "
                            "outside, 2 undecided, 3 file or usage wrong",
                            m_fit, fitCommand);
        sub->add_flag("--json", m_fit.json, "as JSON instead of a table");
        addUnits(sub, m_fit.units);
    }
    void addCopies() {
        CLI::App* sub =
            add("copies", "list the dated copies of a workbook", m_copies, copiesCommand);
        sub->add_option("--folder", m_copies.folder, "of all copies; else as in the window");
        sub->add_flag("--json", m_copies.json, "as JSON");
    }
    void addSheet() {
        CLI::App* sub = add("sheet", "print the sheet to a PDF file", m_sheet, sheetCommand);
        sub->add_option("OUT.pdf", m_sheet.target, "where the sheet goes")->required();
        sub->add_option("--paper", m_sheet.paper, "a4 or letter")
            ->check(CLI::IsMember({"a4", "letter"}));
        addUnits(sub, m_sheet.units);
    }
    void addResults() {
        CLI::App* sub =
            add("results", "write what was computed, as .json or .csv", m_results, resultsCommand);
        sub->add_option("OUT", m_results.target, "OUT.json or OUT.csv")->required();
        sub->add_option("--survey", m_results.survey, "name or id of a survey; else all");
        addUnits(sub, m_results.units);
    }
    void addRecord() {
        CLI::App* sub = add("record", "take readings in from a CSV file", m_record, recordCommand);
        sub->add_option("READINGS.csv", m_record.readings, "bore, depth, axis, reading, unit");
        sub->add_option("--bore", m_record.bore, "instead of a file: of the readings typed here");
        sub->add_option("--reading", m_record.typed,
                        "depth, axis and what was read: 0.6in,A,3.4381; with decimal commas "
                        "0,6in;A;3,4381; as often as there are readings")
            ->allow_extra_args(false);
        sub->add_option("--survey", m_record.survey, "survey to add to, or name of a new one");
        sub->add_option("--kind", m_record.kind, "of a new survey")
            ->check(CLI::IsMember({"as-found", "before-boring", "check", "final"}));
        sub->add_option("--set", m_record.setSize,
                        "of a new survey: size the gauge was set to (3.42in); readings are then "
                        "deviations from it, else diameters");
        sub->add_option("--larger", m_record.larger,
                        "what a larger bore reads: plus or minus; else as in the survey "
                        "before, plus in the first")
            ->check(CLI::IsMember({"plus", "minus"}));
        sub->add_flag("--add-levels", m_record.addLevels, "add depths that the plan does not have");
        sub->add_flag("--take-good-rows", m_record.takeGoodRows,
                      "take the good rows of a file with wrong ones");
    }
    void addStone() {
        CLI::App* sub = add("stone", "the shop's stones: lists, adds or changes one, logs its care",
                            m_stone, stoneCommand);
        sub->add_option("--name", m_stone.name, "which; a new name adds a stone");
        sub->add_option("--grit", m_stone.grit, "in your words");
        auto* rough = sub->add_flag("--rough", m_stone.rough, "it takes stock");
        sub->add_flag("--finish", m_stone.finish, "it takes the last thou")->excludes(rough);
        sub->add_option("--begins", m_stone.begins,
                        "where its abrasive begins, from the carrier's lower end up");
        sub->add_option("--ends", m_stone.ends, "where its abrasive ends");
        sub->add_option("--out-open", m_stone.outOpen,
                        "how far it may stand out of the open end; else a third of it");
        sub->add_option("--out-closed", m_stone.outClosed, "the same of the closed end");
        sub->add_option("--rate", m_stone.rate, "takes off the diameter a stroke: 1.2um");
        sub->add_option("--rate-doubt", m_stone.rateDoubt, "within which factor: 1.5");
        sub->add_option("--care", m_stone.care,
                        "logs that it was dressed, turned or run in reverse")
            ->check(CLI::IsMember({"dressed", "turned", "reverse"}));
        sub->add_option("--time", m_stone.time, "of the care, ISO 8601; else now");
        sub->add_flag("--json", m_stone.json, "list as JSON instead of a table");
    }
    void addHone() {
        CLI::App* sub = add("hone",
                            "how the hone is driven, where stones stop, what of a bore is done: "
                            "tells it, and changes what is given",
                            m_hone, honeCommand);
        sub->add_option("--speed", m_hone.speed, "of the spindle, turns a minute");
        sub->add_option("--beat", m_hone.beat, "strokes a minute, a stroke being down and back");
        sub->add_option("--feed", m_hone.feed, "spring or feed setting, in your words");
        auto* oil = sub->add_flag("--oil", m_hone.oil, "honed with oil");
        sub->add_flag("--dry", m_hone.dry, "honed dry")->excludes(oil);
        sub->add_option("--rough-stops-at", m_hone.roughStopsAt,
                        "full rough stones stop with so much to go: 4.5thou");
        sub->add_option("--lead", m_hone.closedEndLead,
                        "short stones bring the closed end to lead by: 0.8thou");
        sub->add_option("--next-stops-at", m_hone.nextStopsAt,
                        "the next stones stop with so much to go: 1thou");
        sub->add_option("--cool-below", m_hone.coolBelow,
                        "with less to go only on a cool bore: 0.3thou");
        sub->add_option("--bore", m_hone.bore, "number of the bore that is ticked");
        for (auto [name, list, help] : {std::tuple{"--done", &m_hone.done, "ticks it"},
                                        std::tuple{"--not-done", &m_hone.undone, "unticks it"}})
            sub->add_option(name, *list, std::string(help) + ": chamfered (the ports), washed")
                ->check(CLI::IsMember({"chamfered", "washed"}))
                ->allow_extra_args(false);
    }
    void addPlan() {
        CLI::App* sub = add("plan",
                            "the next set-up of each bore; exits 0 all done, 1 there is work to "
                            "do, 2 measure first or no way on, 3 file or usage wrong",
                            m_plan, planCommand);
        sub->add_option("--bore", m_plan.bore, "of this bore alone");
        sub->add_flag("--json", m_plan.json, "as JSON instead of sentences");
        sub->add_option("--fitted", m_plan.fitted,
                        "stone that is in the hone now; else that of the last pass");
        sub->add_flag("--one-stone", m_plan.oneStone, "with one stone only");
        sub->add_flag("--no-short", m_plan.noShort, "there is no short stone");
        sub->add_flag("--fewer-stops", m_plan.fewerStops, "fewer set-ups, less straight");
        addUnits(sub, m_plan.units);
    }
    void addPass() {
        CLI::App* sub = add("pass", "log what was honed: one set-up, one window or several", m_pass,
                            passCommand);
        sub->add_option("--bore", m_pass.bore, "its number")->required();
        sub->add_option("--stone", m_pass.stone, "name or id")->required();
        const std::array<std::pair<const char*, const char*>, 5> windows{
            {{"--from", "of a window: depth of the abrasive's lower end at the upper reversal"},
             {"--to", "the same at the lower reversal"},
             {"--strokes", "down and back, so often"},
             {"--seconds", "or so long, at the hone's beat"},
             {"--hold", "seconds standing at the lower reversal"}}};
        std::vector<CLI::Option*> options;
        for (std::size_t i = 0; i < windows.size(); ++i)
            options.push_back(sub->add_option(windows[i].first, m_windows[i], windows[i].second)
                                  ->allow_extra_args(false));
        sub->add_option("--time", m_pass.time, "when it ended, ISO 8601; else now");
        sub->add_option("--speed", m_pass.speed, "of the spindle, a minute, where not the hone's");
        sub->add_option("--after", m_pass.after, "survey it follows; else the last");
        sub->add_flag("--simulated", m_pass.simulated, "nothing was honed");
        sub->add_option("--note", m_pass.note, "in your words");
        sub->parse_complete_callback(
            [this, sub, options] { m_pass.windows = asTyped(*sub, options); });
    }
    // The options as they stood on the line, one after the other.
    static std::vector<TypedOption> asTyped(const CLI::App& sub,
                                            const std::vector<CLI::Option*>& wanted) {
        std::vector<TypedOption> typed;
        std::map<const CLI::Option*, std::size_t> seen;
        for (const CLI::Option* option : sub.parse_order())
            if (std::ranges::find(wanted, option) != wanted.end())
                typed.push_back({option->get_name(), option->results()[seen[option]++]});
        return typed;
    }
    void addNew() {
        CLI::App* sub = add("new", "begin a workbook", m_new, newCommand);
        sub->add_option("--bores", m_new.bores, "how many")->required();
        sub->add_option("--size", m_new.size, "standard size: 3.5in, 88mm")->required();
        sub->add_option("--depth", m_new.depth, "depth of a bore: 4in, 120mm")->required();
        sub->add_option("--arrangement", m_new.arrangement, "inline, v or opposed");
        sub->add_option("--open-end", m_new.openEnd, "what the open end is: \"head face\"");
        sub->add_option("--levels", m_new.levels, "depths to measure at: 0.5,1.75,3");
        sub->add_flag("--blind", m_new.blind, "no room for a stone beyond the closed end");
        sub->add_option("--worn-size-to", m_new.wornTo, "largest size still good: 3.504in");
        sub->add_option("--worn-out-of-round", m_new.wornOutOfRound, "still good: 3thou, 0.05mm");
        sub->add_option("--worn-taper", m_new.wornTaper, "still good: 3thou, 0.05mm");
        sub->add_option("--finish-size", m_new.finishSize, "what the hone aims at: 3.52in");
        sub->add_option("--finish-from", m_new.finishFrom, "smallest finished size: 3.5195in");
        sub->add_option("--finish-to", m_new.finishTo, "largest finished size: 3.5205in");
        sub->add_option("--aim", m_new.aim, "straight within: 0.25thou, 6um");
    }
    void addPictures() {
        CLI::App* sub = add("pictures", "render each page as PNG", m_pictures, picturesCommand);
        sub->add_option("FOLDER", m_pictures.folder, "where the pictures go")->required();
        sub->add_option("--survey", m_pictures.survey, "name or id of a survey; else the last");
        sub->add_option("--theme", m_pictures.theme, "light, dark or both")
            ->check(CLI::IsMember({"light", "dark", "both"}));
    }
    static void addUnits(CLI::App* sub, std::string& units) {
        sub->add_option("--units", units, "inch or metric; else as the workbook has it")
            ->check(CLI::IsMember({"inch", "metric"}));
    }

    const CliOutside& m_outside;
    CLI::App m_app{"Borewright: a bench workbook for measuring, honing and fitting engine "
                   "cylinders.",
                   "borewright"};
    std::string m_window;
    CheckOptions m_check;
    SizesOptions m_sizes;
    FitOptions m_fit;
    CopiesOptions m_copies;
    SheetOptions m_sheet;
    ResultsOptions m_results;
    RecordOptions m_record;
    StoneOptions m_stone;
    HoneOptions m_hone;
    NextOptions m_plan;
    PassOptions m_pass;
    std::array<std::vector<std::string>, 5> m_windows; // of the pass, each option by itself
    NewOptions m_new;
    PicturesOptions m_pictures;
    LedgerOptions m_ledger;
    std::function<Result<int>()> m_command;
};

} // namespace

std::optional<int> runCommand(const std::vector<std::string>& arguments,
                              const CliOutside& outside) {
    return Parser(outside).run(arguments);
}

std::optional<int> runCommandLine(int argc, char** argv) {
    PosixFileSystem files;
    const SystemClock clock;
    return runCommand({argv + 1, argv + argc}, {files, clock, std::cout, std::cerr});
}

} // namespace borewright
