// SPDX-License-Identifier: GPL-3.0-or-later
// Crosshatch: there and back, and refusals. Angles: honing_reference_test.
#include "core/honing/crosshatch.h"

#include "tests/support/printed.h"

#include <limits>

namespace borewright {
namespace {

using test::near;

TEST(Crosshatch, SpeedsForAnAngleGiveTheAngle) {
    for (const double degrees : {0.5, 30.0, 45.0, 90.0, 179.0}) {
        HoneMotion motion{87.376, 0, 63.5, 60};
        motion.rpm = rpmForCrosshatch(degrees, motion).value();
        EXPECT_TRUE(near(crosshatchDegrees(motion).value(), degrees, 1e-9, "°"));
        motion.beats = 0;
        motion.beats = beatsForCrosshatch(degrees, motion).value();
        EXPECT_TRUE(near(motion.beats, 60, 1e-9, "a minute"));
    }
}

TEST(Crosshatch, FasterTurningLaysItFlatterFasterStrokingSteeper) {
    const double usual = crosshatchDegrees({80, 200, 60, 60}).value();
    EXPECT_LT(crosshatchDegrees({80, 250, 60, 60}).value(), usual);
    EXPECT_LT(crosshatchDegrees({90, 200, 60, 60}).value(), usual);
    EXPECT_GT(crosshatchDegrees({80, 200, 60, 80}).value(), usual);
    EXPECT_GT(crosshatchDegrees({80, 200, 70, 60}).value(), usual);
}

TEST(Crosshatch, RefusesWhatDoesNotMove) {
    EXPECT_EQ(crosshatchDegrees({0, 200, 60, 45}).error().where, "bore");
    EXPECT_EQ(crosshatchDegrees({80, 0, 60, 45}).error().where, "speed");
    EXPECT_EQ(crosshatchDegrees({80, 200, -1, 45}).error().where, "stroke");
    EXPECT_EQ(crosshatchDegrees({80, 200, 60, 0}).error().message(),
              "beat: without strokes there is no crosshatch, only rings");
    EXPECT_FALSE(crosshatchDegrees({80, std::numeric_limits<double>::quiet_NaN(), 60, 45}));
    EXPECT_FALSE(crosshatchDegrees({80, std::numeric_limits<double>::infinity(), 60, 45}));
    for (const double degrees : {0.0, 180.0, -30.0}) {
        EXPECT_EQ(rpmForCrosshatch(degrees, {80, 200, 60, 45}).error().where, "angle");
        EXPECT_EQ(beatsForCrosshatch(degrees, {80, 200, 60, 45}).error().where, "angle");
    }
}

TEST(Crosshatch, SaysHowTheAngleIsCounted) {
    EXPECT_NE(crosshatchConvention().find("180°"), std::string::npos);
}

} // namespace
} // namespace borewright
