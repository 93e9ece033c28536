// SPDX-License-Identifier: GPL-3.0-or-later
// The program's start. The arguments are read before anything of Qt, so that the command line
// works where there is no display.
#include "app/cli/cli.h"
#include "app/shell/run_window.h"

int main(int argc, char** argv) {
    const auto started = std::chrono::steady_clock::now();
    if (const auto done = borewright::runCommandLine(argc, argv)) return *done;
    return borewright::runWindow(argc, argv, started);
}
