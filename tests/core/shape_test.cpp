// SPDX-License-Identifier: GPL-3.0-or-later
// The shape of a bore from known answers: built with a shape, found with its amount and its words;
// cells left out; what is refused; and both demonstrations, whose figures are invented with them.
// How often a shape is named rightly is simulated in shape_simulation_test.cpp.
#include "core/form/shape.h"
#include "core/gauging/gauging.h"
#include "core/statistics/line.h"
#include "core/workbook/stations.h"
#include "tests/support/demo_scenarios.h"

#include <gmock/gmock.h>

#include <cmath>

namespace borewright {
namespace {

using demo::at;
using demo::correct;
using testing::HasSubstr;
using testing::StartsWith;

constexpr double thou_um = 25.4;
constexpr double tenth_um = 2.54;
const std::vector<double> fiveLevels_mm{15.24, 30.48, 45.72, 77.47, 95.25};
const std::vector<double> sixLevels_mm{10.16, 25.4, 40.64, 55.88, 71.12, 86.36};

Profile profile(const std::vector<double>& depths_mm, const std::vector<double>& sizes_um,
                double u_um = tenth_um) {
    Profile profile;
    for (std::size_t i = 0; i < depths_mm.size(); ++i)
        profile.points.push_back({depths_mm[i], sizes_um[i], u_um});
    return profile;
}

std::string words(const Profile& profile) {
    const auto shape = shapeOf(profile);
    return shape ? shapeWords(*shape, DisplayUnits::inch()) : shape.error().message();
}

// ---- the shape ----

TEST(Shape, EachIsFoundWithItsAmountPlaceAndWords) {
    const double t = thou_um;
    const auto five = [](std::vector<double> sizes) {
        return words(profile(fiveLevels_mm, sizes));
    };
    const auto six = [](std::vector<double> sizes) { return words(profile(sixLevels_mm, sizes)); };
    // 2.1 thou in 80.01 mm.
    std::vector<double> vee;
    for (const double depth : fiveLevels_mm)
        vee.push_back(-2.1 * t * (depth - 15.24) / 80.01);
    EXPECT_EQ(five(vee), "V, 2.1 ± 0.3 thou narrow at the closed end");
    for (double& size : vee)
        size = -size;
    EXPECT_EQ(five(vee), "V, 2.1 ± 0.3 thou wide at the closed end");
    EXPECT_EQ(six({0, 0, 0, 0, 0.5 * t, 1.5 * t}),
              "bell-mouth at the closed end, 1.5 ± 0.3 thou from 2.20 in down");
    EXPECT_EQ(six({-1.5 * t, -0.5 * t, 0, 0, 0, 0}),
              "narrowed at the open end, 1.5 ± 0.3 thou from 1.60 in up");
    EXPECT_EQ(six({0, 1.28 * t, 1.92 * t, 1.92 * t, 1.28 * t, 0}),
              "barrel, 1.9 ± 0.2 thou larger in the middle");
    EXPECT_EQ(six({0, -1.28 * t, -1.92 * t, -1.92 * t, -1.28 * t, 0}),
              "hourglass, 1.9 ± 0.2 thou smaller in the middle");
    EXPECT_EQ(six({0, -1.2 * t, 0, 0, 0, 0}), "ridge at 1.00 in, 1.2 ± 0.3 thou smaller there");
    EXPECT_EQ(six({0, 0, 0, 1.2 * t, 0, 0}), "groove at 2.20 in, 1.2 ± 0.3 thou larger there");
}

TEST(Shape, WithinTheNoiseIsStraightAndSaysWhatWouldHaveBeenSeen) {
    const BoreShape shape = *shapeOf(profile(fiveLevels_mm, {0, 3, -2, 2, 4}));
    EXPECT_EQ(shape.kind, ShapeKind::straight);
    EXPECT_EQ(shapeWords(shape, DisplayUnits::inch()),
              "straight as far as this gauge can tell; a V of 0.6 thou would have been seen");
    EXPECT_EQ(shapeWords(shape, DisplayUnits::metric()),
              "straight as far as this gauge can tell; a V of 14 µm would have been seen");
    Profile doubtful = profile({10, 80}, {0, 0});
    doubtful.covariance_um2 = {1e14, 0, 0, 1e14}; // ten metres
    EXPECT_THAT(words(doubtful), HasSubstr("a V of 354330.8 thou would have been seen"));
    EXPECT_EQ(shapeOf(profile(fiveLevels_mm, {7, 7, 7, 7, 7}))->kind, ShapeKind::straight);
}

// A V is a straight line by least squares: its slope over the depths read, and its doubt.
TEST(Shape, OfAVAgreesWithTheStraightLine) {
    const std::vector<double> sizes{0, 4, 12, 23, 31};
    const std::vector<double> u{1, 2, 1, 0.5, 1};
    Profile given;
    std::vector<LinePoint> points;
    for (std::size_t i = 0; i < sizes.size(); ++i) {
        given.points.push_back({fiveLevels_mm[i], sizes[i], u[i]});
        points.push_back({fiveLevels_mm[i], sizes[i], u[i]});
    }
    const BoreShape shape = *shapeOf(given);
    const Line line = *fitLine(points, LineDoubt::known);
    const double zone_mm = fiveLevels_mm.back() - fiveLevels_mm.front();
    ASSERT_EQ(shape.kind, ShapeKind::vee);
    EXPECT_NEAR(shape.amount_um, line.slope * zone_mm, 1e-9) << "µm";
    ASSERT_FALSE(shape.uneven) << "χ² " << line.chiSquare;
    EXPECT_NEAR(shape.u_um, line.uSlope * zone_mm, 1e-9) << "µm";
}

TEST(Shape, TurnedOverIsTheSameAtTheOtherEnd) {
    const std::vector<double> sizes{1, 0, -2, 1, 9, 30}, turned{30, 9, 1, -2, 0, 1};
    const BoreShape down = *shapeOf(profile(sixLevels_mm, sizes, 1));
    const BoreShape up = *shapeOf(profile(sixLevels_mm, turned, 1));
    ASSERT_EQ(down.kind, ShapeKind::bellMouth);
    ASSERT_EQ(up.kind, ShapeKind::bellMouth);
    EXPECT_EQ(down.end, End::closed);
    EXPECT_EQ(up.end, End::open);
    EXPECT_NEAR(up.amount_um, down.amount_um, 1e-9) << "µm";
    EXPECT_NEAR(up.where_mm, 96.52 - down.where_mm, 1e-9) << "mm";
    EXPECT_TRUE(up.wide && down.wide);
}

// Where the readings cannot choose, both are named; with a tenth of the noise one is.
TEST(Shape, NamesWhatIsNotRuledOut) {
    const std::vector<double> depths{10, 35, 60, 85}, sizes{0, 0, 2, 6};
    const BoreShape shape = *shapeOf(profile(depths, sizes, 0.8));
    const std::string said = shapeWords(shape, DisplayUnits::metric());
    ASSERT_EQ(shape.orElse.size(), 1U) << said;
    EXPECT_THAT(said, HasSubstr("; could also be a ")) << said;
    EXPECT_TRUE(shapeOf(profile(depths, sizes, 0.08))->orElse.empty());
}

// A zigzag of 20 µm read to 1 µm is no shape of the set: the doubt grows until it covers that.
TEST(Shape, ThatFitsBadlySaysSo) {
    const BoreShape shape = *shapeOf(profile(sixLevels_mm, {0, 30, 20, 50, 40, 70}, 1));
    ASSERT_EQ(shape.kind, ShapeKind::vee);
    EXPECT_TRUE(shape.uneven);
    EXPECT_GT(1.96 * shape.u_um, 10) << "µm";
    EXPECT_THAT(shapeWords(shape, DisplayUnits::metric()), HasSubstr(", unevenly"));
}

TEST(Shape, WithFewDepthsShowsWhatTheyCan) {
    const BoreShape two = *shapeOf(profile({10, 80}, {0, 20}));
    EXPECT_EQ(two.kind, ShapeKind::vee);
    // (2.5758 + 1.6449)·√2·u: normal quantiles of 0.995 and 0.95; value from memory.
    EXPECT_NEAR(*two.smallest.vee_um, (2.5758 + 1.6449) * std::sqrt(2.0) * tenth_um, 0.001);
    EXPECT_FALSE(two.smallest.bellMouth_um || two.smallest.barrel_um || two.smallest.ridge_um);
    const BoreShape three = *shapeOf(profile({10, 45, 80}, {0, 30, 0}));
    EXPECT_EQ(three.kind, ShapeKind::barrel);
    EXPECT_TRUE(three.smallest.bellMouth_um && three.smallest.barrel_um);
    EXPECT_FALSE(three.smallest.ridge_um) << "a ridge in the middle is a barrel there";
    EXPECT_EQ(words(profile({10}, {0})), "one depth has no shape");
}

TEST(Shape, SeesLessWhereLessWasRead) {
    std::vector<ShapeReading> readings;
    for (const double depth : fiveLevels_mm)
        for (const int axis : {0, 1})
            readings.push_back({depth, axis, 0, 1});
    const SmallestSeen whole = shapeOf(*profileOf(readings))->smallest;
    readings.erase(readings.begin() + 5); // axis B at the third level
    const SmallestSeen gap = shapeOf(*profileOf(readings))->smallest;
    EXPECT_GT(*gap.vee_um, *whole.vee_um);
    EXPECT_GT(*gap.ridge_um, 1.2 * *whole.ridge_um) << "the ridge could be at that level";
}

TEST(Shape, RefusesWhatIsNoProfile) {
    EXPECT_EQ(words(profile({10, 10, 20}, {0, 0, 0})), "shape: depths that do not rise");
    EXPECT_THAT(words(profile({10, 20, 30}, {0, 0, 0}, 0)), HasSubstr("doubt above zero"));
    EXPECT_THAT(words(profile({10, 20, 30}, {0, 0, std::nan("")})), HasSubstr("no number"));
    Profile shared = profile({10, 20}, {0, 0});
    shared.covariance_um2 = {1, 2, 2, 1};
    EXPECT_EQ(words(shared), "shape: a covariance that is none");
    shared.covariance_um2 = {1};
    EXPECT_EQ(words(shared), "shape: a covariance that does not fit the depths");
}

// ---- the demonstrations, as a machinist would call them ----

// Judged levels of a bore; a reading's own part is worth 0.09 thou, or 1 µm on the metric gauge.
std::string shapeOfBore(const Workbook& workbook, const std::string& survey, int number,
                        double u_um, const DisplayUnits& units) {
    std::vector<ShapeReading> readings;
    for (const Gauged& gauged : gauge(workbook, *findSurvey(workbook, survey)))
        if (gauged.station.bore == number && gauged.diameter &&
            isJudged(*findBore(workbook.block, number), gauged.station.depth))
            readings.push_back({gauged.station.depth.in(Unit::millimetre),
                                gauged.station.axis == "A" ? 0 : 1,
                                gauged.diameter->in(Unit::micrometre), u_um});
    return shapeWords(*shapeOf(*profileOf(readings)), units);
}

std::string saltmarshShape(const Workbook& workbook, const std::string& survey, int bore) {
    return shapeOfBore(workbook, survey, bore, 0.09 * thou_um, DisplayUnits::inch());
}

TEST(SaltmarshShape, AsFoundFiveAreWornToAVAndTheFifthIsBelled) {
    const Workbook workbook = demo::correctedSaltmarsh();
    const std::string found[] = {"V, 1.8 ± 0.2", "V, 2.2 ± 0.2", "V, 1.6 ± 0.2", "V, 2.7 ± 0.2", "",
                                 "V, 2.3 ± 0.2"};
    for (const int bore : {1, 2, 3, 4, 6})
        EXPECT_EQ(saltmarshShape(workbook, "s1", bore),
                  found[bore - 1] + " thou narrow at the closed end")
            << "bore " << bore;
    // 1.3 along axis A; the mean of both axes rises by 1.15 from 1.80 in.
    EXPECT_EQ(saltmarshShape(workbook, "s1", 5),
              "bell-mouth at the closed end, 1.2 ± 0.2 thou from 1.80 in down");
}

TEST(SaltmarshShape, TheRoughHoneLeftTheClosedEndTightAndShortStrokesBelledIt) {
    const Workbook workbook = demo::correctedSaltmarsh();
    for (int bore = 1; bore <= 6; ++bore) {
        EXPECT_THAT(saltmarshShape(workbook, "s2", bore), StartsWith("narrowed at the closed end"))
            << "bore " << bore;
        EXPECT_THAT(saltmarshShape(workbook, "s3", bore),
                    StartsWith("bell-mouth at the closed end"))
            << "bore " << bore;
        EXPECT_EQ(saltmarshShape(workbook, "s4", bore),
                  "straight as far as this gauge can tell; a V of 0.4 thou would have been seen")
            << "bore " << bore;
    }
}

// Axis B has no wall at 47 mm, and wear there differs by axis by 20 µm and more.
TEST(RushmereShape, APortBandFakesNoShape) {
    Workbook workbook = demo::rushmere();
    correct(workbook, "s1", at(2, "70 mm", "B"), "73.261");
    correct(workbook, "s1", at(3, "70 mm", "A"), "73.241");
    correct(workbook, "s1", at(3, "70 mm", "B"), "73.259");
    correct(workbook, "s3", at(1, "70 mm", "B"), "30");
    for (int bore = 1; bore <= 3; ++bore) {
        const auto shape = [&](const std::string& survey) {
            return shapeOfBore(workbook, survey, bore, 1, DisplayUnits::metric());
        };
        EXPECT_THAT(shape("s1"), testing::MatchesRegex("V, 4. ± . µm wide at the closed end.*"));
        EXPECT_THAT(shape("s2"), StartsWith("narrowed at the closed end"));
        EXPECT_THAT(shape("s3"), StartsWith("bell-mouth at the closed end, 1"));
        EXPECT_EQ(shape("s4"),
                  "straight as far as this gauge can tell; a V of 5 µm would have been seen");
    }
}

} // namespace
} // namespace borewright
