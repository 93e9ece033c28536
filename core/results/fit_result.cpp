// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/results/fit_result.h"

#include "core/results/fit_bores.h"
#include "core/results/fit_words.h"
#include "core/results/results.h"
#include "core/results/words.h"

#include <algorithm>

namespace borewright {
namespace {

const MeasuredBore* measuredNumber(const FitResult& fit, int bore) {
    const auto found = std::ranges::find(fit.measured, bore, &MeasuredBore::bore);
    return found == fit.measured.end() ? nullptr : &*found;
}

// Why a bore is not among those measured: "has not been read".
std::string notMeasuredWhy(const FitResult& fit, int number) {
    const auto bore = std::ranges::find(fit.bores, number, &BoreFit::bore);
    if (bore == fit.bores.end()) return "is not in the block";
    return bore->toHone ? "is still to be honed" : "has not been read";
}

std::string notMeasured(const FitResult& fit, int number) {
    return "the bore " + notMeasuredWhy(fit, number);
}

// The piston decided by the user, whatever the matching could do.
void takeDecided(const FitRecord& record, const DisplayUnits& units, const FitResult& fit,
                 BoreFit& bore) {
    const auto decided = std::ranges::find(record.pistons, std::optional(bore.bore), &Piston::bore);
    if (decided == record.pistons.end()) return;
    bore.piston = static_cast<std::size_t>(decided - record.pistons.begin());
    bore.decided = true;
    const MeasuredBore* measured = measuredNumber(fit, bore.bore);
    if (measured == nullptr) {
        bore.clearanceRefused = notMeasured(fit, bore.bore);
        return;
    }
    const auto clearance = clearanceOf(*measured, *decided, record.clearance, units);
    if (clearance)
        bore.clearance = *clearance;
    else
        bore.clearanceRefused = clearance.error().message();
}

void placePistons(const FitRecord& record, const DisplayUnits& units, FitResult& fit) {
    const Matching& matching = fit.matching;
    for (BoreFit& bore : fit.bores) {
        takeDecided(record, units, fit, bore);
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

void takeDecidedRing(const FitRecord& record, const DisplayUnits& units, const FitResult& fit,
                     Length fileStep, int bore, BoreFit::RingHere& here) {
    for (std::size_t r = 0; r < record.rings.size(); ++r)
        if (record.rings[r].groove == here.groove && record.rings[r].bore == bore) here.ring = r;
    if (!here.ring) return;
    here.decided = true;
    const Ring& ring = record.rings[*here.ring];
    const MeasuredBore* there = measuredNumber(fit, bore);
    const MeasuredBore* from = ring.measuredIn ? measuredNumber(fit, *ring.measuredIn) : nullptr;
    if (there == nullptr) {
        here.refused = notMeasured(fit, bore);
        return;
    }
    if (from == nullptr) {
        here.refused = ring.measuredIn ? "bore " + std::to_string(*ring.measuredIn) +
                                             ", where its gap was measured, " +
                                             notMeasuredWhy(fit, *ring.measuredIn)
                                       : "which bore its gap was measured in is not given";
        return;
    }
    const auto gap = ringGapOf(*there, *from, ring, record.ringGap, fileStep, units);
    if (gap)
        here.gap = *gap;
    else
        here.refused = gap.error().message();
}

void placeRings(const FitRecord& record, const DisplayUnits& units, Length fileStep,
                FitResult& fit) {
    for (BoreFit& bore : fit.bores)
        for (const RingDeal& deal : fit.deals) {
            BoreFit::RingHere here;
            here.groove = deal.groove;
            takeDecidedRing(record, units, fit, fileStep, bore.bore, here);
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

} // namespace

FitResult fitOf(const Workbook& workbook, const Results& results, const DisplayUnits& units) {
    FitResult fit;
    const FitRecord& record = workbook.fit;
    fit.empty = record.pistons.empty() && record.rings.empty();
    if (!fit.empty) {
        const bool inches = isInchFamily(naturalUnits(workbook).size);
        measureForFit(workbook, results, fit);
        if (!record.pistons.empty()) {
            fit.matching = matchPistons(fit.measured, record, units);
            placePistons(record, units, fit);
            finishByPistons(workbook, results, units, fit);
        }
        if (!record.rings.empty()) {
            fit.deals = dealRings(fit.measured, record, inches, units);
            placeRings(record, units, fileStepOf(record, inches), fit);
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
