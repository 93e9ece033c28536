// SPDX-License-Identifier: GPL-3.0-or-later
// What was learned and planned before. A log that begins as one learned before is learned on from
// there; a plan is taken from here only where everything that it rests on is the same to the last
// bit. So an outlook with memory is that without, only sooner. Part of results.
#pragma once

#include "core/honing/planning.h"
#include "core/results/hone_learned.h"

#include <deque>
#include <map>
#include <mutex>
#include <string>
#include <vector>

namespace borewright {

class HoneMemory {
public:
    struct Learned {
        std::string bench;
        std::vector<std::string> steps;
        HoneLearner learner;
        std::map<std::size_t, LastCheck> checks;
    };

    // The longest log learned on this bench that `steps` begins with.
    std::optional<Learned> longestBeginning(const std::string& bench,
                                            const std::vector<std::string>& steps);
    void keep(Learned learned);
    std::optional<HonePlan> plan(const std::string& key);
    void keep(const std::string& key, const HonePlan& plan);

private:
    std::mutex m_mutex;
    std::deque<Learned> m_learned; // newest last
    std::map<std::string, HonePlan> m_plans;
};

// Figures to the last bit, for keys.
std::string exactly(double value);
std::string keyOf(const Stroking& window);
std::string keyOf(const SetUp& setUp);
std::string keyOf(const LearnedStep& step);
std::string keyOf(const Bench& bench);
std::string keyOf(const HoneAim& aim);
std::string keyOf(const PlanOptions& options);
std::string keyOf(const HonePlan* warm);

} // namespace borewright
