// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/results/fit_result.h"

#include "core/results/fit_words.h"
#include "core/results/results.h"
#include "core/results/words.h"

#include <algorithm>

namespace borewright {
namespace {

// Each bore as it is now: its last final survey, else its last check, else as found.
void measure(const Workbook& workbook, const Results& results, FitResult& fit) {
    for (const BoreStory& story : results.stories) {
        BoreFit bore;
        bore.bore = story.bore;
        const auto& id = story.nowSurvey ? story.nowSurvey : story.wasSurvey;
        const SurveyResult* survey = id ? findResult(results, *id) : nullptr;
        const BoreResult* read = survey != nullptr ? findBoreResult(*survey, story.bore) : nullptr;
        if (read != nullptr) {
            if (auto measured = measuredBore(workbook, *survey, *read)) {
                bore.survey = *id;
                bore.finished = findSurvey(workbook, *id)->header.kind == SurveyKind::final;
                fit.measured.push_back(std::move(*measured));
            }
        }
        fit.bores.push_back(std::move(bore));
    }
}

const MeasuredBore* measuredNumber(const FitResult& fit, int bore) {
    const auto found = std::ranges::find(fit.measured, bore, &MeasuredBore::bore);
    return found == fit.measured.end() ? nullptr : &*found;
}

// The piston decided by the user, whatever the matching could do.
void takeDecided(const FitRecord& record, const FitResult& fit, BoreFit& bore) {
    const auto decided = std::ranges::find(record.pistons, std::optional(bore.bore), &Piston::bore);
    if (decided == record.pistons.end()) return;
    bore.piston = static_cast<std::size_t>(decided - record.pistons.begin());
    bore.decided = true;
    const MeasuredBore* measured = measuredNumber(fit, bore.bore);
    if (measured == nullptr) {
        bore.clearanceRefused = "the bore has not been read";
        return;
    }
    const auto clearance = clearanceOf(*measured, *decided, record.clearance);
    if (clearance)
        bore.clearance = *clearance;
    else
        bore.clearanceRefused = clearance.error().message();
}

void placePistons(const FitRecord& record, FitResult& fit) {
    const Matching& matching = fit.matching;
    for (BoreFit& bore : fit.bores) {
        takeDecided(record, fit, bore);
        if (bore.decided) continue;
        const auto place = std::ranges::find(matching.bores, bore.bore);
        if (place == matching.bores.end()) continue;
        const auto b = static_cast<std::size_t>(place - matching.bores.begin());
        if (b >= matching.chosen.size() || !matching.chosen[b]) continue;
        const std::size_t p = *matching.chosen[b];
        bore.piston = matching.pistons[p];
        bore.clearance = matching.cells[b][p].clearance;
        bore.clearanceRefused = matching.cells[b][p].refused;
    }
}

void takeDecidedRing(const FitRecord& record, const FitResult& fit, Length fileStep, int bore,
                     BoreFit::RingHere& here) {
    for (std::size_t r = 0; r < record.rings.size(); ++r)
        if (record.rings[r].groove == here.groove && record.rings[r].bore == bore) here.ring = r;
    if (!here.ring) return;
    here.decided = true;
    const Ring& ring = record.rings[*here.ring];
    const MeasuredBore* there = measuredNumber(fit, bore);
    const MeasuredBore* from = ring.measuredIn ? measuredNumber(fit, *ring.measuredIn) : nullptr;
    if (there == nullptr) {
        here.refused = "the bore has not been read";
        return;
    }
    if (from == nullptr) {
        here.refused = ring.measuredIn ? "bore " + std::to_string(*ring.measuredIn) +
                                             ", where its gap was measured, has not been read"
                                       : "which bore its gap was measured in is not given";
        return;
    }
    const auto gap = ringGapOf(*there, *from, ring, record.ringGap, fileStep);
    if (gap)
        here.gap = *gap;
    else
        here.refused = gap.error().message();
}

void placeRings(const FitRecord& record, Length fileStep, FitResult& fit) {
    for (BoreFit& bore : fit.bores)
        for (const RingDeal& deal : fit.deals) {
            BoreFit::RingHere here;
            here.groove = deal.groove;
            takeDecidedRing(record, fit, fileStep, bore.bore, here);
            const auto place = std::ranges::find(deal.bores, bore.bore);
            const auto b = static_cast<std::size_t>(place - deal.bores.begin());
            if (!here.decided && place != deal.bores.end() && b < deal.ring.size()) {
                here.ring = deal.ring[b];
                if (b < deal.gap.size()) here.gap = deal.gap[b];
                if (b < deal.refused.size()) here.refused = deal.refused[b];
            }
            bore.rings.push_back(std::move(here));
        }
}

void finishByPistons(const FitRecord& record, FitResult& fit) {
    std::vector<int> toFinish;
    for (const BoreFit& bore : fit.bores)
        if (!bore.finished) toFinish.push_back(bore.bore);
    if (toFinish.empty() || record.pistons.empty()) return;
    if (auto finish = finishForPistons(toFinish, record))
        fit.finish = std::move(*finish);
    else
        fit.finishRefused = finish.error().message();
}

} // namespace

FitResult fitOf(const Workbook& workbook, const Results& results, const DisplayUnits& units) {
    FitResult fit;
    const FitRecord& record = workbook.fit;
    fit.empty = record.pistons.empty() && record.rings.empty();
    if (!fit.empty) {
        const bool inches = isInchFamily(naturalUnits(workbook).size);
        measure(workbook, results, fit);
        if (!record.pistons.empty()) {
            fit.matching = matchPistons(fit.measured, record);
            placePistons(record, fit);
            finishByPistons(record, fit);
        }
        if (!record.rings.empty()) {
            fit.deals = dealRings(fit.measured, record, inches);
            placeRings(record, fileStepOf(record, inches), fit);
        }
    }
    wordPistons(workbook, units, fit);
    wordRings(workbook, units, fit);
    std::vector<BoreOfSurvey> used;
    for (const BoreFit& bore : fit.bores)
        used.push_back({bore.survey, bore.bore});
    if (const std::string slips = slipsWords(results, used); !slips.empty())
        fit.sentences.insert(fit.sentences.begin(), slips);
    return fit;
}

FinishTargets pistonTargets(const FitResult& fit, const FitRecord& record,
                            const DisplayUnits& units) {
    FinishTargets targets;
    const auto aim = aimOf(record.clearance);
    for (const FinishForPiston& one : fit.finish) {
        if (one.piston >= record.pistons.size() || !aim) continue;
        FinishTarget target;
        target.size = typedFrom(one.finish, units.size);
        if (one.lower) target.lower = typedFrom(*one.lower, units.size);
        if (one.upper) target.upper = typedFrom(*one.upper, units.size);
        target.from =
            "piston " + nameOf(record.pistons[one.piston]) + " and " + smallWithUnit(*aim, units);
        targets[one.bore] = target;
    }
    return targets;
}

} // namespace borewright
