// SPDX-License-Identifier: GPL-3.0-or-later
// The command line, for scripts and for benches with no desk; runs without a display.
//
//   borewright [FILE]                                opens the window
//   borewright check FILE [--survey NAME]            judges; see ExitStatus
//   borewright check FILE --code CODE                which sheet of it has this check code
//   borewright sizes FILE [--json]                   which size cleans up the block
//   borewright fit FILE [--json]                     which piston and ring go where
//   borewright sheet FILE OUT.pdf [--code CODE]      prints the sheet, or one of then again
//   borewright results FILE OUT.json|OUT.csv         writes what was computed
//   borewright record FILE READINGS.csv              takes readings in
//   borewright stone FILE [--name N …]               the shop's stones: lists, adds, changes
//   borewright plan FILE [--bore N] [--json]         the next set-up of each bore
//   borewright pass FILE --bore N --stone NAME …     logs what was honed
//   borewright new FILE --bores N --size 3.5in …     begins a workbook
//   borewright pictures FILE FOLDER                  renders each page
//   borewright ledger list|find|rebuild|needed|rates|gauge   all jobs of the shop
#pragma once

#include "app/document/clock.h"
#include "core/storage/bench_lock.h"

#include <iosfwd>
#include <optional>
#include <string>
#include <vector>

namespace borewright {

// What the program says to the script that called it.
enum ExitStatus : int {
    // check: all within; sizes: one size surely cleans every bore; fit: every bore has its piston
    // and rings within the limits; other commands: done.
    exitWithin = 0,
    // check: something outside, or not yet there while honing; sizes: a bore is beyond the last
    // size; fit: a clearance or a gap outside; plan: there is something to hone.
    exitOutside = 1,
    // Too close to call, not all measured that was asked, nothing judged, or not all entered;
    // plan: measure first, or nothing more can be honed though not every bore is done.
    exitUndecided = 2,
    exitWrong = 3, // file or usage wrong; nothing was written
};

// What the commands reach the world by.
struct CliOutside {
    FileSystem& files;
    const Clock& clock;
    std::ostream& out;
    std::ostream& err;
    // Who writes, and what tells whether others that have a workbook open are still there; null =
    // locks are not looked at.
    LockHolder bench{};
    Processes* processes = nullptr;
};

// Carries out a command (`arguments` without the program's name) and returns its exit status;
// nothing where the window is wanted.
std::optional<int> runCommand(const std::vector<std::string>& arguments, const CliOutside& outside);

// The same for main(), with the real disk and clock, standard output and standard error.
std::optional<int> runCommandLine(int argc, char** argv);

} // namespace borewright
