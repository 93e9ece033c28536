// SPDX-License-Identifier: GPL-3.0-or-later
// Analysis of variance: one way, unbalanced, and crossed two-way with repeats, effects random
// (persons × spots). Sums of squares are taken about the means in a second pass, of values less the
// first of them, so that data with seven equal leading digits keep all the digits that doubles hold
// (NIST StRD SmLs04, NumAcc3). Estimators by the method of moments: Montgomery, Design and Analysis
// of Experiments; the crossed study as in AIAG, Measurement Systems Analysis, 4th ed.
#pragma once

#include "core/result.h"

#include <optional>
#include <span>
#include <vector>

namespace borewright {

// Mean and standard deviation (n − 1 below) of a sample.
struct Spread {
    double mean;
    double deviation;
    int count;
};
// Nothing where fewer than two values, or a value that is not finite.
std::optional<Spread> spreadOf(std::span<const double> values);

// Groups of values of one quantity. Variances are in the square of the data's unit.
//   betweenVariance = (MS_between − MS_within) / n0,  n0 = (N − Σn_i²/N)/(k − 1)
// which is unbiased; below zero it is reported as 0 and `betweenWasNegative` is set.
// f = MS_between/MS_within; where the values agree within every group it is infinity with chance 0,
// or, where all values are equal, 0 with chance 1.
struct OneWay {
    double betweenSquares;
    double withinSquares;
    double betweenFreedom; // k − 1
    double withinFreedom;  // N − k
    double withinVariance; // MS_within
    double betweenVariance;
    bool betweenWasNegative;
    double f;
    double chance; // of a larger f where there is nothing between the groups
};
// Refuses fewer than two groups, an empty group, no group with a repeat, values that are not
// finite.
Result<OneWay> oneWay(const std::vector<std::vector<double>>& groups);

// What becomes of the interaction of persons and spots: kept as an effect of its own, or pooled
// into the repeatability where its F could be chance.
enum class Interaction { kept, pooled };

// Crossed study, a persons × b spots × n repeats, all effects random. With MS the mean squares:
//   kept    repeatability MS_e;  interaction (MS_i − MS_e)/n;
//           person (MS_p − MS_i)/(b·n);  spot (MS_s − MS_i)/(a·n)
//   pooled  repeatability MS_e' = (SS_i + SS_e)/(df_i + df_e);  interaction 0;
//           person (MS_p − MS_e')/(b·n);  spot (MS_s − MS_e')/(a·n)
// A variance that comes out negative is reported as 0.
struct TwoWay {
    double personSquares, spotSquares, interactionSquares, errorSquares, totalSquares;
    double personFreedom, spotFreedom, interactionFreedom, errorFreedom, totalFreedom;
    double interactionF; // MS_i/MS_e; as OneWay::f where the repeats agree everywhere
    double interactionChance;
    bool interactionPooled;
    double repeatabilityVariance;
    double repeatabilityFreedom;
    double personVariance;
    double spotVariance;
    double interactionVariance;
};
// `cells` is [person][spot][repeat]. `interaction` pooled: pooled where the chance of a larger F is
// at least `level` (0 … 1), else kept.
// Refuses fewer than two persons, spots or repeats, cells that are not all alike in number, values
// that are not finite, a level outside 0 … 1.
Result<TwoWay> twoWay(const std::vector<std::vector<std::vector<double>>>& cells,
                      Interaction interaction, double level = 0.05);

} // namespace borewright
