// SPDX-License-Identifier: GPL-3.0-or-later
// The plans of all bores and which stone is fitted for the next stop. Part of results.
#pragma once

#include "core/results/hone_learned.h"
#include "core/results/hone_outlook.h"

#include <optional>
#include <string>
#include <vector>

namespace borewright {

// Time of a set-up, minutes (common practice, no source).
namespace hone_time {
inline constexpr double change_min = 3;
inline constexpr double bore_min = 1.5;  // one bore's strokes
inline constexpr double measure_min = 5; // washing and measuring, all bores of the stop together
} // namespace hone_time

struct PlannedBore {
    int bore = 1;
    HoneOutcome outcome = HoneOutcome::notMeasured;
    std::string refused; // why, where nothing was planned
    const LearnedGroup* group = nullptr;
    const LearnedBore* learned = nullptr;
    std::size_t place = 0; // in the learner
    std::optional<BoreAim> aim;
    HonePlan plan;      // as is best for this bore
    HonePlan chosen;    // as is done at this stop: the same, or with the block's stone first
    bool waits = false; // for another stone
    [[nodiscard]] bool canBePlanned() const { return group != nullptr && aim && refused.empty(); }
    // Of a stone of the bench: its place in the record.
    [[nodiscard]] std::size_t recorded(std::size_t benchStone) const {
        return group->group.stones[benchStone];
    }
};

class HonePlanner {
public:
    HonePlanner(const Workbook& workbook, const Results& results, const HoneWishes& wishes,
                HoneMemory* memory, const HoneProgress& progress);

    // Plans these bores and settles the stone of this stop.
    std::vector<PlannedBore> plan(const std::vector<int>& bores);
    // The same bore under other wishes.
    HonePlan planAs(const PlannedBore& bore, const HoneWishes& wishes);

    [[nodiscard]] const std::vector<LearnedGroup>& groups() const { return m_groups; }
    [[nodiscard]] std::optional<std::size_t> fitted() const { return m_fitted; } // in the record
    [[nodiscard]] std::optional<std::size_t> fit() const { return m_fit; }       // for this stop
    [[nodiscard]] bool cancelled() const { return m_cancelled; }
    void expect(std::size_t searches) { m_expected += searches; }
    // Why this bore cannot be planned, or everything that its plan starts from.
    PlannedBore start(int bore) const;

private:
    double stopCost() const;
    PlanOptions optionsFor(const PlannedBore& bore, const HoneWishes& wishes) const;
    HonePlan search(const PlannedBore& bore, const PlanOptions& options, const HonePlan* warm);
    HonePlan oneStone(const PlannedBore& bore, const HoneWishes& wishes);
    void settleStone(std::vector<PlannedBore>& bores);
    double costWith(std::size_t stone, std::vector<PlannedBore>& bores,
                    std::vector<std::optional<HonePlan>>& plans);

    const Workbook& m_workbook;
    const Results& m_results;
    HoneWishes m_wishes;
    HoneMemory* m_memory;
    HoneProgress m_progress;
    std::vector<LearnedGroup> m_groups;
    std::optional<std::size_t> m_fitted;
    std::optional<std::size_t> m_fit;
    std::size_t m_expected = 0;
    std::size_t m_done = 0;
    bool m_cancelled = false;
};

// The stone that is in the hone: as wished, else that of the last pass.
std::optional<std::size_t> fittedStone(const Workbook& workbook, const HoneWishes& wishes);

// A stone made for one end: less than half as long as the bore and shorter than the longest.
bool isShort(const LearnedGroup& group, std::size_t benchStone);

// Stops and changes of stone until every bore is done, were all to go as planned: at each stop the
// stone that most bores need next.
struct BlockAhead {
    int stops = 0;
    int changes = 0;
    double minutes = 0;
};
BlockAhead blockAhead(const std::vector<PlannedBore>& bores, std::optional<std::size_t> fitted,
                      std::optional<std::size_t> fit);

} // namespace borewright
