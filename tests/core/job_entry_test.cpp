// SPDX-License-Identifier: GPL-3.0-or-later
// What a workbook puts into the ledger: built from the known answer.
#include "core/results/job_entry.h"
#include "tests/support/blocks.h"
#include "tests/support/honed_block.h"

#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;

constexpr std::int64_t day = 86'400;

JobEntry entryOf(const Workbook& workbook) {
    return jobEntry(workbook, compute(workbook, naturalUnits(workbook)), "/shop/a.borebook", 7);
}

void typeAll(Workbook& workbook, const std::string& survey, int bore, double thou) {
    typeShape(workbook, survey, bore, [thou](double, const std::string&) { return thou; });
}

// Two bores: 1 read as found (3.503) and at the end (3.520); 2 as found only (3.505, over 3.504).
Workbook twoBores() {
    Workbook workbook = inchBlock(2);
    workbook.job.customer = "A. Example";
    workbook.job.engine = "Saltmarsh V6";
    workbook.job.serial = "SM-0001";
    addWornLimits(workbook, "3.504", "3", "3");
    LimitSet finish;
    finish.id = freshLimitSetId(workbook);
    finish.purpose = LimitPurpose::finish;
    finish.oversize = typedIn("0.020");
    finish.limits.sizeLower = typedIn("3.5195");
    finish.limits.sizeUpper = typedIn("3.5205");
    workbook.limitSets.push_back(finish);
    const std::string found = addSurvey(workbook, SurveyKind::asFound, "as found");
    typeAll(workbook, found, 1, 3);
    typeAll(workbook, found, 2, 5);
    const std::string last = addSurvey(workbook, SurveyKind::final, "final");
    typeAll(workbook, last, 1, 20);
    workbook.surveys[1].header.time.secondsSinceEpoch += 3 * day;
    workbook.surveys[0].header.gauge.gauge = "dial bore gauge no. 2";
    workbook.surveys[0].header.gauge.setOn = "ring 3.5000";
    workbook.surveys[1].header.gauge.gear.lastChecked = "certificate 12";
    return workbook;
}

TEST(JobEntry, TellsWhoseEngineItIsAndWhen) {
    const JobEntry job = entryOf(twoBores());
    EXPECT_EQ(job.file, "/shop/a.borebook");
    EXPECT_EQ(job.content, 7U);
    EXPECT_EQ(job.customer, "A. Example");
    EXPECT_EQ(job.engine, "Saltmarsh V6");
    EXPECT_EQ(job.serial, "SM-0001");
    ASSERT_TRUE(job.opened && job.lastSurvey);
    EXPECT_EQ(job.lastSurvey->secondsSinceEpoch - job.opened->secondsSinceEpoch, 3 * day);
    EXPECT_EQ(job.units, DisplayUnits::inch());
}

TEST(JobEntry, SizesBeforeAndAfterAreThoseOfTheFirstAndTheLastSurvey) {
    const JobEntry job = entryOf(twoBores());
    ASSERT_EQ(job.bores.size(), 2U);
    ASSERT_TRUE(job.bores[0].before && job.bores[0].after);
    EXPECT_EQ(job.bores[0].before->largest, in("3.503"));
    EXPECT_EQ(job.bores[0].after->smallest, in("3.520"));
    ASSERT_TRUE(job.bores[1].before.has_value());
    EXPECT_EQ(job.bores[1].before->largest, in("3.505"));
    EXPECT_FALSE(job.bores[1].after.has_value()) << "bore 2 was read once only";
    ASSERT_TRUE(sizeBefore(job).has_value());
    EXPECT_EQ(sizeBefore(job)->smallest, in("3.503"));
    EXPECT_EQ(sizeBefore(job)->largest, in("3.505"));
    EXPECT_EQ(sizeAfter(job)->largest, in("3.520"));
}

TEST(JobEntry, TheWorstVerdictIsThatOfTheWorstBoreAsLastRead) {
    Workbook workbook = twoBores();
    EXPECT_EQ(entryOf(workbook).bores[0].verdict, Verdict::within);
    EXPECT_EQ(worstVerdict(entryOf(workbook)), Verdict::outside) << "bore 2 is over 3.504 in";
    typeAll(workbook, workbook.surveys[1].header.id, 2, 20);
    EXPECT_EQ(worstVerdict(entryOf(workbook)), Verdict::within) << "it has been honed since";
    EXPECT_EQ(worstVerdict(JobEntry{}), Verdict::notMeasured);
}

TEST(JobEntry, OversizeIsThatOfTheTargetElseOfTheOnlyFinishLimits) {
    Workbook workbook = twoBores();
    EXPECT_EQ(oversizeOf(entryOf(workbook)), in("0.020"));
    FinishTarget target;
    target.size = typedIn("3.5300");
    workbook.targets[2] = target;
    const JobEntry job = entryOf(workbook);
    EXPECT_EQ(job.bores[0].oversize, in("0.020"));
    EXPECT_EQ(job.bores[1].oversize, in("0.030"));
    EXPECT_EQ(oversizeOf(job), in("0.030"));
    workbook.targets.clear();
    LimitSet second = workbook.limitSets.back();
    second.id = freshLimitSetId(workbook);
    workbook.limitSets.push_back(second);
    EXPECT_FALSE(oversizeOf(entryOf(workbook)).has_value()) << "two finish sets, neither chosen";
}

TEST(JobEntry, EachSurveyNamesItsGaugeAndTheBoresItRead) {
    const JobEntry job = entryOf(twoBores());
    ASSERT_EQ(job.gauges.size(), 2U);
    EXPECT_EQ(job.gauges[0].gauge, "dial bore gauge no. 2");
    EXPECT_EQ(job.gauges[0].setOn, "ring 3.5000");
    EXPECT_EQ(job.gauges[0].kind, "as found");
    EXPECT_EQ(job.gauges[0].bores, "1 and 2");
    EXPECT_EQ(job.gauges[1].bores, "1");
    EXPECT_EQ(job.gauges[1].lastChecked, "certificate 12");
}

// Pass h2 of the short stone: 24 strokes took 1.5 thou off above 3 in and 2 below; the levels are
// at 0.5, 1.25, 2, 2.75 and 3.5 in, so on the mean 1.6.
TEST(JobEntry, StonesTellHowFastTheyCutWhereItWasMeasured) {
    const JobEntry job = entryOf(measuredHonedBlock());
    ASSERT_EQ(job.stones.size(), 3U);
    EXPECT_EQ(job.stones[0].passes, 0) << "h1 was simulated, h3 struck out";
    EXPECT_FALSE(micrometresPerStroke(job.stones[0]).has_value());
    EXPECT_EQ(job.stones[1].name, "Short 100");
    EXPECT_EQ(job.stones[1].grit, "100");
    EXPECT_EQ(job.stones[1].passes, 1);
    EXPECT_DOUBLE_EQ(job.stones[1].strokes, 24);
    EXPECT_EQ(job.stones[1].tookOff, thou("1.6"));
    ASSERT_TRUE(micrometresPerStroke(job.stones[1]).has_value());
    EXPECT_NEAR(*micrometresPerStroke(job.stones[1]), 1.6 * 25.4 / 24, 1e-9);
}

TEST(JobEntry, AnEmptyWorkbookMakesAnEmptyEntry) {
    const JobEntry job = entryOf(emptyWorkbook());
    EXPECT_TRUE(job.bores.empty() && job.gauges.empty() && job.stones.empty());
    EXPECT_FALSE(job.opened.has_value());
    EXPECT_FALSE(sizeBefore(job).has_value());
}

} // namespace
} // namespace borewright
