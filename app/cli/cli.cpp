// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/cli.h"

#include "app/cli/harmless_stream.h"
#include "app/cli/kept_preferences.h"
#include "app/cli/ledger_options.h"
#include "app/cli/options.h"
#include "app/document/this_bench.h"
#include "core/storage/posix_file_system.h"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <functional>
#include <iostream>
#include <utility>

namespace borewright {
namespace {

// The options of every command, filled in by the parser, and which command was named.
class Parser {
public:
    explicit Parser(CliOutside outside)
        : m_outside(std::move(outside)) {
        m_app.set_version_flag("--version", "borewright " BOREWRIGHT_VERSION);
        m_app.add_option("FILE", m_window, "workbook to open in the window");
        m_app.require_subcommand(0, 1);
        m_app.failure_message(CLI::FailureMessage::simple);
        addReaders();
        addWriters();
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
    void addReaders() {
        addOptions(*add("check",
                        "judge a survey; exits 0 all within, 1 something outside, 2 "
                        "undecided, 3 file or usage wrong",
                        m_check, checkCommand),
                   m_check);
        addOptions(*add("sizes",
                        "which size cleans up the block; exits 0 one does, 1 a bore is beyond "
                        "the last, 2 undecided, 3 file or usage wrong",
                        m_sizes, sizesCommand),
                   m_sizes);
        addOptions(*add("fit",
                        "which piston and ring go where; exits 0 all within, 1 something "
                        "outside, 2 undecided, 3 file or usage wrong",
                        m_fit, fitCommand),
                   m_fit);
        addOptions(*add("copies", "list the dated copies of a workbook", m_copies, copiesCommand),
                   m_copies);
        addOptions(*add("history", "who changed what, and which sheets were printed", m_history,
                        historyCommand),
                   m_history);
        addOptions(*add("sheet", "print the sheet to a PDF file", m_sheet, sheetCommand), m_sheet);
        addOptions(
            *add("results", "write what was computed, as .json or .csv", m_results, resultsCommand),
            m_results);
        addOptions(*add("plan",
                        "the next set-up of each bore; exits 0 all done, 1 there is work to "
                        "do, 2 measure first or no way on, 3 file or usage wrong",
                        m_plan, planCommand),
                   m_plan);
        addOptions(*add("pictures", "render each page as PNG", m_pictures, picturesCommand),
                   m_pictures);
    }
    void addWriters() {
        addOptions(*add("record", "take readings in from a CSV file", m_record, recordCommand),
                   m_record);
        addOptions(*add("stone", "the shop's stones: lists, adds or changes one, logs its care",
                        m_stone, stoneCommand),
                   m_stone);
        addOptions(*add("hone",
                        "how the hone is driven, where stones stop, what of a bore is done: "
                        "tells it, and changes what is given",
                        m_hone, honeCommand),
                   m_hone);
        addOptions(
            *add("pass",
                 "log what was honed: one set-up, one window or several; --strike takes one back",
                 m_pass, passCommand),
            m_pass, m_passTyped);
        addOptions(*add("new", "begin a workbook", m_new, newCommand), m_new);
    }

    template<class Options, class Command>
    CLI::App* add(const char* name, const char* help, Options& options, Command command) {
        CLI::App* sub = m_app.add_subcommand(name, help);
        sub->add_option("FILE", options.file, "workbook")->required();
        sub->callback([this, &options, command] {
            m_command = [this, &options, command] { return command(options, m_outside); };
        });
        return sub;
    }

    const CliOutside m_outside;
    CLI::App m_app{"Borewright: a bench workbook for measuring, honing and fitting engine "
                   "cylinders.",
                   "borewright"};
    std::string m_window;
    CheckOptions m_check;
    SizesOptions m_sizes;
    FitCommandOptions m_fit;
    CopiesOptions m_copies;
    HistoryOptions m_history;
    SheetOptions m_sheet;
    ResultsOptions m_results;
    RecordOptions m_record;
    StoneOptions m_stone;
    HoneOptions m_hone;
    NextOptions m_plan;
    PassOptions m_pass;
    PassTyped m_passTyped;
    NewOptions m_new;
    PicturesOptions m_pictures;
    LedgerOptions m_ledger;
    std::function<Result<int>()> m_command;
};

} // namespace

std::optional<int> runCommand(const std::vector<std::string>& arguments,
                              const CliOutside& outside) {
    HarmlessStream out(outside.out);
    HarmlessStream err(outside.err);
    return Parser({outside.files, outside.clock, out, err, outside.bench, outside.processes})
        .run(arguments);
}

std::optional<int> runCommandLine(int argc, char** argv) {
    PosixFileSystem files;
    const SystemClock clock;
    MachineProcesses processes(files);
    LockHolder bench = thisBench(processes);
    const QString name = keptPreferences(files).measuredBy;
    if (!name.isEmpty()) bench.person = name.toStdString();
    return runCommand({argv + 1, argv + argc},
                      {files, clock, std::cout, std::cerr, bench, &processes});
}

} // namespace borewright
