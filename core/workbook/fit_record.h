// SPDX-License-Identifier: GPL-3.0-or-later
// Pistons and rings on the bench, as measured, and what the engine maker allows them. What follows
// from it is reckoned in core/sizing.
#pragma once

#include "core/length/temperature.h"
#include "core/workbook/limits.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace borewright {

inline constexpr std::size_t mostPistons = 200;
inline constexpr std::size_t mostRings = 400;
inline constexpr std::size_t mostSkirtPoints = 50;

struct SkirtPoint {
    TypedLength height; // from the skirt's end
    TypedLength size;
    UnknownFields unknown{};
    friend bool operator==(const SkirtPoint&, const SkirtPoint&) = default;
};

// Measured across the skirt, square to the pin, at the height its maker states.
struct Piston {
    std::string id;    // "p1"; unique in the workbook
    std::string label; // "1", "spare": what is scribed on it
    std::optional<TypedLength> size;
    std::optional<TypedLength> height; // from the skirt's end; nothing = clearance not given
    std::string measuredWith;
    std::optional<TypedTemperature> temperature; // nothing = not corrected
    std::optional<TypedLength> doubt;            // ±, 95 %
    std::optional<double> expansion;             // 1e-6/°C; nothing = cast aluminium
    std::vector<SkirtPoint> skirt;               // at other heights; may be empty
    std::optional<int> bore; // the bore it is to go in, as decided; engine number
    std::string notes;
    UnknownFields unknown{};
    friend bool operator==(const Piston&, const Piston&) = default;
};

// A ring and one gap of it, measured square in a bore at a known depth.
struct Ring {
    std::string id;                        // "g1"; unique in the workbook
    std::string label;                     // "top 1"
    int groove = 1;                        // counted from the crown
    std::optional<int> measuredIn;         // engine number
    std::optional<TypedLength> measuredAt; // depth
    std::optional<TypedLength> gap;
    std::optional<TypedLength> doubt; // ±, 95 %
    std::optional<int> bore;          // the bore it is to go in, as decided
    UnknownFields unknown{};
    friend bool operator==(const Ring&, const Ring&) = default;
};

// The engine maker's figures for a clearance or a gap.
struct FitLimits {
    std::optional<TypedLength> lower;
    std::optional<TypedLength> upper;
    std::optional<TypedLength> aim; // nothing = half-way between the limits, where both are given
    DecisionRule decision;
    UnknownFields unknown{};
    friend bool operator==(const FitLimits&, const FitLimits&) = default;
};
// The aim, or the middle of the limits, to the picometre.
std::optional<Length> aimOf(const FitLimits& limits);

struct FitRecord {
    std::vector<Piston> pistons; // in the order entered
    std::vector<Ring> rings;
    FitLimits clearance;                 // total, on the diameter
    FitLimits ringGap;                   // the same for every groove
    std::optional<TypedLength> fileStep; // filed between two measurements; nothing = 0.002 in
    UnknownFields unknown{};
    friend bool operator==(const FitRecord&, const FitRecord&) = default;
};

// "piston 3", "ring top 1": by label, else id, shortened; "a piston without a label".
std::string called(const Piston& piston);
std::string called(const Ring& ring);

std::string freshPistonId(const FitRecord& fit);
std::string freshRingId(const FitRecord& fit);

// Refuses, with the place, what cannot stand: ids twice, two pistons or two rings of one groove in
// one bore, sizes of nothing, limits crossed, an aim beyond them or at nothing. Asks whether the
// unit is right where a limit or aim of the clearance is over 2 % of the smallest piston (3 mm
// where none has a size), or one of the ring gap over 10 mm.
Result<void> checkFit(const FitRecord& fit);
// The same beside a block: a piston more than a tenth away from every bore's standard size is a slip
// of unit or point.
Result<void> checkFit(const FitRecord& fit, const Block& block);

} // namespace borewright
