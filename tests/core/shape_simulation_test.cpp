// SPDX-License-Identifier: GPL-3.0-or-later
// How often the shape of a bore is named rightly: bores of known shape, read through noise that is
// known, many thousands of them from a fixed seed. Prints the rates and holds them to their limits.
// A bore counts as a rebuilder would draw it: V from end to end; bell-mouth flat for 70 % of the
// depth, then flaring; barrel a parabola; hourglass half a sine; ridge one level proud, each level
// between the ends in turn. Every second V, bell-mouth and ridge has the other sign.
#include "core/form/shape.h"
#include "core/statistics/random.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <numbers>
#include <string>
#include <vector>

namespace borewright {
namespace {

constexpr double readingNoise_um = 1;
const double pointNoise_um = std::sqrt(0.5); // of the mean over two axes

struct Survey2Axes {
    std::string name;
    std::vector<double> depths_mm;
    std::vector<std::size_t> noWallOnB; // levels without a reading on axis B
};

const std::vector<Survey2Axes> surveys{
    {"five uneven", {15.2, 30.5, 45.7, 77.5, 95.3}, {}},
    {"five uneven, a gap on B", {15.2, 30.5, 45.7, 77.5, 95.3}, {2}},
    {"six even", {10, 25, 40, 55, 70, 85}, {}},
    {"six even, ports on B", {10, 25, 40, 55, 70, 85}, {2, 3}},
    {"four even", {10, 35, 60, 85}, {}},
    {"four even, a gap on B", {10, 35, 60, 85}, {2}},
    {"eight even", {10, 22, 34, 46, 58, 70, 82, 94}, {}},
    {"twelve even", {10, 17, 24, 31, 38, 45, 52, 59, 66, 73, 80, 87}, {}},
};

struct TrueShape {
    std::string name;
    ShapeKind kind;
    End end = End::closed;
};

const std::vector<TrueShape> shapes{
    {"V", ShapeKind::vee},
    {"bell, closed", ShapeKind::bellMouth},
    {"bell, open", ShapeKind::bellMouth, End::open},
    {"barrel", ShapeKind::barrel},
    {"hourglass", ShapeKind::hourglass},
    {"ridge", ShapeKind::ridge},
};

double valueAt(const TrueShape& shape, double t, bool ridgeHere) {
    switch (shape.kind) {
    case ShapeKind::straight:
        return 0;
    case ShapeKind::vee:
        return t;
    case ShapeKind::bellMouth:
        return std::max(0.0, ((shape.end == End::closed ? t : 1 - t) - 0.7) / 0.3);
    case ShapeKind::barrel:
        return 1 - 4 * (t - 0.5) * (t - 0.5);
    case ShapeKind::hourglass:
        return -std::sin(std::numbers::pi * t);
    case ShapeKind::ridge:
        return ridgeHere ? -1 : 0;
    }
    return 0;
}

// The bore's mean diameters at the levels, largest less smallest 1.
std::vector<double> boreOf(const Survey2Axes& survey, const TrueShape& shape, int number) {
    const std::vector<double>& depths = survey.depths_mm;
    const std::size_t ridge = 1 + static_cast<std::size_t>(number / 2) % (depths.size() - 2);
    std::vector<double> bore;
    for (std::size_t i = 0; i < depths.size(); ++i)
        bore.push_back(valueAt(
            shape, (depths[i] - depths.front()) / (depths.back() - depths.front()), i == ridge));
    const auto [least, most] = std::ranges::minmax(bore);
    const bool keepsSign = shape.kind == ShapeKind::barrel || shape.kind == ShapeKind::hourglass;
    const double scale =
        most > least ? (number % 2 == 0 || keepsSign ? 1 : -1) / (most - least) : 0;
    for (double& size : bore)
        size *= scale;
    return bore;
}

// A bore read on two axes, B 3 µm larger, each reading with noise of 1 µm; worn differently by
// axis: at each level both axes are off their mean by `axisWear_um`, one up, one down, at random.
BoreShape readBore(const Survey2Axes& survey, const std::vector<double>& bore, double amount_um,
                   Random& random, double axisWear_um = 0) {
    std::vector<ShapeReading> readings;
    for (std::size_t i = 0; i < bore.size(); ++i) {
        const double wear = axisWear_um > 0 ? axisWear_um * random.normal() : 0;
        for (const int axis : {0, 1}) {
            if (axis == 1 && std::ranges::count(survey.noWallOnB, i) > 0) continue;
            readings.push_back({survey.depths_mm[i], axis,
                                amount_um * bore[i] + 3 * axis + (axis == 0 ? wear : -wear) +
                                    readingNoise_um * random.normal(),
                                readingNoise_um});
        }
    }
    return *shapeOf(*profileOf(readings));
}

bool named(const BoreShape& found, const TrueShape& shape) {
    return found.kind == shape.kind &&
           (shape.kind != ShapeKind::bellMouth || found.end == shape.end);
}

// Percent of `count` bores.
struct Rates {
    double right = 0;       // named first
    double notRuledOut = 0; // named first, or among what is not ruled out
    double straight = 0;
    double covered = 0; // of those named: amount within ± at 95 %
};

Rates rates(const Survey2Axes& survey, const TrueShape& shape, double amount_um, int count) {
    Random random(20260406);
    int right = 0, among = 0, straight = 0, covered = 0;
    for (int number = 0; number < count; ++number) {
        const BoreShape found = readBore(survey, boreOf(survey, shape, number), amount_um, random);
        const bool first = named(found, shape);
        right += first;
        among += first || std::ranges::count(found.orElse, shape.kind) > 0;
        straight += found.kind == ShapeKind::straight;
        covered += first && std::fabs(found.amount_um - amount_um) <= 1.96 * found.u_um;
    }
    const double percent = 100.0 / count;
    return {right * percent, among * percent, straight * percent,
            100.0 * covered / std::max(1, right)};
}

void print(const Survey2Axes& survey, const TrueShape& shape, const Rates& r) {
    std::printf("  %-24s %-13s right %5.1f %%  not ruled out %5.1f %%  straight %4.1f %%  "
                "± covers %5.1f %%\n",
                survey.name.c_str(), shape.name.c_str(), r.right, r.notRuledOut, r.straight,
                r.covered);
}

bool full(const Survey2Axes& survey) {
    return survey.noWallOnB.empty();
}

TEST(ShapeSimulation, AStraightBoreIsCalledOtherwiseOnceInAHundred) {
    for (const Survey2Axes& survey : surveys) {
        const double otherwise =
            100 - rates(survey, {"straight", ShapeKind::straight}, 0, 10000).straight;
        std::printf("  %-24s straight called otherwise %5.2f %%\n", survey.name.c_str(), otherwise);
        EXPECT_LE(otherwise, 100 * straightCalledOtherwise) << survey.name << ", percent";
        EXPECT_GE(otherwise, 50 * straightCalledOtherwise)
            << survey.name << ", percent: more is held back than need be";
    }
}

// Wear that is not the same on both axes must not look like a shape where an axis is missing.
TEST(ShapeSimulation, AxesWornDifferentlyFakeNoShape) {
    for (const Survey2Axes& survey : surveys)
        for (const double wear_um : {1.0, 3.0, 15.0}) {
            if (full(survey)) continue;
            Random random(20260408);
            int otherwise = 0;
            constexpr int count = 10000;
            for (int number = 0; number < count; ++number)
                otherwise += readBore(survey, std::vector<double>(survey.depths_mm.size()), 0,
                                      random, wear_um)
                                 .kind != ShapeKind::straight;
            const double percent = 100.0 * otherwise / count;
            std::printf("  %-24s axes off by %4.1f: called otherwise %5.2f %%\n",
                        survey.name.c_str(), wear_um, percent);
            EXPECT_LE(percent, 120 * straightCalledOtherwise)
                << survey.name << ", percent; 10 000 bores show 1.0 as 0.8 … 1.2";
        }
}

// Where an axis is missing a ridge at that level is mostly called straight, as the axes may be worn
// differently there; on four levels a V and a bell-mouth below the gap are told apart by one level.
TEST(ShapeSimulation, SixTimesTheNoiseOfAReadingIsNamedRightly) {
    for (const Survey2Axes& survey : surveys)
        for (const TrueShape& shape : shapes) {
            const Rates r = rates(survey, shape, 6 * readingNoise_um, 2000);
            print(survey, shape, r);
            const bool ridge = shape.kind == ShapeKind::ridge;
            EXPECT_GE(r.covered, 92.5) << survey.name << ", " << shape.name;
            if (full(survey)) {
                EXPECT_GE(r.right, 95) << survey.name << ", " << shape.name;
                continue;
            }
            EXPECT_GE(r.notRuledOut + (ridge ? r.straight : 0), ridge ? 85 : 95)
                << survey.name << ", " << shape.name;
            if (survey.depths_mm.size() > 4 && !ridge) {
                EXPECT_GE(r.right, 92) << survey.name << ", " << shape.name;
            }
        }
}

// At six times the noise of a point, on four or five levels, no rule tells a V from a bell-mouth 19
// times in 20: the two lie 2.7 u apart at most. The right one is then among those named.
TEST(ShapeSimulation, SixTimesTheNoiseOfAPointIsNamedOrNotRuledOut) {
    for (const Survey2Axes& survey : surveys)
        for (const TrueShape& shape : shapes) {
            const Rates r = rates(survey, shape, 6 * pointNoise_um, 2000);
            print(survey, shape, r);
            if (!full(survey)) continue; // the gap is noisier
            EXPECT_GE(r.notRuledOut, 95) << survey.name << ", " << shape.name;
        }
}

double smallestOf(const SmallestSeen& smallest, ShapeKind kind) {
    switch (kind) {
    case ShapeKind::vee:
        return *smallest.vee_um;
    case ShapeKind::bellMouth:
        return *smallest.bellMouth_um;
    case ShapeKind::ridge:
        return *smallest.ridge_um;
    default:
        return *smallest.barrel_um;
    }
}

// What is said to be the smallest that would have been seen is seen 95 times in 100, or more often,
// as another of the shapes tried may see it too. With a gap the doubt, and so the smallest, differs
// from survey to survey: the same noise is read twice, without the shape and with it.
TEST(ShapeSimulation, TheSmallestSeenIsSeen) {
    constexpr int count = 2000;
    for (const Survey2Axes& survey : surveys)
        for (const TrueShape& shape : shapes) {
            Random random(20260407);
            int seen = 0;
            double amount = 0;
            for (int number = 0; number < count; ++number) {
                Random again = random;
                const std::vector<double> bore = boreOf(survey, shape, number);
                amount = smallestOf(readBore(survey, bore, 0, random).smallest, shape.kind);
                seen += readBore(survey, bore, amount, again).kind != ShapeKind::straight;
            }
            const double percent = 100.0 * seen / count;
            std::printf("  %-24s %-13s of %4.2f times a reading's noise seen %5.1f %%\n",
                        survey.name.c_str(), shape.name.c_str(), amount, percent);
            // Half a sine is none of the shapes tried; a gap at its waist shows that.
            const bool sine = shape.kind == ShapeKind::hourglass && !full(survey);
            EXPECT_GE(percent, sine ? 91.5 : 93.8)
                << survey.name << ", " << shape.name << " of " << amount
                << " µm, percent; 2000 bores show 95 as 94 … 96";
        }
}

} // namespace
} // namespace borewright
