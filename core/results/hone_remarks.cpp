// SPDX-License-Identifier: GPL-3.0-or-later
// What is said of a bore beside its headline: lead and its trend, warmth, what was assumed.
#include "core/gauging/warmth.h"
#include "core/honing/stages.h"
#include "core/results/doubt_words.h"
#include "core/results/hone_scene.h"
#include "core/results/hone_words.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace borewright {
namespace {

struct Lead {
    std::string survey;
    Length lead;
    Length doubt; // 95 %
};

// Where no doubt of a lead is known: two means of two readings each, 95 %.
const Length assumedLeadDoubt = Length::nearest(1.96 * assumedOwnDoubt_um, Unit::micrometre);

std::vector<Lead> leadsOf(const HoneScene& scene, int number) {
    std::vector<Lead> leads;
    for (const SurveyResult& survey : scene.results.surveys) {
        const BoreResult* bore = findBoreResult(survey, number);
        if (bore == nullptr || !bore->form || !bore->form->lead) continue;
        const auto around = aroundLead(*bore, survey.doubts.budget);
        leads.push_back({findSurvey(scene.workbook, survey.survey)->header.name, *bore->form->lead,
                         around ? around->above : assumedLeadDoubt});
    }
    return leads;
}

// Which end is larger is said as it was read, whichever way it goes.
std::string leadWords(const HoneScene& scene, int number) {
    const std::vector<Lead> leads = leadsOf(scene, number);
    if (leads.empty()) return {};
    const Lead& now = leads.back();
    const std::string amount = smallWithUnit(now.lead.magnitude(), scene.units, Sign::plain);
    const std::string doubt = " (± " + upward(now.doubt, scene.units) + ")";
    std::string text = now.lead.magnitude() <= now.doubt
                           ? "Its two ends are alike, as far as the gauge can tell" + doubt
                           : "Its closed end is " + amount + doubt +
                                 (now.lead > Length() ? " larger" : " smaller") +
                                 " than its open end";
    if (leads.size() < 2) return text + ".";
    const Lead& was = leads[leads.size() - 2];
    const Length moved = now.lead.magnitude() - was.lead.magnitude();
    const bool turned = (now.lead > Length()) != (was.lead > Length()) &&
                        was.lead.magnitude() > was.doubt && now.lead.magnitude() > now.doubt;
    const std::string before = smallWithUnit(was.lead, scene.units, Sign::always);
    if (turned)
        text += ", turned round: the lead was " + before + " in '" + was.survey + "'";
    else if (moved.magnitude() > std::max(now.doubt, was.doubt))
        text += std::string(moved > Length() ? ", growing" : ", closing") + ": the lead was " +
                before + " in '" + was.survey + "'";
    return text + ".";
}

// Minutes from the last pass to the survey behind it: as said, else by the clocks.
std::optional<double> minutesSincePass(const HoneScene& scene, const PlannedBore& bore) {
    const Survey* survey = findSurvey(scene.workbook, bore.learned->survey);
    if (survey == nullptr) return std::nullopt;
    if (survey->header.minutesSinceWarm) return *survey->header.minutesSinceWarm;
    std::optional<Timestamp> pass, read;
    for (const LogEvent& event : orderOfWork(scene.workbook)) {
        if (event.kind == LogEvent::Kind::survey &&
            scene.workbook.surveys[event.index].header.id == survey->header.id)
            break;
        if (event.kind == LogEvent::Kind::pass &&
            scene.workbook.hone.passes[event.index].bore == bore.bore)
            pass = scene.workbook.hone.passes[event.index].time;
    }
    for (const Reading& reading : survey->readings)
        if (!reading.struck && reading.station.bore == bore.bore && (!read || reading.time < *read))
            read = reading.time;
    if (!pass || !read || *read < *pass) return std::nullopt;
    return static_cast<double>(read->secondsSinceEpoch - pass->secondsSinceEpoch) / 60;
}

// Temperatures that were given correct for the warmth; else it is said what it may be worth.
void warmth(const HoneScene& scene, const PlannedBore& bore, std::vector<std::string>& remarks) {
    const auto minutes = minutesSincePass(scene, bore);
    const Survey* survey = findSurvey(scene.workbook, bore.learned->survey);
    if (!minutes || *minutes >= stillWarmMinutes || correctsTemperature(survey->header.gauge))
        return;
    const double warmer =
        warmth_doubt::afterPass * std::exp(-*minutes / warmth_doubt::afterPassTime_min);
    const Length worth = growthOf(bore.aim->size, survey->header.gauge.blockExpansion, warmer);
    remarks.push_back(fmt::format(
        "Read {:.0f} minutes after its pass: a casting still {:.0f} °C warm reads {} large. Wait "
        "until it is cold, or take its temperature.",
        *minutes, warmer, smallWithUnit(worth, scene.units)));
}

// What stays small under the lowest station, where no reading shows it.
void lastMillimetres(const HoneScene& scene, const PlannedBore& bore,
                     std::vector<std::string>& remarks) {
    constexpr double worthSaying_um = 8;
    const BoreState state = stateOf(bore);
    const WallGrid& grid = bore.group->group.bench.grid;
    double lowest_mm = 0, stop_mm = 0;
    for (const Look& look : bore.aim->aim.stations)
        lowest_mm = std::max(lowest_mm, look.depth_mm);
    for (const BenchStone& stone : bore.group->group.bench.stones)
        stop_mm = std::max(stop_mm, stone.grid.lowest_mm);
    const Eigen::VectorXd& wall = bore.plan.now.wall;
    double least_um = state.smallest_um, from_mm = grid.depth_mm();
    for (Eigen::Index cell = 0; cell < wall.size(); ++cell) {
        const double at_mm = grid.middle_mm(static_cast<std::size_t>(cell));
        if (at_mm <= lowest_mm || at_mm >= stop_mm) continue;
        if (wall[cell] < state.smallest_um - worthSaying_um) from_mm = std::min(from_mm, at_mm);
        least_um = std::min(least_um, wall[cell]);
    }
    if (least_um > state.smallest_um - worthSaying_um) return;
    // As a rule shows it.
    const double step_mm = isInchFamily(scene.units.size) ? 0.254 : 0.5;
    const double shown_mm = step_mm * std::floor(from_mm / step_mm);
    remarks.push_back("Below " +
                      depthWithUnit(Length::nearest(shown_mm, Unit::millimetre), scene.units) +
                      ", where nothing is read, it stays smaller, by about " +
                      amountWords(state.smallest_um - least_um, scene.units) +
                      ": stones end there. See that no ring comes so far.");
}

void nearSize(const HoneScene& scene, const PlannedBore& bore, std::vector<std::string>& remarks) {
    if (bore.outcome != HoneOutcome::next) return;
    const Length cool = stagesOf(scene.workbook.hone.stages).coolBelow;
    const BoreState state = stateOf(bore);
    if (-state.largest_um < cool.in(Unit::micrometre))
        remarks.push_back("Less than " + smallWithUnit(cool, scene.units) +
                          " to go: only on a cool bore.");
}

void ofThePlan(const HoneScene& scene, const PlannedBore& bore, std::vector<std::string>& remarks) {
    if (bore.outcome != HoneOutcome::next || bore.waits) return;
    const HonePlan& plan = bore.chosen;
    const auto stone = plan.setUps.front().stone;
    const BenchStone& bench = bore.group->group.bench.stones[stone];
    if (bore.group->learner.passes(stone) == 0)
        remarks.emplace_back(bench.proven
                                 ? "How fast this stone cuts is taken from earlier work; no pass "
                                   "of it has been measured here."
                                 : "Model, not measured: no pass of this stone has been measured. "
                                   "The first is short, and tells how fast it cuts.");
    constexpr double dabs_mm = 3;
    if (std::ranges::any_of(plan.setUps.front().windows, [&](const Stroking& window) {
            return window.strokes > 0 && window.to_mm - window.from_mm < dabs_mm;
        }))
        remarks.emplace_back("The shortest of its windows is worked with short, quick strokes "
                             "against the stop; the crosshatch comes by the long ones.");
    if (plan.cautious)
        remarks.emplace_back("Its strokes are cut short, so that nothing goes over by what is in "
                             "doubt.");
    const Foreseen& then = plan.foreseen.front();
    remarks.push_back("Expected afterwards: straight within " +
                      claimWords(then.spread_um, scene.units) + " over the stations, " +
                      claimWords(then.spreadAll_um, scene.units) + " over every depth; " +
                      overWords(then.chanceOver) + ".");
}

} // namespace

