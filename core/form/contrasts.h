// SPDX-License-Identifier: GPL-3.0-or-later
// Which readings are in the running for a figure. Part of the trials.
#pragma once

#include "core/form/trials.h"

namespace borewright {

// Σ over plus of e less Σ over minus: one station, or a pair.
struct Contrast {
    int plus = -1; // index of a station; −1 = none
    int minus = -1;
};

// A group in which any of `top` may be the largest and any of `bottom` the smallest; one of the two
// is empty for a size.
struct Bunch {
    std::vector<int> top;
    std::vector<int> bottom;
};

struct Running {
    Contrast deciding;
    std::vector<Bunch> bunches; // what noise adds is the largest over all of them
};

// Nothing where the stations cannot give the figure.
std::optional<Running> runningFor(const TrialBore& bore, Figure figure);
// The same for a perfect bore of these stations: every contrast is in the running. Only for
// differences.
std::vector<Bunch> perfect(const TrialBore& bore, Figure figure);

// Variance of a contrast, µm², and its effective degrees of freedom.
struct ContrastDoubt {
    double u_um;
    double freedom;
};
ContrastDoubt doubtOfContrast(const TrialBore& bore, const Contrast& contrast);

} // namespace borewright
