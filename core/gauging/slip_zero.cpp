// SPDX-License-Identifier: GPL-3.0-or-later
// A gauge that was knocked, told from its zero checks.
#include "core/gauging/slip_parts.h"
#include "core/gauging/zero_history.h"

#include "core/length/format.h"

#include <algorithm>

namespace borewright::slips {
namespace {

// Readings typed after `from` (nothing = since ever) and not after `to`, off by `shift`.
struct Knock {
    std::optional<Timestamp> from;
    Timestamp to;
    TypedLength shows;
    Length shift;
};

// Zero is good when the survey starts. A check that shows more than the limit, and has moved by
// more than it, closes a stretch that is off by the move. If the gauge was not set again, the next
// check shows about the same and its stretch is off by as much; if it moved once more, by all that
// it shows then.
std::vector<Knock> knocksOf(const SurveyHeader& survey) {
    std::vector<ZeroCheck> checks = survey.zeroChecks;
    std::ranges::stable_sort(checks, {}, &ZeroCheck::time);
    const Length limit = driftLimitOf(survey.gauge);
    std::vector<Knock> knocks;
    Length before, carried;
    std::optional<Timestamp> from;
    for (const ZeroCheck& check : checks) {
        const Length shows = check.shows.value();
        const Length moved = shows - before;
        if (shows.magnitude() <= limit)
            carried = Length();
        else if (moved.magnitude() > limit)
            carried = carried == Length() ? moved : shows;
        if (carried != Length()) knocks.push_back({from, check.time, check.shows, carried});
        before = shows;
        from = check.time;
    }
    return knocks;
}

bool isSettled(const Reading& reading) {
    return reading.struck || reading.kept ||
           (reading.accepted &&
            reading.accepted->find(reasonOf(Slip::gaugeKnocked)) != std::string::npos);
}

SlipStory storyOf(const Survey& survey, const Knock& knock,
                  const std::vector<std::size_t>& readings) {
    const GaugeSetting& gauge = survey.header.gauge;
    // A diameter was made of the dial by the user's own head: set size plus or minus what it shows.
    const bool turned = gauge.entry == Entry::diameter && gauge.dial.larger == Dial::Larger::minus;
    SlipStory story;
    story.slip = Slip::gaugeKnocked;
    story.weight = 1;
    story.reason = reasonOf(story.slip);
    story.words =
        "gauge knocked: zero showed " + shown(knock.shows) + " " +
        std::string(symbol(knock.shows.unit())) + " afterwards; " +
        (readings.size() == 1 ? "one reading is off by as much"
                              : std::to_string(readings.size()) + " readings are off by as much");
    for (const std::size_t index : readings) {
        const Reading& reading = survey.readings[index];
        const Length value =
            turned ? reading.typed.value() + knock.shift : reading.typed.value() - knock.shift;
        story.fixes.push_back({reading.station, index, typedLike(value, reading.typed), index});
    }
    return story;
}

} // namespace

std::vector<Suspicion> knockedReadings(const Survey& survey) {
    std::vector<Suspicion> found;
    for (const Knock& knock : knocksOf(survey.header)) {
        std::vector<std::size_t> readings;
        for (std::size_t i = 0; i < survey.readings.size(); ++i) {
            const Reading& reading = survey.readings[i];
            const bool within = (!knock.from || *knock.from < reading.time) &&
                                reading.time <= knock.to && !isSettled(reading);
            if (within) readings.push_back(i);
        }
        if (!readings.empty()) found.push_back({readings, {storyOf(survey, knock, readings)}});
    }
    return found;
}

} // namespace borewright::slips
