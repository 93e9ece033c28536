// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/hone/played_round.h"

#include "app/hone/hone_verbs.h"
#include "core/honing/played_bore.h"

namespace borewright {
namespace {

constexpr int coldAgain_min = 600; // a played bore is read cold

// Readings are played faster than they are read: the next pass comes after them by their own clock.
Timestamp afterAllReadings(const Workbook& workbook, Timestamp now) {
    for (const Survey& survey : workbook.surveys)
        for (const Reading& reading : survey.readings)
            if (!(reading.time < now)) {
                now = reading.time;
                ++now.secondsSinceEpoch;
            }
    return now;
}

} // namespace

Result<PlayedRound> playRound(const Workbook& workbook, const SurveyHeader& proposed, int bore,
                              const PlannedSetUp& planned, Timestamp clock) {
    const Timestamp now = afterAllReadings(workbook, clock);
    if (!workbook.invented)
        return refuse("only an invented workbook is honed by the program: here the readings are "
                      "a real engine's");
    Pass pass = passNow(workbook, bore, planned.stone, windowsOf(planned), now);
    pass.simulated = true;
    pass.notes = "simulated: nothing was honed";
    Workbook honed = workbook;
    honed.hone.passes.push_back(pass);
    EditGroup group;
    group.edits.emplace_back(SetHone{honed.hone});
    Survey survey;
    survey.header = nextCheck(honed, proposed, bore, planned.measure, now);
    survey.header.minutesSinceWarm = coldAgain_min;
    survey.header.notes = "simulated: read on a bore that does not exist";
    auto readings = playedReadings(honed, survey.header, *survey.header.asked);
    if (!readings) return tl::unexpected(readings.error());
    survey.readings = std::move(*readings);
    PlayedRound round;
    round.survey = survey.header.id;
    group.edits.emplace_back(InsertSurvey{workbook.surveys.size(), std::move(survey)});
    round.edit = std::move(group);
    return round;
}

} // namespace borewright
