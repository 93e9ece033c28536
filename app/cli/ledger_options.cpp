// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/ledger_options.h"

#include <CLI/CLI.hpp>

namespace borewright {
namespace {

using Asked = LedgerOptions::Asked;

CLI::App* addOne(CLI::App& ledger, const char* name, const char* help, LedgerOptions& options,
                 Asked asked) {
    CLI::App* sub = ledger.add_subcommand(name, help);
    sub->add_option("--ledger", options.ledger,
                    "another ledger: a file, or postgresql://USER@HOST:PORT/DATABASE");
    sub->callback([&options, asked] { options.asked = asked; });
    return sub;
}

void addShape(CLI::App* sub, LedgerOptions& options) {
    CLI::Option* json = sub->add_flag("--json", options.json, "as JSON, lengths in millimetres");
    sub->add_flag("--csv", options.csv, "as CSV, lengths in millimetres or as --units says")
        ->excludes(json);
    sub->add_option("--units", options.units, "inch or metric; else as each workbook has it")
        ->check(CLI::IsMember({"inch", "metric"}));
}

} // namespace

void addLedgerCommand(CLI::App& app, LedgerOptions& options, const std::function<void()>& chosen) {
    CLI::App* ledger = app.add_subcommand(
        "ledger", "all jobs of the shop; exits 0 found or done, 1 nothing found, 2 a file could "
                  "not be read, 3 ledger or usage wrong");
    ledger->require_subcommand(1);
    ledger->callback(chosen);
    addShape(addOne(*ledger, "list", "every job, latest first", options, Asked::list), options);
    CLI::App* find =
        addOne(*ledger, "find", "jobs with these words in customer, engine, serial or file",
               options, Asked::find);
    find->add_option("TEXT", options.words, "any part of a word will do")->required();
    addShape(find, options);
    CLI::App* rebuild = addOne(*ledger, "rebuild", "make the ledger anew from the workbooks",
                               options, Asked::rebuild);
    rebuild->add_option("FOLDER", options.folders, "folders or workbooks; else those of last time");
    CLI::App* needed =
        addOne(*ledger, "needed", "what an engine needed each time", options, Asked::needed);
    needed->add_option("--engine", options.engine, "words in its name")->required();
    addShape(needed, options);
    CLI::App* rates = addOne(*ledger, "rates", "how fast each stone cut", options, Asked::rates);
    rates->add_option("--engine", options.engine, "in these engines alone");
    addShape(rates, options);
    CLI::App* gauge = addOne(*ledger, "gauge", "every job that a gauge or a master touched",
                             options, Asked::gauge);
    gauge->add_option("NAME", options.gauge, "any part of its name")->required();
    addShape(gauge, options);
}

} // namespace borewright
