// SPDX-License-Identifier: GPL-3.0-or-later
// What the user answers to a suspicion, as edits.
#include "core/gauging/slips.h"

namespace borewright {

Edit acceptStory(const Workbook& workbook, const std::string& survey, const SlipStory& story,
                 Timestamp now) {
    EditGroup group;
    const Survey* found = findSurvey(workbook, survey);
    if (found == nullptr) return group;
    for (const SlipFix& fix : story.fixes)
        if (fix.replaces)
            group.edits.push_back(SetStrike{survey, *fix.replaces, Strike{story.reason, now}});
    std::size_t end = found->readings.size();
    for (const SlipFix& fix : story.fixes) {
        if (!fix.value || fix.source >= found->readings.size()) continue;
        Reading reading = found->readings[fix.source];
        reading.station = fix.station;
        reading.typed = *fix.value;
        reading.struck.reset();
        // Two slips may sit on one reading; the first accepted is not forgotten.
        reading.accepted =
            reading.accepted ? *reading.accepted + ", " + story.reason : story.reason;
        reading.kept = false;
        group.edits.push_back(InsertReading{survey, end++, std::move(reading)});
    }
    return group;
}

Edit keepReadings(const std::string& survey, const std::vector<std::size_t>& readings) {
    EditGroup group;
    for (const std::size_t index : readings)
        group.edits.push_back(SetKept{survey, index, true});
    return group;
}

} // namespace borewright
