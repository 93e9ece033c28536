// SPDX-License-Identifier: GPL-3.0-or-later
// The hone against figures from outside the model: geometry of the crosshatch, the removal law of
// Preston (J. Soc. Glass Technol. 11 (1927) 214), kinematic coverage at an open end. The formulas
// are stated beside each; the figures were recomputed from them, so each checks a formula and not a
// publication: no published profile of a honed end was found.
#include "core/honing/contact.h"
#include "core/honing/crosshatch.h"
#include "tests/support/printed.h"
#include "tests/support/stroked.h"

namespace borewright {
namespace {

using namespace test;

constexpr double inch_mm = 25.4; // exactly

// Derived: tan(α/2) = 2·L·N/(π·D·n), α about the circumference.
TEST(HoningReference, CrosshatchAngles) {
    struct Row {
        HoneMotion motion;
        const char* degrees;
    };
    for (const Row& row :
         {Row{{80, 200, 60, 45}, "12.263"}, Row{{70, 300, 50, 60}, "10.393"},
          Row{{80, 200, 60, 112.238}, "30.000"}, Row{{80, 200, 60, 173.505}, "45.000"},
          Row{{80, 200, 60, 241.840}, "60.000"}})
        EXPECT_TRUE(printed(crosshatchDegrees(row.motion).value(), row.degrees, "°"));
    EXPECT_TRUE(printed(beatsForCrosshatch(30, {80, 200, 60, 0}).value(), "112.238", "a minute"));
}

// Derived, the same formula: 3.44 in, travel 2.5 in, a beat of sixty.
TEST(HoningReference, CrosshatchOfATwoStrokeBore) {
    HoneMotion motion{3.44 * inch_mm, 0, 2.5 * inch_mm, 60};
    struct Row {
        double rpm;
        const char* degrees;
    };
    for (const Row& row : {Row{100, "31.03"}, Row{150, "20.97"}, Row{200, "15.80"},
                           Row{300, "10.57"}, Row{400, "7.94"}}) {
        motion.rpm = row.rpm;
        EXPECT_TRUE(printed(crosshatchDegrees(motion).value(), row.degrees, "°"));
    }
    EXPECT_TRUE(printed(rpmForCrosshatch(30, motion).value(), "103.6", "rpm"));
}

// Preston: removal ∝ pressure × path, so the same strokes take twice as much at twice the rate, and
// twice the strokes twice as much, while nothing else changes (a wall that the stone just follows).
TEST(HoningReference, PrestonsLaw) {
    Stroked bore;
    bore.soft();
    bore.stroking = {76, 98, 10, 0};
    const Eigen::VectorXd once = bore.taken();
    bore.stroking.strokes = 20;
    EXPECT_LT((bore.taken() - 2 * once).cwiseAbs().maxCoeff(), 1e-4) << "µm";
    bore.stroking.strokes = 10;
    bore.settings.logRate = std::log(2.0);
    EXPECT_LT((bore.taken() - 2 * once).cwiseAbs().maxCoeff(), 1e-4) << "µm";
}

// A long bore whose middle the whole stone passes; it stands out of the open end by `out` of its
// length at the upper reversal.
struct OpenEnd {
    WallGrid grid = wallGrid(240, 0.25);
    StoneOnGrid stone = stoneOnGrid(grid, 60, 0, 240);
    Stroking stroking;
    explicit OpenEnd(double out)
        : stroking{60 * (1 - out), 200, 10, 0} {}

    [[nodiscard]] static double atTheEndOverMiddle(const Eigen::VectorXd& taken) {
        const double end = 1.5 * taken[0] - 0.5 * taken[1]; // at depth 0, half a cell above
        return end / taken[480];                            // 120 mm
    }
    [[nodiscard]] double byCoverage() const {
        return atTheEndOverMiddle(coverage(grid, stone, 0, stroking));
    }
    // Constant force on a straight wall, evenly spread over what bears.
    [[nodiscard]] double byForce() const {
        ContactSettings even;
        even.logCompliance = std::log(1e7);
        even.tilts = false;
        even.reversal_mm = 0;
        WallAndFace state{Eigen::VectorXd::Zero(960), Eigen::VectorXd::Zero(240)};
        hone(grid, stone, even, {}, stroking, state);
        return atTheEndOverMiddle(state.diameter);
    }
};

// Derived, uniform speed: constant pressure o/s; constant force ln(s/(s − o)), o overrun, s stone.
TEST(HoningReference, AStoneOverrunningAnOpenEnd) {
    struct Row {
        double out;
        const char* force;
    };
    for (const Row& row : {Row{1.0 / 4, "0.288"}, Row{1.0 / 3, "0.405"}, Row{1.0 / 2, "0.693"}}) {
        const OpenEnd bore(row.out);
        EXPECT_TRUE(near(bore.byCoverage(), row.out, 1e-3));
        EXPECT_TRUE(printed(bore.byForce(), row.force));
    }
    EXPECT_TRUE(near(OpenEnd(0.63212).byForce(), 1, 2e-3));
}

// Derived, coverage only: bore 4.10 in, dead end 0.06 in.
struct CoverageRow {
    double length_in;
    Stroking stroking; // inches
    std::vector<std::pair<double, const char*>> at;
};

void expectCoverage(const CoverageRow& row) {
    const WallGrid grid = wallGrid(4.10 * inch_mm, 0.05);
    const StoneOnGrid stone = stoneOnGrid(grid, row.length_in * inch_mm, 0, 4.04 * inch_mm);
    Stroking stroking = row.stroking;
    stroking.from_mm *= inch_mm;
    stroking.to_mm *= inch_mm;
    const Eigen::VectorXd covered = coverage(grid, stone, 0, stroking);
    for (const auto& [depth_in, share] : row.at) {
        const double cell = depth_in * inch_mm / grid.height_mm - 0.5;
        const auto below = static_cast<Index>(cell);
        const double part = cell - static_cast<double>(below);
        const double there = (1 - part) * covered[below] + part * covered[below + 1];
        // Half a unit of the last digit, and a cell's smearing.
        EXPECT_TRUE(near(there, std::atof(share), 0.001)) << "at " << depth_in << " in";
    }
}

TEST(HoningReference, CoverageOfABlindBore) {
    expectCoverage({3.0,
                    {2.00, 4.04, 1, 0},
                    {{0.25, "0.613"},
                     {0.6, "0.784"},
                     {1.2, "1"},
                     {1.8, "1"},
                     {3.05, "0.485"},
                     {3.75, "0.142"}}});
    const std::vector<std::pair<double, const char*>> low{
        {2.6, "0.405"}, {3.05, "1"}, {3.3, "1"}, {3.5, "0.730"}, {3.75, "0.392"}};
    expectCoverage({1.0, {3.30, 4.04, 1, 0}, low});
    // Half a second held at the bottom after each second of moving.
    expectCoverage({1.0,
                    {3.30, 4.04, 1, 0.5},
                    {{2.6, "0.270"}, {3.05, "1"}, {3.3, "1"}, {3.5, "0.820"}, {3.75, "0.595"}}});
}

} // namespace
} // namespace borewright
