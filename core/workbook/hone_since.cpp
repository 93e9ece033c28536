// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/workbook/hone_since.h"

#include <algorithm>

namespace borewright {

bool honedSinceMeasured(const Workbook& workbook, int bore) {
    const auto passAfter = [&](const std::string& survey) {
        return std::ranges::any_of(workbook.hone.passes, [&](const Pass& pass) {
            return pass.bore == bore && !pass.struck && pass.after == survey;
        });
    };
    bool measured = false, since = false;
    for (const Survey& survey : workbook.surveys) {
        const bool read = std::ranges::any_of(survey.readings, [&](const Reading& reading) {
            return !reading.struck && reading.station.bore == bore;
        });
        if (read) {
            measured = true;
            since = false;
        }
        since = since || passAfter(survey.header.id);
    }
    return measured && since;
}

} // namespace borewright
