// SPDX-License-Identifier: GPL-3.0-or-later
// An oval out of diameters at three or four angles: D = m + p·cos 2φ + q·sin 2φ by least squares
// (derived). At angles spread evenly over half a turn the two waves do not disturb each other, so
// that each is the slope of a straight line.
#include "core/statistics/line.h"
#include "tests/support/printed.h"

#include <numbers>
#include <vector>

namespace borewright {
namespace {

using namespace test;

struct Oval {
    double mean_mm;
    double cosine_um;
    double sine_um;
    double largestLessSmallest_um;
    double angle_deg;
};

Oval ovalOf(const std::vector<double>& degrees, const std::vector<double>& diameters_mm) {
    std::vector<LinePoint> cosines;
    std::vector<LinePoint> sines;
    for (std::size_t i = 0; i < degrees.size(); ++i) {
        const double twice = 2 * degrees[i] * std::numbers::pi / 180;
        cosines.push_back({std::cos(twice), diameters_mm[i]});
        sines.push_back({std::sin(twice), diameters_mm[i]});
    }
    const auto p = fitLine(cosines, LineDoubt::known);
    const auto q = fitLine(sines, LineDoubt::known);
    return {p->intercept, 1000 * p->slope, 1000 * q->slope, 2000 * std::hypot(p->slope, q->slope),
            std::atan2(q->slope, p->slope) / 2 * 180 / std::numbers::pi};
}

TEST(Oval, AtFourAngles) {
    const std::vector<double> diameters{80.012, 80.020, 80.004, 79.996};
    const Oval oval = ovalOf({0, 45, 90, 135}, diameters);
    EXPECT_TRUE(printed(oval.mean_mm, "80.008", "mm"));
    EXPECT_TRUE(near(oval.cosine_um, 4, 1e-6, "µm"));
    EXPECT_TRUE(near(oval.sine_um, 12, 1e-6, "µm"));
    EXPECT_TRUE(printed(oval.largestLessSmallest_um, "25.298", "µm"));
    EXPECT_TRUE(printed(oval.angle_deg, "35.783", "°"));
    EXPECT_TRUE(near(std::fabs(diameters[0] - diameters[2]), 0.008, 1e-9, "mm"))
        << "two axes see a third of it";
    for (std::size_t i = 0; i < diameters.size(); ++i) { // it fits without a residual
        const double twice = static_cast<double>(i) * std::numbers::pi / 2;
        EXPECT_TRUE(
            near(oval.mean_mm +
                     (oval.cosine_um * std::cos(twice) + oval.sine_um * std::sin(twice)) / 1000,
                 diameters[i], 1e-9, "mm"));
    }
}

TEST(Oval, AtThreeAngles) {
    const Oval oval = ovalOf({0, 60, 120}, {80.010, 80.004, 80.001});
    EXPECT_TRUE(printed(oval.mean_mm, "80.005", "mm"));
    EXPECT_TRUE(near(oval.cosine_um, 5, 1e-6, "µm"));
    EXPECT_TRUE(printed(oval.sine_um, "1.7321", "µm"));
    EXPECT_TRUE(printed(oval.largestLessSmallest_um, "10.583", "µm"));
    EXPECT_TRUE(printed(oval.angle_deg, "9.553", "°"));
}

} // namespace
} // namespace borewright