std::vector<std::string> remarksOf(const HoneScene& scene, const PlannedBore& bore) {
    std::vector<std::string> remarks;
    if (std::string lead = leadWords(scene, bore.bore); !lead.empty())
        remarks.push_back(std::move(lead));
    ofThePlan(scene, bore, remarks);
    warmth(scene, bore, remarks);
    nearSize(scene, bore, remarks);
    if (bore.outcome != HoneOutcome::next && !bore.learned->passSince)
        lastMillimetres(scene, bore, remarks);
    for (const std::string& said : bore.aim->says)
        remarks.push_back(said);
    if (bore.group->group.landAssumed)
        remarks.emplace_back("Ports: at their depths a fifth of the way round is taken to be open; "
                             "that is assumed, not measured.");
    const Bore* recorded = findBore(scene.workbook.block, bore.bore);
    if (std::string caution = surfaceCaution(recorded->surface); !caution.empty())
        remarks.push_back(std::move(caution));
    return remarks;
}

std::vector<std::string> honeOddities(const HoneScene& scene, const PlannedBore& bore) {
    std::vector<std::string> oddities = logOddities(scene.workbook, bore.bore);
    if (bore.learned == nullptr) return oddities;
    for (const LearnedBore::Unlogged& one : bore.learned->unlogged)
        oddities.push_back(fmt::format(
            "It was {} {} in '{}' than in the survey before, with no pass logged between: it is "
            "taken as it was read, and nothing is learned from that. Was a pass forgotten, or did "
            "the gauge move?",
            smallWithUnit(Length::nearest(std::abs(one.grown_um), Unit::micrometre), scene.units),
            one.grown_um > 0 ? "larger" : "smaller",
            findSurvey(scene.workbook, one.survey)->header.name));
    if (bore.learned->leftOut > 0)
        oddities.push_back(bore.learned->leftOut == 1
                               ? "A reading looks like a slip and is left out; settle it first."
                               : fmt::format("{} readings look like slips and are left out; "
                                             "settle them first.",
                                             bore.learned->leftOut));
    return oddities;
}

} // namespace borewright
