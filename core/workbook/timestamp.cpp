// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/workbook/timestamp.h"

#include "core/utf8.h"

#include <chrono>
#include <cstdlib>
#include <fmt/format.h>

namespace borewright {
namespace {

using namespace std::chrono;

struct LocalParts {
    year_month_day date;
    hh_mm_ss<seconds> time;
};

LocalParts localParts(const Timestamp& time) {
    const sys_seconds local{seconds(time.secondsSinceEpoch + time.offsetMinutes * 60LL)};
    const sys_days day = floor<days>(local);
    return {year_month_day(day), hh_mm_ss<seconds>(local - day)};
}

// Reads exactly `count` digits at `at`; -1 where there are none.
int digitsAt(std::string_view text, std::size_t at, std::size_t count) {
    if (at + count > text.size()) return -1;
    int value = 0;
    for (std::size_t i = at; i < at + count; ++i) {
        if (text[i] < '0' || text[i] > '9') return -1;
        value = value * 10 + (text[i] - '0');
    }
    return value;
}

} // namespace

std::string toIso(const Timestamp& time) {
    const LocalParts local = localParts(time);
    std::string text = fmt::format(
        "{:04}-{:02}-{:02}T{:02}:{:02}:{:02}", static_cast<int>(local.date.year()),
        static_cast<unsigned>(local.date.month()), static_cast<unsigned>(local.date.day()),
        local.time.hours().count(), local.time.minutes().count(), local.time.seconds().count());
    if (time.offsetMinutes == 0) return text + "Z";
    const int offset = std::abs(time.offsetMinutes);
    return text + fmt::format("{}{:02}:{:02}", time.offsetMinutes < 0 ? '-' : '+', offset / 60,
                              offset % 60);
}

Result<Timestamp> readIso(std::string_view text) {
    const auto refusal = [&] {
        return refuse("'" + shortened(text) +
                      "' is not a time like 2026-03-14T09:26:53+01:00");
    };
    const int y = digitsAt(text, 0, 4), mo = digitsAt(text, 5, 2), d = digitsAt(text, 8, 2);
    const int h = digitsAt(text, 11, 2), mi = digitsAt(text, 14, 2), s = digitsAt(text, 17, 2);
    if (text.size() < 20 || y < 0 || mo < 0 || d < 0 || h < 0 || mi < 0 || s < 0) return refusal();
    if (text[4] != '-' || text[7] != '-' || text[10] != 'T' || text[13] != ':' || text[16] != ':')
        return refusal();
    int offset = 0;
    if (text[19] == 'Z') {
        if (text.size() != 20) return refusal();
    } else {
        const int oh = digitsAt(text, 20, 2), om = digitsAt(text, 23, 2);
        if (text.size() != 25 || (text[19] != '+' && text[19] != '-') || text[22] != ':' ||
            oh < 0 || om < 0 || oh > 14 || om > 59)
            return refusal();
        offset = (text[19] == '-' ? -1 : 1) * (oh * 60 + om);
    }
    const year_month_day date{year(y), month(static_cast<unsigned>(mo)),
                              day(static_cast<unsigned>(d))};
    if (!date.ok() || y < 1900 || y > 2999 || h > 23 || mi > 59 || s > 59) return refusal();
    const auto local = sys_days(date) + hours(h) + minutes(mi) + seconds(s);
    return Timestamp{local.time_since_epoch().count() - offset * 60LL, offset};
}

std::string dateInWords(const Timestamp& time) {
    static constexpr std::string_view months[] = {"January",   "February", "March",    "April",
                                                  "May",       "June",     "July",     "August",
                                                  "September", "October",  "November", "December"};
    const auto date = localParts(time).date;
    return fmt::format("{} {} {}", static_cast<unsigned>(date.day()),
                       months[static_cast<unsigned>(date.month()) - 1],
                       static_cast<int>(date.year()));
}

std::string clockTime(const Timestamp& time) {
    const auto local = localParts(time).time;
    return fmt::format("{:02}:{:02}", local.hours().count(), local.minutes().count());
}

} // namespace borewright
