// SPDX-License-Identifier: GPL-3.0-or-later
// The derivatives of the sweep's rates, eight directions at a time.
//
// do = da + x·dt − dg over the touching cells, where (da, dt) solve the derivative of the balance,
//     Σ weight·do = dκ,   Σ weight·x·do = −stiffness·dt − t·dstiffness.
// All sums over cells and places are of terms that are constant, linear in the row, or a row of the
// wall's or face's own: over a run they are differences of running sums, so that the work grows
// with rows + places + runs and not with rows × places.
#pragma once

#include "core/honing/contact_directions.h"
#include "core/honing/contact_runs.h"

#include <vector>

namespace borewright {

class Carrier {
public:
    Carrier(const Contact& contact, const Path& path);
    // After each time that the sweep found its rates.
    void follow() { runs_.find(); }
    // d(rate) for d(state), both a lane a row.
    void rates(const DirectionBlock& block, const double* state, double* rate);

private:
    struct Turned {
        Lane advance, tilt;
    };
    void addUp(const double* state);
    [[nodiscard]] Turned balanced(const DirectionBlock& block, std::size_t place,
                                  const double* state) const;
    [[nodiscard]] Lane top(const Place& at, const double* state) const;
    void press(const DirectionBlock& block, std::size_t place, const double* state, double* rate);
    void pressByShare(const DirectionBlock& block, std::size_t place, double* rate) const;
    void gather(const double* state, double* rate);
    void scale(const DirectionBlock& block, double* rate) const;
    [[nodiscard]] std::size_t firstRun(std::size_t place) const {
        return place == 0 ? 0 : runs_.touchesEnd[place - 1];
    }

    const Contact& contact_;
    const Path& path_;
    ContactRuns runs_;
    bool tilts_;
    double xStep_, xAtNone_; // x of the face's row k > 0 is xAtNone + k·xStep
    // Running sums up to a row: of the half diameter, of the face, and of row × these.
    std::vector<Lane> wallSum_, wallMoment_, faceSum_, faceMoment_;
    // What begins (and, taken back, ends) at a row: constant and linear in the row.
    std::vector<Lane> wallLevel_, wallSlope_, faceLevel_, faceSlope_;
};

} // namespace borewright
