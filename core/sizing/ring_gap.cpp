// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sizing/ring_gap.h"

#include "core/sizing/guarded.h"
#include "core/sizing/ring_lies.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <set>

namespace borewright {
namespace {

// One ring in one bore: the gap anywhere, and its doubt.
class GapModel {
public:
    GapModel(const MeasuredBore& bore, const MeasuredBore& measured, const Ring& ring,
             const LiesIn& start)
        : m_bore(bore)
        , m_measured(measured)
        , m_ring(ring)
        , m_start(start) {}

    [[nodiscard]] GapAt at(Length depth) const {
        const auto here = liesIn(m_bore, depth);
        const Length wider = here ? here->diameter - m_start.diameter : Length();
        return {depth, m_ring.gap->value() + growthOfGap(wider)};
    }

    // Nothing where the readings' is not known, or nothing at all is.
    [[nodiscard]] std::optional<Length> u(Length depth) const {
        const bool asMeasured =
            sameSurvey() && m_bore.bore == m_measured.bore && depth == m_ring.measuredAt->value();
        const auto readings = asMeasured ? Length() : uOfDifference(depth);
        if (!readings || (asMeasured && !m_ring.doubt)) return std::nullopt;
        return together(growthOfGap(*readings), ringU());
    }

private:
    [[nodiscard]] bool sameSurvey() const { return m_bore.survey == m_measured.survey; }

    [[nodiscard]] Length ringU() const {
        if (!m_ring.doubt) return {};
        return Length::fromPicometres(divideHalfToEven(m_ring.doubt->value().picometres(), 2));
    }

    [[nodiscard]] std::optional<Length> uOfDifference(Length depth) const {
        const auto here = liesIn(m_bore, depth);
        if (!here) return std::nullopt;
        if (!sameSurvey()) {
            if (!here->u || !m_start.u) return std::nullopt;
            return together(*here->u, *m_start.u);
        }
        if (!m_bore.ownU || !m_measured.ownU) return std::nullopt;
        return together(ofMean(*m_bore.ownU, here->axes), ofMean(*m_measured.ownU, m_start.axes));
    }

    static Length ofMean(Length ownU, int axes) {
        return Length::nearest(ownU.in(Unit::micrometre) / std::sqrt(axes), Unit::micrometre);
    }

