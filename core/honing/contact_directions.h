// SPDX-License-Identifier: GPL-3.0-or-later
// Directions of derivatives, eight at a time side by side, as the sweep carries them.
#pragma once

#include "core/honing/contact.h"

#include <array>
#include <vector>

namespace borewright {

constexpr std::size_t blockWidth = 8;
using Lane = Eigen::Array<double, static_cast<int>(blockWidth), 1>;
inline Eigen::Map<const Lane> lane(const double* at) {
    return Eigen::Map<const Lane>(at);
}
inline Eigen::Map<Lane> lane(double* at) {
    return Eigen::Map<Lane>(at);
}

// Eight directions. `state` holds a lane a row, wall first, the face from its top down.
struct DirectionBlock {
    std::vector<double> state;
    std::vector<double> hardness; // a lane a wall row, or empty
    Lane logRate = Lane::Zero(), logCompliance = Lane::Zero(), logWear = Lane::Zero(),
         logLooseness = Lane::Zero();
    Lane from = Lane::Zero(), to = Lane::Zero(), strokes = Lane::Zero(), held = Lane::Zero();
    bool movesPath = false; // one of the last four is not 0
    bool presses = false;   // logCompliance or logLooseness is not 0
    bool stands = false;    // all of it is 0, and stays so
};

std::vector<DirectionBlock> blocksOf(const Directions& directions);
// Diameter and face back into `directions`.
void takeBack(const std::vector<DirectionBlock>& blocks, Directions& directions);

} // namespace borewright
