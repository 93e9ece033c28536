// SPDX-License-Identifier: GPL-3.0-or-later
// Outlooks of the hone made from the known answer, for the drawing: a bore whose closed end lags,
// a short stone at it, what is expected. Invented figures.
#pragma once

#include "core/results/hone_outlook.h"
#include "tests/support/blocks.h"

#include <cmath>

namespace borewright::test {

inline Stone stoneOf(const std::string& id, const std::string& name, const std::string& begins_in,
                     const std::string& ends_in, StoneKind kind = StoneKind::rough) {
    Stone stone;
    stone.id = id;
    stone.name = name;
    stone.grit = "100";
    stone.kind = kind;
    stone.begins = typedIn(begins_in);
    stone.ends = typedIn(ends_in);
    return stone;
}

// Two blind bores of 3.5 in, 4.10 deep, with a full, a short and a finish stone.
inline Workbook honeBlock() {
    Workbook workbook = inchBlock(2);
    for (Bore& bore : workbook.block.bores) {
        bore.depth = typedIn("4.10");
        bore.openEnd = "head face";
        bore.map.ports = {{typedIn("2.2"), typedIn("2.9"), {"B"}}};
    }
    workbook.hone.stones = {stoneOf("k1", "full 100", "0.05", "3.05"),
                            stoneOf("k2", "short 100", "0.06", "1.06"),
                            stoneOf("k3", "full 220", "0.05", "3.05", StoneKind::finish)};
    return workbook;
}

// Straight in the upper part, then a V towards the closed end, by which it is smaller.
inline HoneLine vLine(const std::vector<double>& depths_mm, double level_um, double v_um,
                      double band_um) {
    HoneLine line;
    for (const double depth : depths_mm) {
        const double share = std::max(0.0, depth / 104.14 - 0.45) / 0.55;
        line.mean_um.push_back(level_um - v_um * share * share + 0.8 * std::sin(depth / 6));
        line.band_um.push_back(band_um * (1 + 0.6 * share));
    }
    return line;
}

inline BoreOutlook outlookOf(HoneOutcome outcome, double level_um = -60, double v_um = 45) {
    BoreOutlook outlook;
    outlook.bore = 1;
    outlook.outcome = outcome;
    outlook.finishSize = typedIn("3.5200").value();
    outlook.cap_um = 12.7;
    outlook.lower_um = -12.7;
    for (double depth = 1; depth < 104; depth += 2)
        outlook.curves.depth_mm.push_back(depth);
    outlook.curves.now = vLine(outlook.curves.depth_mm, level_um, v_um, 3);
    outlook.headline = "straight within 0.19 ± 0.06 thou, 3.5200 in: stop";
    return outlook;
}

inline PlannedWindow plannedWindow(const std::string& from_in, const std::string& to_in,
                                   double strokes, double hold = 0) {
    return {typedIn(from_in), typedIn(to_in), strokes, strokes, hold};
}

// The short stone low in the bore, three windows, the last held at the bottom.
inline BoreOutlook shortStoneOutlook() {
    BoreOutlook outlook = outlookOf(HoneOutcome::next);
    outlook.curves.then = vLine(outlook.curves.depth_mm, -58, 12, 6);
    PlannedSetUp next;
    next.stone = "k2";
    next.windows = {plannedWindow("2.10", "4.04", 24), plannedWindow("3.30", "4.04", 24),
                    plannedWindow("3.90", "4.04", 8, 3)};
    const auto at = [](const char* depth_in, const char* axis) {
        return Station{1, typedIn(depth_in).value(), axis};
    };
    next.measure = {at("3.75", "A"), at("0.6", "A"), at("3.05", "A"), at("1.8", "A"),
                    at("0.6", "B")};
    next.chanceOver = 0.0004;
    next.overWords = "less than 1 chance in 1000 that any depth goes over";
    next.sentence = "Short stone: 24 s with its lower end from 3.3 to 4.04 in";
    outlook.next = next;
    return outlook;
}

} // namespace borewright::test
