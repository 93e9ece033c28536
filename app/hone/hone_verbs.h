// SPDX-License-Identifier: GPL-3.0-or-later
// What the Hone page does to the record of honing, without a window: passes logged and struck out,
// stones added and cared for, the check that follows a set-up.
#pragma once

#include "app/document/document.h"
#include "core/results/hone_outlook.h"

#include <optional>
#include <string>
#include <vector>

namespace borewright {

// One undo step that changes the record.
template<class Make>
Result<void> changeHone(Document& document, const QString& step, Make make) {
    HoneRecord record = document.workbook().hone;
    make(record);
    return document.edit(SetHone{std::move(record)}, step);
}

// A pass of this bore after all that was logged and measured, under a fresh id.
Pass passNow(const Workbook& workbook, int bore, const std::string& stone,
             std::vector<StrokeWindow> windows, Timestamp now);
// The windows as planned; those whose seconds are given and differ are logged by these.
std::vector<StrokeWindow> windowsOf(const PlannedSetUp& planned,
                                    const std::vector<std::optional<double>>& seconds = {});
// Windows of his own as the watch counts them: at the hone's beat where seconds are not given.
PlannedSetUp timed(const std::string& stone, const std::vector<StrokeWindow>& windows,
                   const Hone& hone);

void strikePass(HoneRecord& record, const std::string& pass, const std::string& why);
void addCare(HoneRecord& record, const std::string& stone, StoneCare::Kind kind, Timestamp now);
// Adds a stone under a fresh id, its name made free by a number; returns the id.
std::string addStone(HoneRecord& record, Stone stone);
// A full rough, a short rough and a full finish stone for a bore of that depth, nothing known of
// them: three quarters and a quarter of the depth long, common practice, no source. Refuses a bore
// without a depth.
Result<std::vector<Stone>> usualStones(const Bore& bore);
// Whether a pass, a bore's log or an entry of care still needs the stone.
bool isUsed(const HoneRecord& record, const std::string& stone);

// A survey of this bore alone that asks for exactly these stations, most telling first; its gauge
// and limits as usual after the last survey. Nothing asked for = the bore's whole plan.
SurveyHeader nextCheck(const Workbook& workbook, SurveyHeader proposed, int bore,
                       std::vector<Station> stations, Timestamp now);
// The last survey where it is such a check of this bore that nobody has begun: to be gone on with.
const Survey* waitingCheck(const Workbook& workbook, int bore);

// What the shop learned of a stone, to be kept with it; nothing before a pass was measured.
std::optional<StoneExperience> experienceOf(const StoneOutlook& learned);

} // namespace borewright
