// SPDX-License-Identifier: GPL-3.0-or-later
// Random draws in columns, a station a column, so that the largest over stations is taken for many
// trials at a time. Each column has a generator of its own, seeded by run and station: a bore gets
// the same draws whatever other bores run beside it. Part of the trials.
#pragma once

#include "core/form/trials.h"
#include "core/statistics/random.h"

namespace borewright {

using Column = std::array<float, trialsABatch>;

// Unit draws (mean 0, standard deviation 1) of one batch for every station: what bores share.
struct TrialDraws {
    struct Own {
        Column normal;
        Column step;  // rectangular
        Column local; // rectangular
    };
    std::vector<Own> own;
    std::vector<Column> shared;
    Column scale; // of the normal parts, where their standard deviation is known by few readings
};

class DrawMaker {
public:
    // For bores of up to `stations` stations that hang on `shared`.
    DrawMaker(std::size_t stations, const std::vector<SharedDoubt>& shared, double ownFreedom);
    void startRun(int run);
    void next(TrialDraws& draws);

private:
    std::vector<Distribution> m_shared;
    double m_freedom;
    std::size_t m_stations;
    std::vector<Random> m_own, m_flat, m_factors;
    std::optional<Random> m_scale;
};

} // namespace borewright
