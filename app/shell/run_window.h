// SPDX-License-Identifier: GPL-3.0-or-later
// Starts the window and stays until it is closed.
#pragma once

namespace borewright {

// `argv` holds at most one file to open. Returns the program's exit status.
int runWindow(int argc, char** argv);

} // namespace borewright
