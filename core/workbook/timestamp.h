// SPDX-License-Identifier: GPL-3.0-or-later
// A moment with the clock's offset from UTC, as ISO 8601 writes it. Times are handed in from
// outside (the app's clock); nothing in core/ reads a clock.
#pragma once

#include "core/result.h"

#include <compare>
#include <cstdint>
#include <string>
#include <string_view>

namespace borewright {

struct Timestamp {
    std::int64_t secondsSinceEpoch = 0; // UTC, 1970-01-01T00:00:00Z
    int offsetMinutes = 0;              // local time less UTC
    friend bool operator==(const Timestamp&, const Timestamp&) = default;
    friend auto operator<=>(const Timestamp& a, const Timestamp& b) {
        return a.secondsSinceEpoch <=> b.secondsSinceEpoch;
    }
};

// "2026-03-14T09:26:53+01:00"; "Z" for an offset of zero.
std::string toIso(const Timestamp& time);
// Reads that form only. Refuses impossible dates, offsets beyond ±14 h, years before 1900 or
// after 2999.
Result<Timestamp> readIso(std::string_view text);
// "14 March 2026" and "09:26" in the time's own offset, for people.
std::string dateInWords(const Timestamp& time);
std::string clockTime(const Timestamp& time);

} // namespace borewright
