// SPDX-License-Identifier: GPL-3.0-or-later
// The options of each command as the parser reads them. Part of cli.cpp.
#pragma once

#include "app/cli/commands.h"

#include <array>
#include <string>
#include <vector>

namespace CLI {
class App;
}

namespace borewright {

void addOptions(CLI::App& sub, CheckOptions& options);
void addOptions(CLI::App& sub, SizesOptions& options);
void addOptions(CLI::App& sub, FitCommandOptions& options);
void addOptions(CLI::App& sub, CopiesOptions& options);
void addOptions(CLI::App& sub, HistoryOptions& options);
void addOptions(CLI::App& sub, SheetOptions& options);
void addOptions(CLI::App& sub, ResultsOptions& options);
void addOptions(CLI::App& sub, NextOptions& options);
void addOptions(CLI::App& sub, PicturesOptions& options);
void addOptions(CLI::App& sub, RecordOptions& options);
void addOptions(CLI::App& sub, StoneOptions& options);
void addOptions(CLI::App& sub, HoneOptions& options);
void addOptions(CLI::App& sub, NewOptions& options);
// What stands behind the options of a pass's windows, each by itself while it is parsed.
using PassTyped = std::array<std::vector<std::string>, 5>;
void addOptions(CLI::App& sub, PassOptions& options, PassTyped& typed);
// "--anyway".
void addAnyway(CLI::App& sub, bool& anyway);

} // namespace borewright
