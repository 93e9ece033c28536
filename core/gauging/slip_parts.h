// SPDX-License-Identifier: GPL-3.0-or-later
// What the files behind slips.h share. Nothing outside this room includes it.
#pragma once

#include "core/gauging/slips.h"

#include <string>
#include <vector>

namespace borewright::slips {

// Short, for the strike: "digits swapped".
std::string reasonOf(Slip slip);

// A value that a story proposes, written as its neighbour was typed: same unit, at least as many
// decimals ("30" by "41", "73.200" by "73.216").
TypedLength typedLike(Length value, const TypedLength& like);

// Digits behind the point or comma.
int decimalsIn(const std::string& text);

// "73.216", with a typographic minus.
std::string shown(const TypedLength& typed);

// Suspicions from the zero checks alone.
std::vector<Suspicion> knockedReadings(const Survey& survey);

// The finer a reading, the less it can have been read: below a tenth of a graduation, or below the
// step that the gear says he reads.
bool isFinerThanTheDial(const Reading& reading, const GaugeSetting& gauge);

} // namespace borewright::slips
