// SPDX-License-Identifier: GPL-3.0-or-later
// The doubt of readings, source by source and station by station, from figures reckoned by hand.
#include "core/gauging/budget.h"
#include "core/statistics/distributions.h"
#include "tests/support/blocks.h"
#include "tests/support/printed.h"

#include <algorithm>
#include <cmath>

namespace borewright {
namespace {

using namespace test;

constexpr double thouUm = 25.4;
const Timestamp start{1'774'000'000, 60};
Timestamp minutes(int after) {
    return {start.secondsSinceEpoch + 60L * after, 60};
}

SurveyHeader quietSurvey() {
    SurveyHeader survey;
    survey.time = start;
    survey.gauge.gear = tenthDialAndRing();
    survey.gauge.setSize = typedIn("3.5000");
    survey.gauge.stoodTogether = true;
    survey.gauge.gaugeWarmedBy = 0;
    return survey;
}

const BudgetLine* lineOf(const Budget& budget, Source source) {
    const auto line = std::ranges::find(budget.lines, source, &BudgetLine::source);
    return line == budget.lines.end() ? nullptr : &*line;
}
double thouOf(const Budget& budget, Source source) {
    const BudgetLine* line = lineOf(budget, source);
    return line == nullptr ? 0 : line->contribution_um / thouUm;
}

TEST(Budget, NamesWhatIsMissing) {
    SurveyHeader survey;
    const Budget budget = budgetOf(survey, in("3.5"));
    EXPECT_FALSE(budget.known());
    EXPECT_EQ(budget.missing,
              (std::vector<std::string>{"the gauge's repeatability", "the doubt of the master"}));
    EXPECT_FALSE(doubtOf(inchBlock(1), survey, in("3.5"), {{{1, in("1"), "A"}, {start}}}));
    survey.gauge.gear.repeatability = typedThou("0.08");
    EXPECT_EQ(budgetOf(survey, in("3.5")).missing,
              std::vector<std::string>{"the doubt of the master"});
    survey.gauge.gear.master = typedThou("0");
    EXPECT_TRUE(budgetOf(survey, in("3.5")).known()) << "a master taken as perfect is given";
}

TEST(Budget, TheDialIsReadToItsGraduationUnlessSaid) {
    SurveyHeader survey = quietSurvey();
    survey.gauge.gear.step.reset();
    survey.gauge.dial = halfThouDial();
    EXPECT_TRUE(near(thouOf(budgetOf(survey, in("3.5")), Source::step), 0.5 / std::sqrt(12.0), 1e-9,
                     "thou"));
    survey.gauge.gear.step = typedThou("0.25");
    EXPECT_TRUE(near(thouOf(budgetOf(survey, in("3.5")), Source::step), 0.25 / std::sqrt(12.0),
                     1e-9, "thou"));
}

TEST(Budget, AMastersDoubtIsMeantInThreeWays) {
    SurveyHeader survey = quietSurvey();
    survey.gauge.gear.master = typedThou("0.06");
    const auto meant = [&](Meant how) {
        survey.gauge.gear.masterMeant = how;
        return thouOf(budgetOf(survey, in("3.5")), Source::master);
    };
    EXPECT_TRUE(near(meant(Meant::limits), 0.06 / std::sqrt(3.0), 1e-9, "thou"));
    EXPECT_TRUE(near(meant(Meant::expanded), 0.03, 1e-9, "thou"));
    EXPECT_TRUE(near(meant(Meant::standard), 0.06, 1e-9, "thou"));
}

TEST(Budget, RepeatsLessenHandAndEyeOnly) {
    SurveyHeader survey = quietSurvey();
    survey.gauge.gear.rocking = typedThou("0.06");
    const Budget one = budgetOf(survey, in("3.5")), four = budgetOf(survey, in("3.5"), 4);
    for (const BudgetLine& line : one.lines) {
        const bool halved = line.source == Source::repeatability || line.source == Source::step;
        EXPECT_TRUE(near(thouOf(four, line.source), thouOf(one, line.source) / (halved ? 2 : 1),
                         1e-9, "thou"))
            << nameOf(line.source);
    }
    EXPECT_TRUE(near(thouOf(one, Source::rocking), 0.06 / std::sqrt(3.0), 1e-9, "thou"))
        << "half of a one-sided figure, either way";
    EXPECT_TRUE(std::ranges::is_sorted(one.lines, std::greater{}, &BudgetLine::contribution_um));
}

// ν_eff = u⁴/(u_rep⁴/9): with repeatability alone unsure; of a difference from its own part.
TEST(Budget, DegreesOfFreedomByHand) {
    SurveyHeader survey = quietSurvey();
    EXPECT_EQ(budgetOf(survey, in("3.5")).coverage, 2);
    survey.gauge.gear.repeatabilityFreedom = 9;
    const Budget budget = budgetOf(survey, in("3.5"));
    const double rep = 0.08 * thouUm;
    const double freedom = 9 * std::pow(budget.single_um / rep, 4);
    const double own =
        9 * std::pow(std::hypot(0.08, 0.1 / std::sqrt(12.0), 0.05 / std::sqrt(3.0)) / 0.08, 4);
    EXPECT_TRUE(near(budget.freedom, freedom, 1e-9 * freedom));
    EXPECT_TRUE(near(budget.differenceFreedom, own, 1e-6 * own));
    EXPECT_TRUE(near(own, 14.3, 0.05));
    EXPECT_TRUE(near(budget.coverage, studentQuantile(0.975, freedom), 1e-9));
}

TEST(Budget, WhatNobodyLookedAtIsLooser) {
    SurveyHeader survey = quietSurvey();
    const double um = 3.5 * 25400 * 11.4e-6 / std::sqrt(3.0); // of ± 1 °C
    const auto of = [&](Source source) {
        return thouOf(budgetOf(survey, in("3.5")), source) * thouUm;
    };
    EXPECT_TRUE(near(of(Source::difference), um, 1e-9, "µm"));
    EXPECT_EQ(of(Source::warmEnd), 0);
    EXPECT_EQ(of(Source::gaugeWarmth), 0);
    survey.gauge.stoodTogether = false;
    survey.gauge.gaugeWarmedBy.reset();
    EXPECT_TRUE(near(of(Source::difference), 3 * um, 1e-9, "µm"));
    EXPECT_TRUE(near(of(Source::warmEnd), um / 4, 1e-9, "µm")) << "± 0.5 °C, half either side";
    EXPECT_TRUE(near(of(Source::gaugeWarmth), um * 11.5 / 11.4, 1e-9, "µm"));
    survey.gauge.differenceDoubt = 0.2;
    EXPECT_TRUE(near(of(Source::difference), 0.2 * um, 1e-9, "µm"));
    EXPECT_EQ(of(Source::blockExpansion), 0) << "nothing is corrected";
    survey.gauge.masterTemperature = *readTemperature("25 C", Scale::celsius);
    survey.gauge.blockTemperature = *readTemperature("30 C", Scale::celsius);
    EXPECT_TRUE(near(of(Source::blockExpansion), 3.5 * 25400 * 1e-6 * 10 / std::sqrt(3.0), 1e-9));
    EXPECT_TRUE(near(of(Source::masterExpansion), 3.5 * 25400 * 1e-6 * 5 / std::sqrt(3.0), 1e-9));
}

class Covariance : public testing::Test {
protected:
    Covariance()
        : workbook(inchBlock(1, {"0", "2", "4"}))
        , survey(quietSurvey()) {}
    // Two readings each at three depths, ten minutes apart.
    [[nodiscard]] std::vector<ReadAt> stations() const {
        return {{{1, in("0"), "A"}, {minutes(10), minutes(11)}},
                {{1, in("2"), "A"}, {minutes(20), minutes(21)}},
                {{1, in("4"), "A"}, {minutes(30)}}};
    }
    [[nodiscard]] SurveyDoubt doubt() const {
        return *doubtOf(workbook, survey, in("3.5"), stations());
    }
    static double variance(const std::vector<double>& c, const std::vector<double>& weights) {
        double sum = 0;
        for (std::size_t i = 0; i < weights.size(); ++i)
            for (std::size_t j = 0; j < weights.size(); ++j)
                sum += weights[i] * weights[j] * c[i * weights.size() + j];
        return sum;
    }
    Workbook workbook;
    SurveyHeader survey;
};

TEST_F(Covariance, IsOwnOnTopOfShared) {
    const auto c = covarianceOf(doubt());
    const Budget two = budgetOf(survey, in("3.5"), 2), one = budgetOf(survey, in("3.5"));
    for (std::size_t i = 0; i < 3; ++i)
        for (std::size_t j = 0; j < 3; ++j) {
            const double own = i != j ? 0 : i == 2 ? one.own_um : two.own_um;
            EXPECT_TRUE(near(c[i * 3 + j], own * own + one.shared_um * one.shared_um, 1e-9, "µm²"))
                << i << ", " << j;
        }
    EXPECT_TRUE(near(std::sqrt(variance(c, {1, -1, 0})), two.difference_um, 1e-9, "µm"))
        << "what they share cancels";
}

TEST_F(Covariance, IsSymmetricAndNeverBelowZeroWithChecksAndAWarmEnd) {
    survey.gauge.stoodTogether = false;
    survey.zeroChecks = {{typedThou("0.1"), minutes(15), {}}, {typedThou("0.05"), minutes(25), {}}};
    const auto c = covarianceOf(doubt());
    for (std::size_t i = 0; i < 3; ++i)
        for (std::size_t j = 0; j < 3; ++j)
            EXPECT_EQ(c[i * 3 + j], c[j * 3 + i]) << i << ", " << j;
    for (int a = -3; a <= 3; ++a)
        for (int b = -3; b <= 3; ++b)
            for (int d = -3; d <= 3; ++d) {
                const double v = variance(c, {1.0 * a, 1.0 * b, 1.0 * d});
                EXPECT_TRUE(v > 0 || (a == 0 && b == 0 && d == 0))
                    << v << " µm² at " << a << ", " << b << ", " << d;
            }
}

TEST_F(Covariance, AWarmEndDoesNotCancelInTaper) {
    survey.gauge.stoodTogether = false;
    survey.gauge.differenceDoubt = 0;
    const SurveyDoubt with = doubt();
    const auto end = std::ranges::find(with.shared, Source::warmEnd, &SharedDoubt::source);
    ASSERT_NE(end, with.shared.end());
    EXPECT_EQ(end->loading, (std::vector<double>{-1, 0, 1})) << "from the open end to the closed";
    const double oneEnd = 0.5 * 3.5 * 25400 * 11.4e-6 / std::sqrt(3.0); // ± 0.5 °C over the depth
    const double own = with.own[0].square() + with.own[2].square();
    EXPECT_TRUE(near(variance(covarianceOf(with), {1, 0, -1}), own + oneEnd * oneEnd, 1e-9, "µm²"));
    workbook.block.bores.front().depth.reset();
    EXPECT_TRUE(near(variance(covarianceOf(doubt()), {1, 0, -1}), own, 1e-9, "µm²"))
        << "without a depth nobody knows where its ends are";
}

TEST_F(Covariance, AZeroCheckTakesThePlaceOfDrift) {
    const auto drift = [](const SurveyDoubt& d) {
        const auto found = std::ranges::find(d.shared, Source::drift, &SharedDoubt::source);
        return found == d.shared.end() ? std::vector<double>{} : found->loading;
    };
    EXPECT_EQ(drift(doubt()), (std::vector<double>{1, 1, 1})) << "never checked";
    survey.zeroChecks = {{typedThou("0.1"), minutes(25), {}}};
    survey.gauge.gear.repeatabilityFreedom = 9;
    const SurveyDoubt checked = doubt();
    EXPECT_EQ(drift(checked), (std::vector<double>{0, 0, 1})) << "the last came after the check";
    const SharedDoubt& check = checked.shared.back();
    ASSERT_EQ(check.source, Source::zeroChecks);
    EXPECT_TRUE(near(check.u_um / thouUm, std::hypot(0.08, 0.1 / std::sqrt(12.0)), 1e-9, "thou"));
    EXPECT_TRUE(near(check.freedom, 9 * std::pow(check.u_um / (0.08 * thouUm), 4), 1e-9));
    EXPECT_TRUE(near(check.at(0), -10.5 / 25, 1e-12)) << "10 and 11 minutes of 25";
    EXPECT_TRUE(near(check.at(1), -20.5 / 25, 1e-12));
    EXPECT_EQ(check.at(2), -1);
    const double wander = 0.1 / 2 * thouUm / std::sqrt(3.0);
    EXPECT_TRUE(near(checked.own[0].local_um, std::hypot(0.05 * thouUm / std::sqrt(3.0), wander),
                     1e-9, "µm"));
    EXPECT_TRUE(near(checked.own[2].local_um, 0.05 * thouUm / std::sqrt(3.0), 1e-9, "µm"));
    survey.zeroChecks.push_back({typedThou("0.1"), minutes(40), {}});
    EXPECT_TRUE(drift(doubt()).empty()) << "checked after every reading";
}

std::string refusedGear(const Gear& gear) {
    SurveyHeader survey;
    survey.gauge.gear = gear;
    const auto checked = checkHeader(survey);
    return checked ? "kept" : checked.error().message();
}

TEST(Header, RefusesWhatNoGearHas) {
    EXPECT_EQ(refusedGear(Gear()), "kept");
    EXPECT_EQ(refusedGear(tenthDialAndRing()), "kept");
    EXPECT_EQ(refusedGear(halfThouDialAndMicrometer()), "kept");
    for (auto figure : {&Gear::dialError, &Gear::dialLocalError, &Gear::master,
                        &Gear::settingScatter, &Gear::drift, &Gear::rocking}) {
        Gear gear;
        gear.*figure = typedThou("0");
        EXPECT_EQ(refusedGear(gear), "kept");
        gear.*figure = typedThou("-0.1");
        EXPECT_NE(refusedGear(gear), "kept");
    }
    for (auto figure : {&Gear::repeatability, &Gear::step, &Gear::driftLimit}) {
        Gear gear;
        gear.*figure = typedThou("0");
        EXPECT_NE(refusedGear(gear), "kept");
    }
    Gear gear;
    gear.repeatabilityFreedom = 0;
    EXPECT_NE(refusedGear(gear), "kept");
}

} // namespace
} // namespace borewright
