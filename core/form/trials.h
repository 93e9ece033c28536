// SPDX-License-Identifier: GPL-3.0-or-later
// How much a bore's figures may be off: Monte Carlo over the doubt of its readings (JCGM 101:2008:
// distributions carried through, shortest interval, trials until the figures stand still).
//
// The estimator of each figure is what the trade states: the largest, smallest, or largest less
// smallest reading. Such a figure T = max over contrasts c·x is biased: with noise alone a
// perfectly straight bore shows taper (mean range of six readings 2.534 s). What noise adds depends
// on how many contrasts are in the running for the largest, which only the readings can tell:
//   deciding   the contrast that is largest as read. Its doubt u, and T + k·u, bound the true
//              figure from above: P(true > T + z·u) is at most what the normal says, since T is
//              never below the true deciding contrast as read.
//   bunched    all contrasts that noise could have kept from being largest: those short of T by
//              less than κ standard deviations of the gap, κ = √(2 ln n) − m for n stations (the
//              largest of n normal draws, less a margin: m = 0.7 for sizes, 0.6 for differences).
//              What the largest of their noises adds, D, bounds the true figure from below: T − D.
// The margins were found by simulation of worn, honed, bell-mouthed, tapered, oval and wavy bores,
// so that the interval holds 95 ± 1 % of them (tests/core/coverage_test.cpp). The price is paid by
// a bore without any form at all, where every reading is in the running and some are left out: its
// sizes are held 92 %, its out-of-round and taper of zero 90 % and 86 % of the time. A margin of
// −0.4 would hold those 93 %, but real bores 97 %.
// The 95 % interval of a figure is [T − q, T + a]: a from the shortest interval of the deciding
// contrast (every source is symmetric), q so that both ends together miss 5 % of the bunched
// trials. Where one contrast stands clear, that is the usual T ± U.
#pragma once

#include "core/gauging/budget.h"
#include "core/workbook/limits.h"

#include <array>
#include <functional>
#include <optional>
#include <span>
#include <vector>

namespace borewright {

struct TrialStation {
    int level = 0; // same number, same depth; rising depth
    int axis = 0;
    double size_um = 0; // from anything, the same for the whole bore
    bool judged = true;
    OwnDoubt own;
};
struct TrialBore {
    std::vector<TrialStation> stations; // by level, then axis
    std::vector<SharedDoubt> shared;    // loadings by station
    double ownFreedom = std::numeric_limits<double>::infinity();
    TaperRule rule = TaperRule::largestLessSmallest;
};

enum class Figure { largest, smallest, outOfRound, taper, straightness };
inline constexpr std::size_t figures = 5;

struct FigureDoubt {
    double u_um = 0; // standard uncertainty of the deciding contrast
    double freedom = std::numeric_limits<double>::infinity();
    double below_um = 0; // the true figure lies between value − below and value + above, 95 %
    double above_um = 0;
    // What the gauge alone would show on a perfect bore, on average; 0 for a size.
    double gaugeAlone_um = 0;
    // Quantiles, at equal steps of chance from 0 to 1, of what noise adds to the figure; for the
    // smallest, of what it takes off.
    std::vector<float> noise_um;

    // The chance that noise moves the figure outward by more than this.
    [[nodiscard]] double chanceOfMore(double excess_um) const;
    // What noise adds at most, with this chance of more.
    [[nodiscard]] double noiseAt(double chanceOfMore) const;
};

struct BoreDoubt {
    std::array<std::optional<FigureDoubt>, figures> figure;
    [[nodiscard]] const std::optional<FigureDoubt>& of(Figure which) const {
        return figure[static_cast<std::size_t>(which)];
    }
    std::size_t trials = 0;
};

struct TrialOptions {
    int leastRuns = 4;
    int mostRuns = 100;
    // Two standard errors of each end and of u may be this share of u (JCGM 101, 7.9).
    double tolerance = 0.03;
    int batchesARun = 10; // of 1024 trials
    // Refuses what would never end.
    [[nodiscard]] Result<void> check() const;
};
inline constexpr int trialsABatch = 1024;

// The doubt of each bore. The same bore gives the same doubt, alone or among others, on every
// machine. A figure that the stations cannot give is left out. `cancelled` is asked once a run;
// where it says yes the result is empty.
std::vector<BoreDoubt> doubtsOf(std::span<const TrialBore> bores, const TrialOptions& options = {},
                                const std::function<bool()>& cancelled = {});

} // namespace borewright
