// SPDX-License-Identifier: GPL-3.0-or-later
// The program's start. The arguments are read before anything of Qt, so that the command line
// works where there is no display.
#include "app/shell/run_window.h"

#if __has_include("app/cli/cli.h")
#include "app/cli/cli.h"
#endif

int main(int argc, char** argv) {
#if __has_include("app/cli/cli.h")
    if (const auto done = borewright::runCommandLine(argc, argv)) return *done;
#endif
    return borewright::runWindow(argc, argv);
}
