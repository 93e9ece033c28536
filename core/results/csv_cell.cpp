// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/results/csv_cell.h"

namespace borewright {
namespace {

bool wouldRun(const std::string& text) {
    const std::size_t first = text.find_first_not_of(' ');
    return first != std::string::npos &&
           std::string("=+-@\t\r\n").find(text[first]) != std::string::npos;
}

} // namespace

std::string csvCell(const std::string& text) {
    const std::string harmless = wouldRun(text) ? "'" + text : text;
    if (harmless.find_first_of(",;\"\r\n\t") == std::string::npos) return harmless;
    std::string quoted = "\"";
    for (const char c : harmless) {
        if (c == '"') quoted += '"';
        quoted += c;
    }
    return quoted + '"';
}

} // namespace borewright
