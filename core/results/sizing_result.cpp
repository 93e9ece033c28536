// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/results/results.h"
#include "core/results/size_offers.h"
#include "core/results/sizing_words.h"
#include "core/results/words.h"

#include <algorithm>

namespace borewright {
namespace {

bool isBeforeTheCut(const Workbook& workbook, const SurveyResult& survey) {
    const Survey* found = findSurvey(workbook, survey.survey);
    return found != nullptr && purposeOf(found->header.kind) == LimitPurpose::worn;
}

// By the last survey before the cut that read the bore. `rule`: the most careful that any of these
// surveys was judged by; nothing = none so far.
std::optional<BoreCleanUp> cleanUpFor(const Workbook& workbook, const Results& results, int number,
                                      std::optional<DecisionRule>& rule) {
    for (auto survey = results.surveys.rbegin(); survey != results.surveys.rend(); ++survey) {
        if (!isBeforeTheCut(workbook, *survey)) continue;
        const BoreResult* bore = findBoreResult(*survey, number);
        const auto measured =
            bore == nullptr ? std::nullopt : measuredBore(workbook, *survey, *bore);
        if (!measured) continue;
        if (!rule || riskOf(survey->doubts.rule) < riskOf(*rule)) rule = survey->doubts.rule;
        const auto wear = workbook.sizing.bores.find(number);
        return cleanUpOf(*measured,
                         wear == workbook.sizing.bores.end() ? BoreWear() : wear->second);
    }
    return std::nullopt;
}

Centring other(Centring centring) {
    return centring == Centring::wornBore ? Centring::originalAxis : Centring::wornBore;
}

// Bands that cut the ring's travel.
std::vector<PortStretch> portsOf(const Workbook& workbook, int number) {
    std::vector<PortStretch> ports;
    const Bore* bore = findBore(workbook.block, number);
    if (bore == nullptr) return ports;
    for (const PortBand& band : bore->map.ports)
        if (zoneAt(*bore, band.from.value()) == Zone::portBand ||
            zoneAt(*bore, band.to.value()) == Zone::portBand)
            ports.push_back({band.from.value(), band.to.value()});
    std::ranges::sort(ports, {}, &PortStretch::from);
    return ports;
}

FinishTarget targetOf(const Offer& offer, const OfferedBore& bore, const DisplayUnits& units) {
    FinishTarget target;
    target.size = typedFrom(bore.finish, units.size);
    if (bore.lower) target.lower = typedFrom(*bore.lower, units.size);
    if (bore.upper) target.upper = typedFrom(*bore.upper, units.size);
    if (!offer.oversize)
        target.from = offer.name;
    else if (*offer.oversize == Length())
        target.from = "standard size";
    else
        target.from = offer.name + " over";
    return target;
}

} // namespace

std::optional<MeasuredBore> measuredBore(const Workbook& workbook, const SurveyResult& survey,
                                         const BoreResult& bore) {
    MeasuredBore measured;
    measured.bore = bore.bore;
    measured.survey = survey.survey;
    if (const Bore* plan = findBore(workbook.block, bore.bore)) {
        if (plan->standardSize) measured.standardSize = plan->standardSize->value();
        if (plan->depth) measured.depth = plan->depth->value();
    }
    measured.ports = portsOf(workbook, bore.bore);
    for (const StationResult& station : bore.stations)
        if (station.diameter)
            measured.at.push_back({station.station.depth, station.station.axis, *station.diameter,
                                   station.zone, station.u});
    if (measured.at.empty()) return std::nullopt;
    const Budget& budget = survey.doubts.budget;
    if (budget.known()) {
        measured.ownU = Length::nearest(budget.own_um, Unit::micrometre);
        measured.coverage = budget.coverage;
    }
    measured.complete = bore.measured >= bore.asked;
    return measured;
}

SizingResult sizingOf(const Workbook& workbook, const Results& results, const DisplayUnits& units) {
    SizingResult result;
    const bool inches = isInchFamily(naturalUnits(workbook).size);
    result.centring = centringOf(workbook.sizing);
    result.finishAllowance = finishAllowanceOf(workbook.sizing, inches);
    result.honeStock = honeStockOf(workbook.sizing, inches);
    for (const Bore& bore : workbook.block.bores)
        result.bores.push_back(bore.number);
    std::ranges::sort(result.bores);
    std::optional<DecisionRule> strictest;
    for (const int number : result.bores) {
        result.cleanUps.push_back(cleanUpFor(workbook, results, number, strictest));
        result.notKnown.emplace_back(result.cleanUps.back() ? "" : "not read in a survey as found");
    }
    const DecisionRule rule = strictest.value_or(DecisionRule());
    const std::vector<Offer> offers = offersOf(workbook, result.bores);
    if (!offers.empty()) {
        result.choice =
            chooseSize(result.cleanUps, offers, result.centring, result.finishAllowance, rule);
        result.otherWay = chooseSize(result.cleanUps, offers, other(result.centring),
                                     result.finishAllowance, rule);
    }
    wordSizing(workbook, units, rule, result);
    std::vector<BoreOfSurvey> used;
    for (const auto& one : result.cleanUps)
        if (one) used.push_back({one->survey, one->bore});
    if (const std::string slips = slipsWords(results, used); !slips.empty())
        result.sentences.insert(result.sentences.begin(), slips);
    return result;
}

FinishTargets targetsOf(const SizingResult& result, std::size_t offer, const DisplayUnits& units) {
    FinishTargets targets;
    if (offer >= result.choice.offers.size()) return targets;
    const OfferResult& chosen = result.choice.offers[offer];
    for (std::size_t b = 0; b < result.bores.size(); ++b) {
        const auto& bore = chosen.offer.bores[b];
        const Cleans cleans = chosen.cells[b].cleans;
        if (!bore || result.choice.beyond[b] || cleans == Cleans::no || cleans == Cleans::unknown)
            continue;
        targets[result.bores[b]] = targetOf(chosen.offer, *bore, units);
    }
    return targets;
}

FinishTargets ownTargetsOf(const SizingResult& result, const DisplayUnits& units) {
    FinishTargets targets;
    for (std::size_t b = 0; b < result.choice.own.size(); ++b) {
        if (!result.choice.own[b]) continue;
        const Offer& offer = result.choice.offers[*result.choice.own[b]].offer;
        if (offer.bores[b]) targets[result.bores[b]] = targetOf(offer, *offer.bores[b], units);
    }
    return targets;
}

} // namespace borewright
