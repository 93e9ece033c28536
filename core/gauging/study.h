// SPDX-License-Identifier: GPL-3.0-or-later
// The same spot ten times: the gauge's repeatability, from readings of one spot with the gauge
// taken out and put in again each time.
#pragma once

#include "core/workbook/workbook.h"

#include <optional>
#include <string>
#include <vector>

namespace borewright {

struct StudyResult {
    int readings = 0;
    double repeatability_um = 0; // standard deviation of one reading at one spot by one person
    int freedom = 0;             // its degrees of freedom
    // The true standard deviation lies between these, 95 %: s·√(ν/χ²).
    double low_um = 0;
    double high_um = 0;
    // Shares of several people and spots, as standard deviations; nothing where there was but one.
    // A negative variance is reported as 0.
    std::optional<double> betweenPeople_um;
    std::optional<double> betweenSpots_um;
    // The reading farthest out, where Grubbs' test (1 %, two-sided) calls it an outlier: the run
    // and the reading's place in it.
    struct Outlier {
        std::size_t run;
        std::size_t reading;
    };
    std::optional<Outlier> outlier;
    // Every reading is the same: the dial is coarser than the hand, so that s is taken as a step
    // over √12 rather than nothing.
    bool belowTheStep = false;
};

// Runs of one person at one spot each; runs of the same person and spot are joined. Crossed and
// balanced (every person at every spot, as often) they are told apart by the two-way analysis of
// variance, interaction pooled where it is not significant at 5 %; otherwise by the one-way
// analysis over people, or over spots, whichever there are several of.
// Refuses fewer than three readings in all, no run with two, units of both systems. `step` is the
// finest that was read off.
Result<StudyResult> studyOf(const RepeatStudy& study, Length step);

// "repeatability 0.08 thou (between 0.05 and 0.15; 10 readings)".
std::string studyWords(const StudyResult& result, const DisplayUnits& units);

// `gear` with the study's repeatability and degrees of freedom in place of what stood there.
Gear withStudy(const Gear& gear, const StudyResult& result, Unit unit);

} // namespace borewright
