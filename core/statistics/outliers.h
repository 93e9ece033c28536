// SPDX-License-Identifier: GPL-3.0-or-later
// Is one value of a small sample too far out? Two tests for normal data, one outlier at most.
// Grubbs: Technometrics 11 (1969) 1, critical values from Student's t, as in the NIST/SEMATECH
// handbook 1.3.5.17.1. Dixon's r10: Anal. Chem. 23 (1951) 636, two-sided critical values of
// Rorabacher, Anal. Chem. 63 (1991) 139.
// At n = 3 do not test: Grubbs' statistic cannot pass (n − 1)/√n = 1.1547, whatever the data.
#pragma once

#include <cstddef>
#include <optional>
#include <span>

namespace borewright {

enum class Sides { one, two };

// The value farthest out, by its place in the sample, and its test statistic.
struct Suspect {
    double statistic;
    std::size_t index;
};

// G = max|x − mean|/s. Nothing for fewer than four values, where all are equal, or where one is not
// finite. Two values equally far out: the first is named.
std::optional<Suspect> grubbs(std::span<const double> values);
// G that is passed with the chance `risk` (0 < risk < 1) where the data hold no outlier:
//   (n − 1)/√n · √(t²/(n − 2 + t²)), t Student's with n − 2 degrees of freedom at 1 − risk/n
// (one-sided: the side was chosen beforehand) or 1 − risk/(2n). Nothing for fewer than three values
// or a risk out of range.
std::optional<double> grubbsCritical(int count, double risk, Sides sides);

// r10 = gap beside the value farthest from its neighbour, over the range. Nothing for fewer than
// four or more than ten values, where all are equal, or where one is not finite. Ties: the lowest.
std::optional<Suspect> dixon(std::span<const double> values);
// Two-sided critical values at 5 % and 1 %, n = 3 … 10, else nothing.
enum class DixonRisk { fivePercent, onePercent };
std::optional<double> dixonCritical(int count, DixonRisk risk);

} // namespace borewright