    const MeasuredBore& m_bore;
    const MeasuredBore& m_measured;
    const Ring& m_ring;
    const LiesIn& m_start;
};

void addPorts(RingGap& gap, const MeasuredBore& bore) {
    std::vector<PortStretch> bands = bore.ports;
    for (const MeasuredAt& at : bore.at)
        if (at.zone == Zone::portBand) bands.push_back({at.depth, at.depth});
    if (bands.empty()) return;
    const Length top = std::ranges::min(bands, {}, &PortStretch::from).from;
    const Length bottom = std::ranges::max(bands, {}, &PortStretch::to).to;
    const auto keepSmaller = [](std::optional<GapAt>& kept, const GapAt& at) {
        if (!kept || at.gap < kept->gap) kept = at;
    };
    for (const GapAt& at : gap.at) {
        if (at.depth < top) keepSmaller(gap.abovePorts, at);
        if (at.depth > bottom) keepSmaller(gap.belowPorts, at);
    }
}

// What would be shown as a step of nothing belongs to the one before.
std::vector<Length> stepsOf(Length total, Length step, Length finest) {
    if (step <= Length()) return {total};
    if (total > mostFileSteps * step) return {};
    std::vector<Length> steps;
    for (Length left = total; left > Length(); left -= steps.back())
        steps.push_back(std::min(left, step));
    if (steps.size() > 1 && 2 * steps.back() <= finest) {
        const Length last = steps.back();
        steps.pop_back();
        steps.back() += last;
    }
    return steps;
}

// Down to a whole number of what is shown: a total that is shown must not pass a limit either.
Length wholeDown(Length length, Length finest) {
    return Length::fromPicometres(length.picometres() - length.picometres() % finest.picometres());
}

// `wanted`: that the smallest gap falls short of what it should be, so that filing was thought of.
std::optional<Filing> filingOf(const RingGap& gap, const FitLimits& limits, Length step,
                               Length finest, bool& wanted) {
    std::optional<Length> target = aimOf(limits);
    std::optional<Length> needed = target;
    if (limits.lower) {
        needed = limits.lower->value() + guardOf(gap.u, limits.decision).within;
        target = std::max(target.value_or(*needed), *needed);
    }
    wanted = needed && gap.smallest.gap < *needed;
    if (!wanted) return std::nullopt;
    Filing filing{*target - gap.smallest.gap, {}, false};
    if (limits.upper) {
        const Length room = wholeDown(limits.upper->value() - gap.largest.gap, finest);
        if (room <= Length()) return std::nullopt;
        filing.cutShort = filing.total > room;
        filing.total = std::min(filing.total, room);
    }
    filing.steps = stepsOf(filing.total, step, finest);
    return filing;
}

std::string joined(const std::vector<std::string>& words) {
    return fmt::format("{}", fmt::join(words, "; "));
}

// What is wrong with the gaps themselves.
void addGapWords(std::vector<std::string>& words, const RingGap& gap, const FitLimits& limits,
                 const DisplayUnits& units) {
    const std::string tight = depthWithUnit(gap.smallest.depth, units);
    if (gap.smallest.gap < Length())
        words.push_back(fmt::format("the ring butts at {}: {} too long", tight,
                                    smallWithUnit(gap.smallest.gap.magnitude(), units)));
    else if (gap.smallest.gap == Length())
        words.push_back(fmt::format("the ring butts at {}: no gap is left", tight));
    else if (gap.smallestVerdict == Verdict::outside)
        words.push_back(fmt::format("the gap is too small at {}", tight));
    if (gap.largestVerdict == Verdict::outside)
        words.push_back(
            fmt::format("the gap is too large at {}", depthWithUnit(gap.largest.depth, units)));
    if (!limits.lower || !limits.upper) return;
    const Length allowed = limits.upper->value() - limits.lower->value();
    const Length differs = gap.largest.gap - gap.smallest.gap;
    if (differs > allowed)
        words.push_back(fmt::format("the bore differs by more along its depth than the limits "
                                    "allow: the gap by {}, the limits by {}",
                                    smallWithUnit(differs, units), smallWithUnit(allowed, units)));
}

std::string whyOf(const RingGap& gap, const FitLimits& limits, bool filingWanted,
                  const DisplayUnits& units) {
    std::vector<std::string> words;
    addGapWords(words, gap, limits, units);
    const std::string wide = depthWithUnit(gap.largest.depth, units);
    if (gap.filing && gap.filing->cutShort)
        words.push_back(fmt::format("only {} may be filed off, as the gap is at its upper limit at "
                                    "{} then",
                                    smallWithUnit(gap.filing->total, units), wide));
    else if (filingWanted && !gap.filing)
        words.push_back(
            fmt::format("nothing may be filed off, as there is no room left at {}", wide));
    if (gap.smallestVerdict == Verdict::notMeasured || gap.largestVerdict == Verdict::notMeasured)
        words.emplace_back("not all of the bore was read");
    return joined(words);
}

} // namespace

Result<RingGap> ringGapOf(const MeasuredBore& bore, const MeasuredBore& measured, const Ring& ring,
                          const FitLimits& limits, Length fileStep,
                          const std::optional<DisplayUnits>& asked) {
    const Result<LiesIn> start = measuredWhere(measured, ring, asked);
    if (!start) return tl::unexpected(start.error());
    const GapModel model(bore, measured, ring, *start);
    std::set<Length> depths;
    for (const MeasuredAt& at : bore.at)
        if (inRingTravel(at.zone)) depths.insert(at.depth);
    if (depths.empty())
        return refuse(fmt::format("bore {}", bore.bore), "nothing was read in the ring's travel");
    RingGap gap;
    for (const Length depth : depths)
        gap.at.push_back(model.at(depth));
    gap.smallest = std::ranges::min(gap.at, {}, &GapAt::gap);
    gap.largest = *std::ranges::max_element(gap.at, {}, &GapAt::gap); // ties to the shallower
    addPorts(gap, bore);
    gap.u = model.u(gap.smallest.depth);
    gap.ringDoubtKnown = ring.doubt.has_value();
    gap.coverage = bore.coverage;
    gap.smallestVerdict =
        judgeLeast(gap.smallest.gap, limits, guardOf(gap.u, limits.decision), bore.complete);
    gap.largestVerdict =
        judgeMost(gap.largest.gap, limits, guardOf(model.u(gap.largest.depth), limits.decision),
                  bore.complete);
    bool filingWanted = false;
    const DisplayUnits units = asked.value_or(unitsOf(*ring.gap));
    const Length finest =
        Length::whole(1, isInchFamily(units.small) ? Unit::tenth : Unit::micrometre);
    gap.filing = filingOf(gap, limits, fileStep, finest, filingWanted);
    gap.why = whyOf(gap, limits, filingWanted, units);
    return gap;
}

Length fileStepOf(const FitRecord& fit, bool inches) {
    if (fit.fileStep) return fit.fileStep->value();
    return inches ? Length::whole(2, Unit::thou) : Length::whole(50, Unit::micrometre);
}

} // namespace borewright
