// SPDX-License-Identifier: GPL-3.0-or-later
// Blocks of bores as a shop sees them, read through a gauge with known noise, and slips made in
// their readings: for telling how often slips are found and clean readings accused.
#pragma once

#include "core/gauging/slips.h"
#include "core/statistics/random.h"

#include <string>
#include <vector>

namespace borewright::test {

enum class BoreKind { honed, worn, ridge, bell, vee, scored, portWear, oval };
inline constexpr BoreKind allBoreKinds[] = {BoreKind::honed,    BoreKind::worn, BoreKind::ridge,
                                            BoreKind::bell,     BoreKind::vee,  BoreKind::scored,
                                            BoreKind::portWear, BoreKind::oval};
std::string nameOf(BoreKind kind);

// How it was read: what is typed, on which dial.
enum class GearKind { tenthThou, micrometre, diameterInch, diameterMetric };
inline constexpr GearKind allGearKinds[] = {GearKind::tenthThou, GearKind::micrometre,
                                            GearKind::diameterInch, GearKind::diameterMetric};

struct BlockPlan {
    BoreKind kind = BoreKind::worn;
    GearKind gear = GearKind::tenthThou;
    int bores = 6;
    int levels = 6;
    bool oddBore = false; // one bore of another kind among them
};

// A block of this plan with one survey of it, every station read once, down A and up B. The bores
// of a block share their kind and vary by a fifth; a scored bore stands among worn ones.
Workbook readBlock(const BlockPlan& plan, Random& random);

// Makes a slip somewhere in the workbook's first survey; nothing where this kind cannot happen, or
// where it would change no reading by more than `least_um`.
struct MadeSlip {
    std::vector<std::size_t> readings; // those that are wrong, in the survey as it stands then
    std::optional<TypedLength> meant;  // what the one reading was meant as
};
std::optional<MadeSlip> makeSlip(Workbook& workbook, Slip slip, double least_um, Random& random);

} // namespace borewright::test
