// SPDX-License-Identifier: GPL-3.0-or-later
// How stones and passes are called in a refusal. Part of hone_record.h.
#pragma once

#include "core/workbook/hone_record.h"

#include <string>
#include <string_view>

namespace borewright {

// Two names that come to the same here are one name to a machinist: capitals, outer spaces and
// runs of spaces do not count (ASCII and the letters of Latin-1).
std::string foldedName(std::string_view name);

// "stone 'short 100'", "pass h3": by name, else id, shortened.
std::string called(const Stone& stone);
std::string called(const Pass& pass);

// Why a stone can be stroked in no bore of the block, as far as their depths are entered; empty
// where it can in one, or where none has a depth.
std::string fitsNowhere(const Stone& stone, const Block& block);

// "4.04 in": a length as a refusal shows it, to the thou or the hundredth.
std::string inUnit(Length length, Unit unit);

} // namespace borewright
