// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/ledger/made_jobs.h"

#include <array>
#include <fmt/format.h>

namespace borewright::test {
namespace {

constexpr std::int64_t day = 86'400;

Length thouAbove(std::int64_t tenths) {
    return Length::whole(35'000 + tenths, Unit::tenth);
}

// Evenly spread and the same everywhere (splitmix64, Steele et al. 2014, from memory).
std::uint64_t drawn(std::uint64_t seed) {
    std::uint64_t z = seed * 0x9e3779b97f4a7c15U + 0x9e3779b97f4a7c15U;
    z = (z ^ (z >> 30U)) * 0xbf58476d1ce4e5b9U;
    z = (z ^ (z >> 27U)) * 0x94d049bb133111ebU;
    return z ^ (z >> 31U);
}

std::string word(std::uint64_t seed) {
    static constexpr std::array beginnings{"Salt", "Rush",  "Mill",  "Thorn", "Ash", "Wether",
                                           "Corn", "Heron", "Stone", "Black", "Fen", "Oak"};
    static constexpr std::array endings{"marsh", "mere", "brook", "field", "ford",
                                        "ham",   "wick", "ley",   "combe", "by"};
    return std::string(beginnings[seed % beginnings.size()]) +
           endings[seed / beginnings.size() % endings.size()];
}

} // namespace

JobEntry madeJob(int number, const std::string& customer, const std::string& engine,
                 const std::string& serial) {
    JobEntry job;
    job.file = fmt::format("/shop/jobs/{:06}.borebook", number);
    job.content = 0xfedcba9876543210U + static_cast<std::uint64_t>(number);
    job.customer = customer;
    job.engine = engine;
    job.serial = serial;
    job.opened = Timestamp{1'774'000'000 + number * day, 60};
    job.lastSurvey = Timestamp{1'774'000'000 + (number + 3) * day, 120};
    job.invented = true;
    for (int bore = 1; bore <= 3; ++bore)
        job.bores.push_back({bore, thouAbove(0), SizeSpan{thouAbove(20), thouAbove(30 + bore)},
                             SizeSpan{thouAbove(200), thouAbove(202)}, Verdict::within,
                             Length::whole(20, Unit::thou)});
    job.bores[2].after.reset();
    job.bores[2].verdict = Verdict::tooCloseToCall;
    job.gauges = {{"as found", "as found", *job.opened, "dial bore gauge no. 2", "ring 3.5000",
                   "certificate 12", "1, 2 and 3"},
                  {"final", "final", *job.lastSurvey, "dial bore gauge no. 3", "", "", "1 and 2"}};
    job.stones = {{"full 100", "100", Surface::iron, 3, 72.5, Length::whole(4, Unit::thou)},
                  {"short 100", "100", Surface::ironSleeveInAluminium}};
    return job;
}

JobEntry manyJobs(int number) {
    const auto seed = static_cast<std::uint64_t>(number);
    JobEntry job =
        madeJob(number, word(drawn(seed)) + " & " + word(drawn(seed + 1'000'000)),
                word(drawn(seed + 2'000'000)) + fmt::format(" {}", drawn(seed + 3'000'000) % 400),
                fmt::format("{}-{:07}", drawn(seed + 4'000'000) % 90 + 10, number));
    job.opened->secondsSinceEpoch =
        static_cast<std::int64_t>(1'500'000'000 + drawn(seed + 5'000'000) % 400'000'000);
    job.bores.resize(1 + drawn(seed + 6'000'000) % 6, job.bores.front());
    return job;
}

} // namespace borewright::test
