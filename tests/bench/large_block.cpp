// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/bench/large_block.h"

namespace borewright::bench {
namespace {

void addBores(Workbook& workbook, int bores, int levels) {
    for (int number = 1; number <= bores; ++number) {
        Bore bore;
        bore.number = number;
        bore.standardSize = *readTyped("3.5000", Unit::inch);
        bore.depth = *readTyped("6.5", Unit::inch);
        for (int level = 1; level <= levels; ++level)
            bore.levels.push_back(
                {typedFrom(Length::whole(500LL * level, Unit::thou), Unit::inch), Judging::byMap});
        workbook.block.bores.push_back(bore);
    }
    LimitSet worn;
    worn.id = "l1";
    worn.name = "worn";
    worn.limits.sizeUpper = *readTyped("3.5040", Unit::inch);
    worn.limits.outOfRound = *readTyped("3", Unit::thou);
    worn.limits.taper = *readTyped("2", Unit::thou);
    workbook.limitSets.push_back(worn);
}

} // namespace

Workbook largeBlock(int bores, int levels, int surveys, WithGear gear) {
    Workbook workbook = emptyWorkbook();
    workbook.block.arrangement = Arrangement::vee;
    addBores(workbook, bores, levels);
    for (int s = 0; s < surveys; ++s) {
        Survey survey;
        survey.header.id = freshSurveyId(workbook);
        survey.header.name = "survey " + std::to_string(s + 1);
        if (gear == WithGear::yes) {
            survey.header.gauge.gear = tenthDialAndRing();
            survey.header.gauge.stoodTogether = true;
        }
        survey.header.gauge.setSize = *readTyped("3.5000", Unit::inch);
        int n = 0;
        for (const Station& station : plannedStations(workbook.block)) {
            Reading reading;
            reading.station = station;
            // Worn towards the open end, with a tenth or two of the hand's own.
            const std::int64_t down =
                station.depth.picometres() / Length::whole(500, Unit::thou).picometres();
            reading.typed = typedFrom(
                Length::whole(25 * (levels - down) / levels + (n * 7 + s) % 3, Unit::tenth),
                Unit::thou);
            reading.time = {1'774'000'000 + n++, 60};
            survey.readings.push_back(reading);
        }
        workbook.surveys.push_back(std::move(survey));
    }
    return workbook;
}

Workbook withSizesAndFit(Workbook workbook) {
    for (const char* oversize : {"0", "0.010", "0.020", "0.030"})
        workbook.sizing.sizes.push_back({*readTyped(oversize, Unit::inch), {}, {}, {}});
    const int bores = static_cast<int>(workbook.block.bores.size());
    for (int i = 0; i < bores + bores / 2; ++i) {
        Piston piston;
        piston.id = freshPistonId(workbook.fit);
        piston.label = std::to_string(i + 1);
        piston.size = typedFrom(Length::whole(34'960 + i * 5 % 7, Unit::tenth), Unit::inch);
        piston.height = *readTyped("0.7", Unit::inch);
        workbook.fit.pistons.push_back(piston);
    }
    for (int i = 0; i < 2 * bores; ++i) {
        Ring ring;
        ring.id = freshRingId(workbook.fit);
        ring.label = std::to_string(i + 1);
        ring.groove = 1 + i / bores;
        ring.measuredIn = 1;
        ring.measuredAt = *readTyped("3", Unit::inch);
        ring.gap = typedFrom(Length::whole(120 + i * 11 % 17, Unit::tenth), Unit::thou);
        workbook.fit.rings.push_back(ring);
    }
    workbook.fit.clearance.aim = *readTyped("4", Unit::thou);
    workbook.fit.ringGap.lower = *readTyped("12", Unit::thou);
    workbook.fit.ringGap.upper = *readTyped("20", Unit::thou);
    return workbook;
}

} // namespace borewright::bench
