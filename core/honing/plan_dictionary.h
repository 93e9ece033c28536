// SPDX-License-Identifier: GPL-3.0-or-later
// Starts of fits that suit the wall as it is: what each of some dozen windows would take off, and
// the doses of them all that together come nearest the aim, by least squares between bounds. Of
// these each set-up keeps the few that do most.
#pragma once

#include "core/honing/plan_sequences.h"

namespace borewright {

class WindowDictionary {
public:
    explicit WindowDictionary(const PlanGround& ground);
    [[nodiscard]] Course startFor(const StoneOrder& order, int windows) const;

private:
    struct Entry {
        Stroking window;          // of one micrometre of dose
        Eigen::VectorXd takesOff; // a micrometre of dose
        double dear = 1;          // a short one costs more
    };
    struct Choice;
    [[nodiscard]] std::vector<Entry> entriesOf(std::size_t stone) const;
    [[nodiscard]] Eigen::VectorXd dosesOf(const StoneOrder& order,
                                          const std::vector<Choice>& choices) const;

    const PlanGround& m_ground;
    std::vector<std::vector<Entry>> m_entries; // by stone; empty = may not be used
};

} // namespace borewright
