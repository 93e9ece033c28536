// SPDX-License-Identifier: GPL-3.0-or-later
// The part of a survey's results that tells how far they can be trusted.
#include "core/gauging/warmth.h"
#include "core/results/survey_computer.h"
#include "core/results/words.h"
#include "core/statistics/distributions.h"
#include "core/verdict/prospect.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace borewright {
namespace {

int axisRank(const std::vector<std::string>& order, const std::string& axis) {
    return static_cast<int>(std::ranges::find(order, axis) - order.begin());
}

// The part of a survey's doubt that belongs to one bore: its stations with a diameter, which stand
// from `first` on in the survey's list.
TrialBore trialOf(const BoreResult& bore, const SurveyDoubt& doubt, std::size_t first,
                  const std::vector<std::string>& axisOrder, TaperRule rule) {
    TrialBore trial;
    trial.ownFreedom = doubt.ownFreedom;
    trial.rule = rule;
    std::optional<Length> from;
    int level = -1;
    std::optional<Length> depth;
    std::size_t at = first;
    for (const StationResult& station : bore.stations) {
        if (!station.diameter) continue;
        if (!from) from = station.diameter;
        if (depth != station.station.depth) ++level;
        depth = station.station.depth;
        trial.stations.push_back({level, axisRank(axisOrder, station.station.axis),
                                  (*station.diameter - *from).in(Unit::micrometre), station.judged,
                                  doubt.own[at++]});
    }
    for (const SharedDoubt& shared : doubt.shared) {
        SharedDoubt here = shared;
        if (!shared.loading.empty())
            here.loading = {shared.loading.begin() + static_cast<std::ptrdiff_t>(first),
                            shared.loading.begin() + static_cast<std::ptrdiff_t>(at)};
        trial.shared.push_back(std::move(here));
    }
    return trial;
}

// Standard uncertainty of Σ weight·diameter over the stations, by the covariance.
Length uOf(const TrialBore& trial, const std::vector<double>& weights) {
    double square = 0;
    for (std::size_t i = 0; i < weights.size(); ++i)
        square += weights[i] * weights[i] * trial.stations[i].own.square();
    for (const SharedDoubt& shared : trial.shared) {
        double moved = 0;
        for (std::size_t i = 0; i < weights.size(); ++i)
            moved += weights[i] * shared.at(i);
        square += moved * moved * shared.u_um * shared.u_um;
    }
    return Length::nearest(std::sqrt(square), Unit::micrometre);
}

std::optional<Length> uOfMean(const TrialBore& trial) {
    const auto judged = std::ranges::count_if(trial.stations, &TrialStation::judged);
    if (judged == 0) return std::nullopt;
    std::vector<double> weights;
    for (const TrialStation& station : trial.stations)
        weights.push_back(station.judged ? 1.0 / static_cast<double>(judged) : 0.0);
    return uOf(trial, weights);
}

// Of the lead: mean over the axes read at both ends of lowest less topmost judged level.
std::optional<Length> uOfLead(const TrialBore& trial) {
    int top = -1, bottom = -1;
    for (const TrialStation& station : trial.stations) {
        if (!station.judged) continue;
        if (top < 0) top = station.level;
        bottom = station.level;
    }
    if (top == bottom) return std::nullopt;
    std::vector<double> weights(trial.stations.size(), 0.0);
    double axes = 0;
    for (std::size_t i = 0; i < weights.size(); ++i)
        for (std::size_t j = 0; j < weights.size(); ++j)
            if (trial.stations[i].level == top && trial.stations[j].level == bottom &&
                trial.stations[i].axis == trial.stations[j].axis) {
                weights[i] = -1;
                weights[j] = 1;
                ++axes;
            }
    if (axes == 0) return std::nullopt;
    for (double& weight : weights)
        weight /= axes;
    return uOf(trial, weights);
}

// Only where the times matter: to spread the zero checks.
bool runsBackwards(const Survey& survey) {
    const auto& checks = survey.header.zeroChecks;
    const auto tooEarly = [&](const auto& item) { return item.time < survey.header.time; };
    return !checks.empty() && (!std::ranges::is_sorted(checks, {}, &ZeroCheck::time) ||
                               std::ranges::any_of(checks, tooEarly) ||
                               std::ranges::any_of(survey.readings, tooEarly));
}

std::string moved(const ZeroHistory::Knock& knock, const DisplayUnits& units) {
    return fmt::format("Zero moved by {} between {} and {}: set the gauge again, and see the "
                       "readings taken between.",
                       smallWithUnit(knock.moved, units, Sign::always), clockTime(knock.from),
                       clockTime(knock.to));
}

} // namespace

std::optional<Length> SurveyComputer::usualSize() const {
    if (m_survey.header.gauge.setSize) return m_survey.header.gauge.setSize->value();
    for (const Bore& bore : m_workbook.block.bores)
        if (bore.standardSize) return bore.standardSize->value();
    return std::nullopt;
}

