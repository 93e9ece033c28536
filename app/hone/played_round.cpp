// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/hone/played_round.h"

#include "app/hone/hone_verbs.h"
#include "core/honing/played_bore.h"

#include <algorithm>
#include <limits>

namespace borewright {
namespace {

constexpr int coldAgain_min = 600; // a played bore is read cold

// Behind all that is logged, by its own clock, but not later than `now`.
Timestamp afterAll(const Workbook& workbook, Timestamp now) {
    Timestamp last = now;
    last.secondsSinceEpoch = std::numeric_limits<std::int64_t>::min();
    for (const Pass& pass : workbook.hone.passes)
        last.secondsSinceEpoch = std::max(last.secondsSinceEpoch, pass.time.secondsSinceEpoch);
    for (const Survey& survey : workbook.surveys)
        for (const Reading& reading : survey.readings)
            last.secondsSinceEpoch =
                std::max(last.secondsSinceEpoch, reading.time.secondsSinceEpoch);
    last.secondsSinceEpoch = std::min(last.secondsSinceEpoch, now.secondsSinceEpoch - 1) + 1;
    return last;
}

// A round is played in a moment and is over when it is shown: its readings, which begin at `now`,
// are moved back so that the last is read now, closer together where the round before ended but a
// moment ago. Returns when it begins.
Timestamp endNow(std::vector<Reading>& readings, const Timestamp& earliest, const Timestamp& now) {
    if (readings.empty()) return now;
    const auto lasts = readings.back().time.secondsSinceEpoch - now.secondsSinceEpoch;
    Timestamp begin = now;
    begin.secondsSinceEpoch = std::max(now.secondsSinceEpoch - lasts, earliest.secondsSinceEpoch);
    const auto room = now.secondsSinceEpoch - begin.secondsSinceEpoch;
    for (Reading& reading : readings) {
        const auto since = reading.time.secondsSinceEpoch - now.secondsSinceEpoch;
        reading.time.secondsSinceEpoch =
            begin.secondsSinceEpoch + (lasts > 0 ? since * room / lasts : 0);
    }
    return begin;
}

} // namespace

Result<PlayedRound> playRound(const Workbook& workbook, const SurveyHeader& proposed, int bore,
                              const PlannedSetUp& planned, Timestamp now) {
    if (!workbook.invented)
        return refuse("only an invented workbook is honed by the program: here the readings are "
                      "a real engine's");
    Pass pass = passNow(workbook, bore, planned.stone, windowsOf(planned), now);
    pass.simulated = true;
    pass.notes = "simulated: nothing was honed";
    Workbook honed = workbook;
    honed.hone.passes.push_back(pass);
    Survey survey;
    survey.header = nextCheck(honed, proposed, bore, planned.measure, now);
    survey.header.minutesSinceWarm = coldAgain_min;
    survey.header.notes = "simulated: read on a bore that does not exist";
    auto readings = playedReadings(honed, survey.header, *survey.header.asked);
    if (!readings) return tl::unexpected(readings.error());
    survey.readings = std::move(*readings);
    const Timestamp begin = endNow(survey.readings, afterAll(workbook, now), now);
    survey.header.time = begin;
    honed.hone.passes.back().time = begin;
    EditGroup group;
    group.edits.emplace_back(SetHone{honed.hone});
    PlayedRound round;
    round.survey = survey.header.id;
    group.edits.emplace_back(InsertSurvey{workbook.surveys.size(), std::move(survey)});
    round.edit = std::move(group);
    return round;
}

} // namespace borewright
