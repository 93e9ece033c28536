// SPDX-License-Identifier: GPL-3.0-or-later
// What cannot stand in a record of pistons and rings, and how the refusal reads.
#include "core/workbook/fit_record.h"

#include "tests/support/lengths.h"

#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;

FitRecord record() {
    FitRecord fit;
    fit.pistons.resize(2);
    fit.pistons[0].id = "p1";
    fit.pistons[0].label = "1";
    fit.pistons[0].size = typedIn("3.4362");
    fit.pistons[1].id = "p2";
    fit.pistons[1].size = typedIn("3.4358");
    fit.rings.resize(1);
    fit.rings[0].id = "g1";
    fit.rings[0].label = "top 1";
    return fit;
}
std::string refusal(const FitRecord& fit) {
    const auto good = checkFit(fit);
    return good ? "taken" : good.error().message();
}

TEST(FitRecords, AimsAndUpperLimitsAreMoreThanNothing) {
    FitRecord fit = record();
    fit.clearance.aim = typedThou("0");
    EXPECT_EQ(refusal(fit), "clearance: aim: aim at more than nothing");
    fit.clearance.aim = typedThou("-1");
    EXPECT_EQ(refusal(fit), "clearance: aim: aim at more than nothing");
    fit = record();
    fit.ringGap.aim = typedThou("0");
    EXPECT_EQ(refusal(fit), "ring gap: aim: aim at more than nothing");
    fit = record();
    fit.clearance.lower = fit.clearance.upper = typedThou("0"); // half-way: an aim of nothing
    EXPECT_NE(refusal(fit), "taken");
    fit.clearance.upper = typedThou("3");
    EXPECT_EQ(refusal(fit), "taken") << "a least of nothing is a limit";
}

TEST(FitRecords, AClearanceOfInchesForThouIsQuestioned) {
    FitRecord fit = record();
    fit.clearance.lower = typedIn("3.8");
    EXPECT_EQ(refusal(fit), "clearance of 3.8 in for a piston of 3.4358 in: is the unit right?");
    fit.clearance = {};
    fit.clearance.aim = typedIn("0.0688"); // 2 % is 0.068716
    EXPECT_NE(refusal(fit), "taken");
    fit.clearance.aim = typedIn("0.0687");
    EXPECT_EQ(refusal(fit), "taken");
    fit.clearance.aim.reset();
    fit.clearance.upper = typedMm("85");
    EXPECT_EQ(refusal(fit), "clearance of 85 mm for a piston of 3.4358 in: is the unit right?");
    fit.pistons[0].size.reset();
    fit.pistons[1].size.reset();
    EXPECT_EQ(refusal(fit), "clearance of 85 mm: is the unit right?");
    fit.clearance.upper = typedMm("3");
    EXPECT_EQ(refusal(fit), "taken");
    fit.clearance.upper = typedMm("3.001");
    EXPECT_NE(refusal(fit), "taken");
}

TEST(FitRecords, ARingGapOfMillimetresForMicrometresIsQuestioned) {
    FitRecord fit = record();
    fit.ringGap.lower = typedMm("300");
    EXPECT_EQ(refusal(fit), "ring gap of 300 mm: is the unit right?");
    fit.ringGap = {};
    fit.ringGap.upper = typedMm("10");
    EXPECT_EQ(refusal(fit), "taken");
    fit.ringGap.aim = fit.ringGap.upper = typedMm("10.001");
    EXPECT_NE(refusal(fit), "taken");
}

TEST(FitRecords, BoresAreNumberedFromOne) {
    for (const int bore : {0, -3, 1000}) {
        FitRecord fit = record();
        fit.pistons[0].bore = bore;
        EXPECT_EQ(refusal(fit), "piston 1: bore: bores are numbered from 1 to 999") << bore;
        fit = record();
        fit.rings[0].bore = bore;
        EXPECT_EQ(refusal(fit), "ring top 1: bore: bores are numbered from 1 to 999") << bore;
        fit = record();
        fit.rings[0].measuredIn = bore;
        EXPECT_EQ(refusal(fit), "ring top 1: measured in: bores are numbered from 1 to 999");
    }
    for (const int bore : {1, 999}) {
        FitRecord fit = record();
        fit.pistons[0].bore = fit.rings[0].bore = fit.rings[0].measuredIn = bore;
        EXPECT_EQ(refusal(fit), "taken") << bore;
    }
}

TEST(FitRecords, RefusalsNameTheLabelElseTheIdShortly) {
    FitRecord fit = record();
    fit.pistons[1].size = typedIn("0");
    EXPECT_EQ(refusal(fit).rfind("piston p2: size: ", 0), 0U) << refusal(fit);
    fit.pistons[1].label = "the one from the box that came with the other block";
    EXPECT_EQ(refusal(fit).rfind("piston the one from the box tha…: size: ", 0), 0U)
        << refusal(fit);
    fit.pistons[1].label = "aaaaaaaaaaaaaaaaaaaaaaaÄb"; // byte 24 is within the Ä
    EXPECT_EQ(refusal(fit).rfind("piston aaaaaaaaaaaaaaaaaaaaaaa…: ", 0), 0U) << refusal(fit);
    fit.pistons[1].label.clear();
    fit.pistons[1].id.clear();
    EXPECT_EQ(refusal(fit), "a piston without a label: needs an id of its own");
    fit = record();
    fit.rings[0].label.clear();
    fit.rings[0].id.clear();
    EXPECT_EQ(refusal(fit), "a ring without a label: needs an id of its own");
}

} // namespace
} // namespace borewright
