// SPDX-License-Identifier: GPL-3.0-or-later
// Each remedy is tried on a copy of the survey's heading, and the budget reckoned again.
#include "core/verdict/remedy.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <functional>

namespace borewright {
namespace {

constexpr double worthDoing = 0.95;

struct Try {
    std::string words;
    std::function<void(SurveyHeader&, int& repeats)> change;
    bool otherGear = false; // has to be bought or borrowed
};

double of(const SurveyHeader& survey, Length size, DoubtOf of, int repeats) {
    const Budget budget = budgetOf(survey, size, repeats);
    return of == DoubtOf::size ? budget.single_um : budget.difference_um;
}

std::optional<TypedLength> half(const std::optional<TypedLength>& length) {
    if (!length) return length;
    return typedFrom(Length::fromPicometres(length->value().picometres() / 2), length->unit());
}

std::string readingsWords(int count) {
    static constexpr const char* words[] = {"",    "one",   "two",   "three", "four", "five",
                                            "six", "seven", "eight", "nine",  "ten"};
    return fmt::format("{} readings at each station", words[count]);
}

Try repeat(int count) {
    return {readingsWords(count), [count](SurveyHeader&, int& repeats) { repeats = count; }};
}

bool warm(const GaugeSetting& gauge) {
    return gauge.blockTemperature && gauge.masterTemperature &&
           gauge.blockTemperature->celsius() > gauge.masterTemperature->celsius() + 1;
}

// Cheapest first.
std::vector<Try> tries(const SurveyHeader& survey, int repeats,
                       std::initializer_list<int> counts = {3}) {
    std::vector<Try> list;
    const GaugeSetting& gauge = survey.gauge;
    for (const int count : counts)
        if (count > repeats) list.push_back(repeat(count));
    const bool still = survey.minutesSinceWarm && *survey.minutesSinceWarm < 120;
    if (!gauge.stoodTogether) {
        const auto settle = [](SurveyHeader& header, int&) {
            header.gauge.stoodTogether = true;
            header.minutesSinceWarm.reset();
            header.cooling.reset();
            header.gauge.differenceDoubt.reset();
            header.gauge.temperatureDoubt.reset();
            header.gauge.blockTemperature.reset();
            header.gauge.closedEndTemperature.reset();
            header.gauge.gaugeWarmedBy = 0;
        };
        list.push_back({still || warm(gauge)
                            ? "waiting until the block has cooled beside gauge and master"
                            : "letting block, gauge and master stand together overnight",
                        settle});
    }
    if (gauge.gear.drift && survey.zeroChecks.empty())
        list.push_back(
            {"a check of zero after each bore", [](SurveyHeader& header, int&) {
                 // A check is a reading of its own, ± √3 of its standard uncertainty.
                 Gear& gear = header.gauge.gear;
                 const double step = (gear.step ? *gear.step : header.gauge.dial.graduation)
                                         .value()
                                         .in(Unit::micrometre);
                 const double repeat =
                     gear.repeatability ? gear.repeatability->value().in(Unit::micrometre) : 0;
                 const Length check = Length::nearest(
                     std::sqrt(3.0) * std::hypot(repeat, step / std::sqrt(12.0)), Unit::micrometre);
                 if (check < gear.drift->value()) gear.drift = typedFrom(check, Unit::micrometre);
             }});
    list.push_back(
        {"a master and a setting on it known twice as well, as with a ring near the size",
         [](SurveyHeader& header, int&) {
             Gear& gear = header.gauge.gear;
             gear.master = half(gear.master);
             gear.settingScatter = half(gear.settingScatter);
         },
         true});
    list.push_back({"a finer gauge, with half the step, error and scatter",
                    [](SurveyHeader& header, int&) {
                        Gear& gear = header.gauge.gear;
                        gear.step = half(gear.step ? gear.step
                                                   : std::optional(header.gauge.dial.graduation));
                        gear.dialLocalError = half(gear.dialLocalError);
                        gear.dialError = half(gear.dialError);
                        gear.repeatability = half(gear.repeatability);
                    },
                    true});
    return list;
}

double after(const SurveyHeader& survey, Length size, DoubtOf what, int repeats,
             const std::vector<const Try*>& done) {
    SurveyHeader header = survey;
    int n = repeats;
    for (const Try* one : done)
        one->change(header, n);
    return of(header, size, what, n);
}

std::string joined(const std::vector<const Try*>& done) {
    std::string words;
    for (std::size_t i = 0; i < done.size(); ++i)
        words += (i == 0 ? "" : i + 1 == done.size() ? " and " : ", ") + done[i]->words;
    return words;
}

} // namespace

std::vector<Remedy> remedies(const SurveyHeader& survey, Length size, DoubtOf what, int repeats) {
    constexpr double costs = 1.5;
    const double now = of(survey, size, what, repeats);
    if (!budgetOf(survey, size, repeats).known() || !(now > 0)) return {};
    struct Weighed {
        Remedy remedy;
        double weight;
    };
    std::vector<Weighed> list;
    for (const Try& one : tries(survey, repeats)) {
        const double then = after(survey, size, what, repeats, {&one});
        if (then <= worthDoing * now)
            list.push_back({{one.words, now, then}, then * (one.otherGear ? costs : 1)});
    }
    std::ranges::stable_sort(list, {}, &Weighed::weight);
    std::vector<Remedy> remedies;
    for (Weighed& weighed : list)
        remedies.push_back(std::move(weighed.remedy));
    return remedies;
}

std::string remedyWords(const Remedy& remedy, double factor, const DisplayUnits& units) {
    const auto shown = [&](double um) {
        return formatSmall(Length::nearest(factor * um, Unit::micrometre), units, Sign::negative,
                           1);
    };
    return fmt::format("{}: ± {} → ± {} {}", remedy.words, shown(remedy.before_um),
                       shown(remedy.after_um), symbol(units.small));
}

std::string whatSettles(const SurveyHeader& survey, Length size, int repeats,
                        const std::vector<OpenCall>& calls, const DisplayUnits& units) {
    if (calls.empty()) return {};
    const std::vector<Try> list = tries(survey, repeats, {3, 5, 10});
    std::vector<std::vector<const Try*>> plans;
    for (const Try& one : list)
        plans.push_back({&one});
    for (std::size_t i = 0; i < list.size(); ++i)
        for (std::size_t j = i + 1; j < list.size(); ++j)
            plans.push_back({&list[i], &list[j]});
    std::ptrdiff_t most = 0;
    const std::vector<const Try*>* best = nullptr;
    for (const auto& plan : plans) {
        const double size_um = after(survey, size, DoubtOf::size, repeats, plan);
        const double difference_um = after(survey, size, DoubtOf::difference, repeats, plan);
        const auto settled = std::ranges::count_if(calls, [&](const OpenCall& call) {
            return call.factor * (call.of == DoubtOf::size ? size_um : difference_um) <=
                   call.gap.magnitude().in(Unit::micrometre);
        });
        if (settled > most) {
            most = settled;
            best = &plan;
        }
    }
    const auto all = static_cast<std::ptrdiff_t>(calls.size());
    if (best != nullptr && most == all)
        return joined(*best) + " would settle it, if the figures stay as they are";
    if (best != nullptr)
        return fmt::format("{} would settle {} of {} figures, if they stay as they are",
                           joined(*best), most, all);
    const std::string near = all == 1 ? "it lies too near its limit for this gear"
                                      : "they lie too near their limits for this gear";
    const auto helpful = remedies(survey, size, calls.front().of, repeats);
    if (helpful.empty()) return near;
    return near + "; what helps most is " +
           remedyWords(helpful.front(), calls.front().factor, units);
}

} // namespace borewright
