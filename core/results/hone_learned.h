// SPDX-License-Identifier: GPL-3.0-or-later
// The log of a workbook put through the learner: what is believed of each bore and stone now. Part
// of results.
#pragma once

#include "core/honing/log.h"
#include "core/results/hone_aim.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace borewright {

class HoneMemory;

// One thing told to the learner.
struct LearnedStep {
    enum class Kind { survey, pass, turned, dressed, reversed };
    Kind kind = Kind::survey;
    std::size_t bore = 0; // of the learner
    SetUp setUp;
    std::string survey; // id
    std::vector<BoreReading> readings;
    double shared_um = 0;
    std::size_t stone = 0; // of the bench
    bool check = false;    // a survey behind a pass: what was expected of it counts
};

// A survey behind a pass, with what was expected of it.
struct LastCheck {
    std::string survey;
    Found found;
};

// Where a bore stands in its learner. A bore that grew with no pass logged starts afresh as one
// more bore of the learner: what is known of the stones stays, what was known of the wall does not.
struct LearnedBore {
    int bore = 1;
    std::optional<std::size_t> place; // nothing: no survey yet
    std::string survey;               // the last that read it
    int leftOut = 0;                  // readings of that survey that look like slips
    bool passSince = false;           // honed since it was read
    struct Unlogged {                 // it grew or shrank with no pass logged
        std::string survey;
        double grown_um = 0;
    };
    std::vector<Unlogged> unlogged;
};

struct LearnedGroup {
    BenchGroup group;
    std::vector<LearnedBore> bores; // as group.bores
    HoneLearner learner;
    std::map<std::size_t, LastCheck> checks; // by bore of the learner
    std::string key; // of all that went into it: the same key, the same beliefs
    [[nodiscard]] const LearnedBore* find(int bore) const;
};

std::vector<LearnedGroup> learnFrom(const Workbook& workbook, const Results& results,
                                    HoneMemory* memory);

} // namespace borewright
