// SPDX-License-Identifier: GPL-3.0-or-later
// borewright ledger and what it is asked, as the parser reads it.
#pragma once

#include "app/cli/commands.h"

#include <functional>

namespace CLI {
class App;
}

namespace borewright {

// Adds the command with its own commands; `chosen` is called when one of them was named.
void addLedgerCommand(CLI::App& app, LedgerOptions& options, const std::function<void()>& chosen);

} // namespace borewright
