// SPDX-License-Identifier: GPL-3.0-or-later
// What is typed on the start form becomes a workbook. Units are told from the numbers: no engine
// has a bore of 73.2 in or of 3.42 mm. A unit behind a number always counts before the guess.
#pragma once

#include "core/workbook/workbook.h"

#include <string>

namespace borewright {

// A standard size or a depth of its own. Without a unit: below 14 it is inches, else millimetres
// (the smallest bores of small engines are about 10 mm, the largest of this trade about 8 in; from
// memory).
Result<TypedLength> readSize(const std::string& text);
// A length beside a size: in the family the size was typed in, as inch or millimetre.
Result<TypedLength> readBeside(const std::string& text, const TypedLength& size);
// An allowance beside a size. Inch: from 0.1 up it is thou, below that inches. Metric: from 1 up
// it is micrometres, below that millimetres. (3 or 0.003; 50 or 0.05.)
Result<TypedLength> readAllowance(const std::string& text, const TypedLength& size);

struct NewBlock {
    std::string bores;
    std::string size;
    std::string depth;
    std::string openEnd;
    std::string wornSize;       // may be empty
    std::string wornOutOfRound; // may be empty
    std::string wornTaper;      // may be empty
    std::string engine;
    std::string customer;
    std::string measuredBy;
    Arrangement arrangement = Arrangement::inLine;
    bool blind = true; // the closed end leaves a stone no room
    End combustionEnd = End::open;
};

// The fields that can be refused, as Error::where names them.
namespace new_block_field {
inline constexpr auto bores = "bores";
inline constexpr auto size = "size";
inline constexpr auto depth = "depth";
inline constexpr auto wornSize = "wornSize";
inline constexpr auto wornOutOfRound = "wornOutOfRound";
inline constexpr auto wornTaper = "wornTaper";
} // namespace new_block_field

inline constexpr int mostBoresTyped = 64; // of one block on the bench

// The workbook, with levels proposed by depth; or the first field that cannot be taken, and why.
Result<Workbook> makeWorkbook(const NewBlock& typed);

} // namespace borewright
