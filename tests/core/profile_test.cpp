// SPDX-License-Identifier: GPL-3.0-or-later
// The mean diameter over the depth, from known answers: plain means, cells left out, wear that
// differs by axis, depths that do not hang together, and what is refused.
#include "core/form/shape.h"

#include <gmock/gmock.h>

#include <cmath>
#include <limits>

namespace borewright {
namespace {

using testing::HasSubstr;

std::string refusal(const Result<Profile>& result) {
    return result ? "not refused" : result.error().message();
}

TEST(Profile, WithEveryCellReadIsTheMeanOverTheAxes) {
    const std::vector<ShapeReading> readings{{10, 0, 4, 2}, {10, 1, 8, 2}, {30, 0, 5, 2},
                                             {30, 1, 7, 2}, {20, 0, 1, 2}, {20, 1, 9, 2}};
    const Profile found = *profileOf(readings);
    ASSERT_EQ(found.points.size(), 3U);
    const double sizes[] = {6, 5, 6};
    for (std::size_t i = 0; i < 3; ++i) {
        EXPECT_DOUBLE_EQ(found.points[i].depth_mm, 10.0 * static_cast<double>(i + 1));
        EXPECT_DOUBLE_EQ(found.points[i].size_um, sizes[i]) << "µm";
        EXPECT_DOUBLE_EQ(found.points[i].u_um, std::sqrt(2.0)) << "µm: 2/√2";
    }
    EXPECT_TRUE(found.covariance_um2.empty()) << "nothing is shared";
}

// Depths 0, −10, −40, −60 µm and axis B 14 µm larger, without noise; two cells of B left out.
TEST(Profile, ACellLeftOutLeavesNoStep) {
    const std::vector<ShapeReading> readings{{10, 0, 0, 1},   {10, 1, 14, 1},  {20, 0, -10, 1},
                                             {30, 0, -40, 1}, {40, 0, -60, 1}, {40, 1, -46, 1}};
    const Profile found = *profileOf(readings);
    const double sizes[] = {7, -3, -33, -53};
    for (std::size_t i = 0; i < 4; ++i)
        EXPECT_NEAR(found.points[i].size_um, sizes[i], 1e-12) << "µm, at level " << i + 1;
    // The axes' difference from two levels: variance 1; half of it is taken off at levels 2 and 3.
    const std::vector<double> expected{0.5, 0,    0,    0, 0, 1.25, 0.25, 0,
                                       0,   0.25, 1.25, 0, 0, 0,    0,    0.5};
    ASSERT_EQ(found.covariance_um2.size(), expected.size());
    for (std::size_t i = 0; i < expected.size(); ++i)
        EXPECT_NEAR(found.covariance_um2[i], expected[i], 1e-12) << "µm², element " << i;
}

// The axes differ by 0, 8, 0, 8 µm where both were read, with u of 1 µm: 4 residuals of ±2 µm on
// each axis, χ² = 8·4 = 32 with 3 degrees of freedom. t(0.9995, 3) = 12.924, z(0.9995) = 3.2905 by
// common tables; value from memory.
TEST(Profile, WearThatDiffersByAxisWidensALevelReadOnOneAxis) {
    const std::vector<ShapeReading> readings{{10, 0, 0, 1}, {10, 1, 0, 1}, {20, 0, 0, 1},
                                             {20, 1, 8, 1}, {30, 0, 0, 1}, {30, 1, 0, 1},
                                             {40, 0, 0, 1}, {40, 1, 8, 1}, {50, 0, 0, 1}};
    const Profile found = *profileOf(readings);
    EXPECT_NEAR(found.points[0].u_um, std::sqrt(0.5), 1e-12) << "µm, both axes";
    const double excess = std::pow(12.924 / 3.2905, 2) * 32 / 3 - 1;
    const double difference = 2.0 / 4 * (1 + excess); // variance of the axes' difference
    EXPECT_NEAR(found.points[4].u_um, std::sqrt(1 + difference / 4 + excess / 2), 1e-3)
        << "µm, one axis";
}

TEST(Profile, RepeatsAndDepthsAlikeCountTogether) {
    const std::vector<ShapeReading> readings{
        {10, 0, 1, 1}, {10, 0, 3, 1}, {10.0000005, 1, 2, 1}, {20, 0, 5, 1}, {20, 1, 5, 1}};
    const Profile found = *profileOf(readings);
    ASSERT_EQ(found.points.size(), 2U);
    EXPECT_GT(found.points[1].size_um, found.points[0].size_um);
    EXPECT_LT(found.points[0].u_um, found.points[1].u_um) << "three readings against two";
}

TEST(Profile, DepthsThatShareNoAxisAreLeftOut) {
    const std::vector<ShapeReading> readings{
        {10, 0, 0, 1}, {20, 0, 0, 1}, {30, 0, 0, 1}, {40, 1, 9, 1}, {50, 1, 9, 1}};
    const Profile found = *profileOf(readings);
    EXPECT_EQ(found.points.size(), 3U);
    EXPECT_EQ(found.leftOut_mm, (std::vector<double>{40, 50}));
    EXPECT_EQ(shapeOf(found)->kind, ShapeKind::straight) << "axis B's 9 µm are no shape";
    // A third axis that was read on both sides joins them: by way of it B is known to be 9 larger.
    std::vector<ShapeReading> joined = readings;
    for (const double depth : {10.0, 50.0})
        joined.push_back({depth, 2, 4, 1});
    const Profile whole = *profileOf(joined);
    EXPECT_TRUE(whole.leftOut_mm.empty());
    ASSERT_EQ(whole.points.size(), 5U);
    for (const ProfilePoint& point : whole.points)
        EXPECT_NEAR(point.size_um, whole.points[0].size_um, 1e-12) << "µm at " << point.depth_mm;
}

TEST(Profile, RefusesWhatCannotBeWeighed) {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    EXPECT_THAT(refusal(profileOf({})), HasSubstr("no readings"));
    for (const double u : {0.0, -1.0, 1e-200, 1e200, nan, std::numeric_limits<double>::infinity()})
        EXPECT_THAT(refusal(profileOf(std::vector<ShapeReading>{{10, 0, 0, u}})),
                    HasSubstr("without a doubt above zero"))
            << u;
    EXPECT_THAT(refusal(profileOf(std::vector<ShapeReading>{{10, 0, nan, 1}})),
                HasSubstr("no number"));
    std::vector<ShapeReading> many;
    for (int i = 0; i < 201; ++i)
        many.push_back({static_cast<double>(i), 0, 0, 1});
    EXPECT_THAT(refusal(profileOf(many)), HasSubstr("more depths or axes"));
}

} // namespace
} // namespace borewright
