// SPDX-License-Identifier: GPL-3.0-or-later
// borewright plan: the next set-up of each bore.
#include "app/cli/commands.h"

namespace borewright {

Result<int> planCommand(const PlanOptions& options, const CliOutside&) {
    return refuse(options.file, "planning is not built yet");
}

} // namespace borewright
