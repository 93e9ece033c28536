// SPDX-License-Identifier: GPL-3.0-or-later
// Starts the window and stays until it is closed.
#pragma once

#include <chrono>

namespace borewright {

// `argv` holds at most one file to open. Returns the program's exit status. With the environment's
// BOREWRIGHT_TIMING=1 the time from `started` to the first paint is printed.
int runWindow(int argc, char** argv,
              std::chrono::steady_clock::time_point started = std::chrono::steady_clock::now());

} // namespace borewright
