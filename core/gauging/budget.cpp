// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/gauging/budget.h"

#include "core/constants.h"
#include "core/gauging/warmth.h"

#include <algorithm>
#include <cmath>

namespace borewright {
namespace {

double um(const std::optional<TypedLength>& length) {
    return length ? length->value().in(Unit::micrometre) : 0;
}

Distribution distributionOf(Meant meant) {
    return meant == Meant::limits ? Distribution::rectangular : Distribution::normal;
}

double divisorOf(Meant meant) {
    switch (meant) {
    case Meant::limits:
        return divisor(Distribution::rectangular);
    case Meant::expanded:
        return 2;
    case Meant::standard:
        return 1;
    }
    return 1;
}

// Collects the lines that are not zero.
class Lines {
public:
    explicit Lines(Budget& budget)
        : m_budget(budget) {}

    void add(Source source, double value, BudgetLine::In in, Distribution distribution,
             double divided, double sensitivity,
             double freedom = std::numeric_limits<double>::infinity()) {
        BudgetLine line{source,
                        value,
                        in,
                        distribution,
                        divided,
                        sensitivity,
                        std::abs(sensitivity * value / divided),
                        freedom};
        if (line.contribution_um > 0) m_budget.lines.push_back(line);
    }
    // A ± in µm within which all is as likely.
    void limits(Source source, double value_um) {
        add(source, value_um, BudgetLine::In::micrometre, Distribution::rectangular,
            divisor(Distribution::rectangular), 1);
    }

private:
    Budget& m_budget;
};

void addOwn(Lines& lines, const GaugeSetting& gauge, int repeats) {
    const Gear& gear = gauge.gear;
    const double root = std::sqrt(std::max(1, repeats));
    lines.add(Source::repeatability, um(gear.repeatability), BudgetLine::In::micrometre,
              Distribution::normal, root, 1,
              gear.repeatabilityFreedom ? static_cast<double>(*gear.repeatabilityFreedom)
                                        : std::numeric_limits<double>::infinity());
    // A step d leaves ± d/2: d/√12.
    const double step = gear.step ? um(gear.step) : um(gauge.dial.graduation);
    lines.add(Source::step, step / 2, BudgetLine::In::micrometre, Distribution::rectangular,
              divisor(Distribution::rectangular) * root, 1);
    lines.limits(Source::dialLocalError, um(gear.dialLocalError));
    lines.limits(Source::rocking, um(gear.rocking));
}

void addGear(Lines& lines, const Gear& gear) {
    lines.limits(Source::dialError, um(gear.dialError));
    lines.add(Source::master, um(gear.master), BudgetLine::In::micrometre,
              distributionOf(gear.masterMeant), divisorOf(gear.masterMeant), 1);
    lines.add(Source::setting, um(gear.settingScatter), BudgetLine::In::micrometre,
              Distribution::normal, 1, 1);
    lines.limits(Source::drift, um(gear.drift));
}

bool isCorrected(const GaugeSetting& gauge) {
    return gauge.blockTemperature && gauge.masterTemperature;
}

// How much warmer than the master the block was read to be, either way; 0 where nobody looked.
double warmerBy(const GaugeSetting& gauge) {
    if (!isCorrected(gauge)) return 0;
    return std::abs(gauge.blockTemperature->celsius() - gauge.masterTemperature->celsius());
}

double differenceDoubtOf(const GaugeSetting& gauge) {
    if (gauge.differenceDoubt) return *gauge.differenceDoubt;
    if (isCorrected(gauge))
        return warmth_doubt::difference + warmth_doubt::differenceByDegree * warmerBy(gauge);
    return gauge.stoodTogether ? warmth_doubt::difference : warmth_doubt::unknownDifference;
}

// What a block not long out of the hone may be warmer, where its temperature does not correct it.
double stillWarmBy(const SurveyHeader& survey) {
    if (isCorrected(survey.gauge) || survey.gauge.differenceDoubt) return 0;
    double warm = 0;
    if (survey.minutesSinceWarm)
        warm = warmth_doubt::afterPass *
               std::exp(-*survey.minutesSinceWarm / warmth_doubt::afterPassTime_min);
    if (survey.cooling)
        warm = std::max(warm, survey.cooling->later.celsius() - survey.cooling->room.celsius());
    return std::max(0.0, warm);
}

double temperatureDoubtOf(const GaugeSetting& gauge) {
    if (gauge.temperatureDoubt) return *gauge.temperatureDoubt;
    return isCorrected(gauge) ? warmth_doubt::readTemperature : warmth_doubt::room;
}

double endDoubtOf(const GaugeSetting& gauge) {
    if (gauge.stoodTogether) return 0;
    // Both ends read: what a thermometer leaves, however warm the block is.
    if (gauge.closedEndTemperature) return warmth_doubt::end;
    return warmth_doubt::end + warmth_doubt::endByDegree * warmerBy(gauge);
}

double gaugeWarmthDoubtOf(const GaugeSetting& gauge) {
    if (!gauge.gaugeWarmedBy) return warmth_doubt::gauge;
    return *gauge.gaugeWarmedBy == 0 ? 0 : warmth_doubt::gauge / 2;
}

void addWarmth(Lines& lines, const SurveyHeader& survey, double size_um) {
    const GaugeSetting& gauge = survey.gauge;
    const double block = expansionPerCelsius(gauge.blockExpansion);
    const double master = expansionPerCelsius(gauge.masterExpansion);
    const auto celsius = [&](Source source, double value, double sensitivity) {
        lines.add(source, value, BudgetLine::In::celsius, Distribution::rectangular,
                  divisor(Distribution::rectangular), sensitivity);
    };
    celsius(Source::difference, differenceDoubtOf(gauge) + stillWarmBy(survey), size_um * block);
    celsius(Source::temperature, temperatureDoubtOf(gauge), size_um * (block - master));
    // Half a block's depth lies on either side of its middle.
    celsius(Source::warmEnd, endDoubtOf(gauge), size_um * block / 2);
    celsius(Source::gaugeWarmth, gaugeWarmthDoubtOf(gauge),
            size_um * expansionPerCelsius(Expansion::gaugeSteel));
    if (!isCorrected(gauge)) return;
    const auto expansion = [&](Source source, Expansion material, double from20) {
        lines.add(source, expansionDoubt(material), BudgetLine::In::perCelsius,
                  Distribution::rectangular, divisor(Distribution::rectangular), size_um * from20);
    };
    expansion(Source::blockExpansion, gauge.blockExpansion,
              gauge.blockTemperature->celsius() - constants::referenceCelsius);
    expansion(Source::masterExpansion, gauge.masterExpansion,
              gauge.masterTemperature->celsius() - constants::referenceCelsius);
}

void sum(Budget& budget) {
    std::ranges::stable_sort(budget.lines, std::greater{}, &BudgetLine::contribution_um);
    std::vector<Contribution> all, own;
    double ownSquare = 0, sharedSquare = 0;
    for (const BudgetLine& line : budget.lines) {
        const double square = line.contribution_um * line.contribution_um;
        all.push_back({line.contribution_um, line.freedom});
        if (isShared(line.source)) {
            sharedSquare += square;
        } else {
            ownSquare += square;
            own.push_back(all.back());
        }
    }
    budget.own_um = std::sqrt(ownSquare);
    budget.shared_um = std::sqrt(sharedSquare);
    budget.single_um = std::sqrt(ownSquare + sharedSquare);
    budget.difference_um = std::sqrt(2 * ownSquare);
    budget.freedom = welchSatterthwaite(all);
    // Both readings lean on the same repeatability study, so a difference is known no better.
    budget.differenceFreedom = welchSatterthwaite(own);
    budget.coverage = std::isinf(budget.freedom) ? 2 : coverageFactor(0.95, budget.freedom);
}

} // namespace

std::string_view nameOf(Source source) {
    switch (source) {
    case Source::repeatability:
        return "repeatability of a reading";
    case Source::step:
        return "how finely the dial is read";
    case Source::dialLocalError:
        return "the dial, between near readings";
    case Source::rocking:
        return "rocking and centring";
    case Source::wander:
        return "zero between its checks";
    case Source::dialError:
        return "the dial over its range";
    case Source::master:
        return "the master it was set on";
    case Source::setting:
        return "setting it on the master";
    case Source::drift:
        return "drift of zero";
    case Source::zeroChecks:
        return "the zero checks";
    case Source::difference:
        return "block warmer than the master";
    case Source::temperature:
        return "both off 20 °C";
    case Source::blockExpansion:
        return "how the block expands";
    case Source::masterExpansion:
        return "how the master expands";
    case Source::gaugeWarmth:
        return "the gauge warmed by the hand";
    case Source::warmEnd:
        return "one end of the block warmer";
    }
    return "";
}

bool isShared(Source source) {
    return source != Source::repeatability && source != Source::step &&
           source != Source::dialLocalError && source != Source::rocking &&
           source != Source::wander;
}

Budget budgetOf(const SurveyHeader& survey, Length size, int repeats) {
    Budget budget;
    const Gear& gear = survey.gauge.gear;
    if (!gear.repeatability) budget.missing.emplace_back("the gauge's repeatability");
    if (!gear.master) budget.missing.emplace_back("the doubt of the master");
    Lines lines(budget);
    addOwn(lines, survey.gauge, repeats);
    addGear(lines, gear);
    addWarmth(lines, survey, size.in(Unit::micrometre));
    sum(budget);
    return budget;
}

} // namespace borewright