void SurveyComputer::doubt(SurveyResult& result) {
    SurveyDoubts& doubts = result.doubts;
    const SurveyHeader& header = m_survey.header;
    if (m_set != nullptr) doubts.rule = m_set->decision;
    doubts.warnings = warmthWarnings(m_workbook, header, m_units);
    const ZeroHistory zero(header);
    for (const ZeroHistory::Knock& knock : zero.knocks())
        doubts.warnings.push_back(moved(knock, m_units));
    if (runsBackwards(m_survey))
        doubts.warnings.emplace_back(
            "The times of this survey run backwards. Zero checks count in the order of their "
            "times, "
            "and a reading from before the survey began is not corrected by them.");
    const auto size = usualSize();
    if (!size) {
        doubts.budget.missing.emplace_back("the bore's size");
        return;
    }
    int repeats = 0;
    for (const ReadAt& read : m_read) {
        const int here = static_cast<int>(read.times.size());
        repeats = repeats == 0 ? here : std::min(repeats, here);
    }
    repeats = std::max(1, repeats);
    doubts.budget = budgetOf(header, *size, repeats);
    if (!doubts.budget.known()) return;
    doubts.prospect = prospect(m_workbook, header, m_units);
    doubts.sizeRemedies = remedies(header, *size, DoubtOf::size, repeats);
    doubts.differenceRemedies = remedies(header, *size, DoubtOf::difference, repeats);
    doubtBores(result, *size);
}

void SurveyComputer::doubtBores(SurveyResult& result, Length size) {
    const auto doubt = doubtOf(m_workbook, m_survey.header, size, m_read);
    if (!doubt) return;
    const TaperRule rule = m_set != nullptr ? m_set->taperRule : TaperRule::largestLessSmallest;
    std::vector<TrialBore> trials;
    std::size_t first = 0;
    for (const BoreResult& bore : result.bores) {
        trials.push_back(trialOf(bore, *doubt, first, m_axisOrder, rule));
        first += trials.back().stations.size();
    }
    const auto known = m_memory.doubtsFor(trials, m_reckoning);
    for (std::size_t i = 0; i < result.bores.size(); ++i) {
        BoreResult& bore = result.bores[i];
        const TrialBore& trial = trials[i];
        if (trial.stations.empty()) continue;
        bore.doubt = known[i];
        bore.uMean = uOfMean(trial);
        bore.uLead = uOfLead(trial);
        std::size_t at = 0;
        for (StationResult& station : bore.stations) {
            if (!station.diameter) continue;
            std::vector<double> one(trial.stations.size(), 0.0);
            one[at++] = 1;
            station.u = uOf(trial, one);
        }
        nameShape(bore, trial);
    }
}

// The shape's limits take u as known. Where it rests on few readings it is widened by Student's t,
// at about the chance those limits lie at, so that a straight bore is not called otherwise more
// often.
double shapeWidening(double freedom) {
    constexpr double limit = 0.9995;
    return std::isinf(freedom) ? 1 : studentQuantile(limit, freedom) / normalQuantile(limit);
}

void SurveyComputer::nameShape(BoreResult& bore, const TrialBore& trial) const {
    std::vector<ShapeReading> readings;
    std::size_t at = 0;
    for (const StationResult& station : bore.stations) {
        if (!station.diameter) continue;
        const TrialStation& here = trial.stations[at++];
        OwnDoubt own = here.own;
        own.normal_um *= shapeWidening(trial.ownFreedom);
        if (here.judged)
            readings.push_back({station.station.depth.in(Unit::millimetre), here.axis, here.size_um,
                                std::sqrt(own.square())});
    }
    if (readings.empty()) return;
    const auto profile = profileOf(readings);
    const auto shape =
        profile ? shapeOf(*profile) : Result<BoreShape>(tl::unexpected(profile.error()));
    if (shape) bore.shape = *shape;
    bore.shapeWords = shape ? shapeWords(*shape, m_units) : shape.error().message();
}

// The factor is what the verdict kept from the limit on the side where the value lies, in u of a
// reading as taken: what noise adds to a largest of many is in it.
std::vector<OpenCall> SurveyComputer::openCalls(const BoreResult& bore,
                                                const Budget& budget) const {
    std::vector<OpenCall> calls;
    for (const Judgement& judgement : bore.judgements) {
        if (judgement.verdict != Verdict::tooCloseToCall || !judgement.guard) continue;
        const bool difference =
            judgement.quality == Quality::outOfRound || judgement.quality == Quality::taper;
        const Length over = judgement.quality == Quality::smallestSize
                                ? *judgement.limit - *judgement.value
                                : *judgement.value - *judgement.limit;
        const Length kept = over > Length() ? *judgement.guardOutside : *judgement.guard;
        const double u_um = difference ? budget.difference_um : budget.single_um;
        if (u_um > 0)
            calls.push_back({difference ? DoubtOf::difference : DoubtOf::size, over.magnitude(),
                             kept.in(Unit::micrometre) / u_um});
    }
    return calls;
}

void SurveyComputer::tellWhatSettles(SurveyResult& result) const {
    const auto size = usualSize();
    if (!size || !result.doubts.budget.known()) return;
    int repeats = 0;
    std::vector<OpenCall> all;
    for (BoreResult& bore : result.bores) {
        int here = 0;
        for (const StationResult& station : bore.stations)
            if (station.diameter)
                here = here == 0 ? station.repeats : std::min(here, station.repeats);
        repeats = repeats == 0 ? here : std::min(repeats, std::max(1, here));
        const auto calls = openCalls(bore, budgetOf(m_survey.header, *size, std::max(1, here)));
        bore.settles = whatSettles(m_survey.header, *size, std::max(1, here), calls, m_units);
        all.insert(all.end(), calls.begin(), calls.end());
    }
    result.doubts.settles = whatSettles(m_survey.header, *size, std::max(1, repeats), all, m_units);
}

} // namespace borewright
