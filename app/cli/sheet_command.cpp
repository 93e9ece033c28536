// SPDX-License-Identifier: GPL-3.0-or-later
// borewright sheet: the sheet as a PDF file, without a display.
#include "app/cli/commands.h"

namespace borewright {

Result<int> sheetCommand(const SheetOptions& options, const CliOutside&) {
    return refuse(options.target, "this build cannot print sheets");
}

} // namespace borewright
