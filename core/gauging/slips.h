// SPDX-License-Identifier: GPL-3.0-or-later
// Suspicious readings with their likely stories: what went wrong between the bore and the page, and
// what the reading would be had it not. Never a refusal, never a change made by itself.
#pragma once

#include "core/workbook/edit.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace borewright {

enum class Slip {
    digitsSwapped,     // 73.216 typed where 73.261 was meant
    signTurned,        // −1.6 typed where 1.6 was meant
    turnsMissed,       // whole turns of the dial lost or gained: −6.2 where it stood at 3.8
    complement,        // 96.5 read off a round dial where it stood at −3.5
    graduation,        // a division taken for another: 2, 5 or 10 times too large or too small
    unit,              // meant in another unit: 0.030 for 30, or 1000 times off
    axesExchanged,     // two axes at one depth, or throughout a bore
    stationsExchanged, // two readings next to each other on one axis
    columnReversed,    // an axis typed from the other end
    stationSkipped,    // a station passed over, so that the values behind it moved up
    typedAgain,        // the last reading typed once more
    gaugeKnocked,      // zero moved between two checks, and with it what was read between them
    unexplained,       // too small for its bore, and no story fits
};

// One reading that a story would have otherwise.
struct SlipFix {
    Station station;
    std::optional<std::size_t> replaces; // the reading there now, in survey.readings; none if empty
    std::optional<TypedLength> value; // as it would be typed; nothing = strike out and read again
    std::size_t source = 0;           // the reading that the value was typed as: its time is kept
};

struct SlipStory {
    Slip slip = Slip::unexplained;
    double weight = 0;           // its share among the stories told of these readings, 0 … 1
    std::string words;           // "two digits swapped: 73.261 for 73.216"
    std::string reason;          // for the strike: "digits swapped"
    std::vector<SlipFix> fixes;  // all readings it would change; empty for unexplained
    std::vector<Station> toRead; // stations left without a reading once it is accepted
};

struct Suspicion {
    std::vector<std::size_t> readings; // the accused, in survey.readings, rising
    std::vector<SlipStory> stories;    // best first, at most four, never empty
};

// Readings of a survey that look like slips. Each story is undone and the bore judged as typed and
// as corrected, by its own pattern and by that of its neighbours (bore_model.h); a reading is
// accused where the story is overwhelmingly the likelier (slip_judge.h). A moved zero is told from
// the zero checks alone: what was read between a good check and the next that shows more than the
// gear's drift limit (0.2 thou or 5 µm where none is set). Struck and kept readings are never
// accused. Readings need no set size. In order of the first accused reading; none where nothing is
// to be said.
std::vector<Suspicion> findSlips(const Workbook& workbook, const Survey& survey);

// Standard deviation of one reading by itself, in micrometres: u² = s² + step²/12 + e²/3 with s the
// gear's repeatability, e the dial's local error. Where the repeatability is not known, s is taken
// as 2 µm (0.08 thou), so that a tenth dial has 0.9 of a graduation (common practice, no source).
double ownNoise_um(const GaugeSetting& gauge);

// A story accepted, as one step: each reading it replaces is struck out with its reason, the values
// it makes of them inserted with the time of the reading they were typed as, marked `accepted`.
Edit acceptStory(const Workbook& workbook, const std::string& survey, const SlipStory& story,
                 Timestamp now);
// "I looked again; they stay": none of these readings is accused any more.
Edit keepReadings(const std::string& survey, const std::vector<std::size_t>& readings);

} // namespace borewright
