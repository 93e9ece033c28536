// SPDX-License-Identifier: GPL-3.0-or-later
// Bores and pistons on a bench, by hand: one reading a bore, nothing of how it was read.
#pragma once

#include "core/sizing/matching.h"
#include "tests/support/lengths.h"

#include <optional>
#include <string>
#include <vector>

namespace borewright::test {

inline MeasuredBore boreOf(int number, Length size) {
    MeasuredBore bore;
    bore.bore = number;
    bore.at.push_back({mm("50"), "A", size, Zone::ringTravel, std::nullopt});
    return bore;
}
inline Piston pistonOf(const std::string& label, const TypedLength& size) {
    Piston piston;
    piston.id = "p" + label;
    piston.label = label;
    piston.size = size;
    piston.height = typedMm("12");
    return piston;
}

// Saltmarsh V6 as finished, and its pistons: the best is 3 5 1 6 2 4.
inline std::vector<MeasuredBore> benchBores() {
    std::vector<MeasuredBore> bores;
    for (const char* size : {"3.4401", "3.4402", "3.4400", "3.4402", "3.4404", "3.4401"})
        bores.push_back(boreOf(static_cast<int>(bores.size()) + 1, in(size)));
    return bores;
}
inline FitRecord benchFit() {
    FitRecord fit;
    for (const char* size : {"3.4358", "3.4362", "3.4360", "3.4359", "3.4361", "3.4360"})
        fit.pistons.push_back(pistonOf(std::to_string(fit.pistons.size() + 1), typedIn(size)));
    fit.clearance.lower = typedThou("3.8");
    fit.clearance.upper = typedThou("4.8");
    fit.clearance.aim = typedThou("4.2");
    return fit;
}

// The labels of the pistons by bore: "3 5 1 6 2 4".
inline std::string labels(const Matching& matching, const FitRecord& fit,
                          const std::vector<std::optional<std::size_t>>& chosen) {
    std::string text;
    for (const auto& place : chosen)
        text += (text.empty() ? "" : " ") +
                (place ? fit.pistons[matching.pistons[*place]].label : std::string("-"));
    return text;
}
inline std::string labels(const Matching& matching, const FitRecord& fit) {
    return labels(matching, fit, matching.chosen);
}

} // namespace borewright::test
