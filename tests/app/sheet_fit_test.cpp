// SPDX-License-Identifier: GPL-3.0-or-later
// What the sheet says of sizes, pistons and rings: figures worked by hand, and nothing at all where
// none are recorded.
#include "tests/app/sheet_texts.h"
#include "tests/support/blocks.h"
#include "tests/support/doubted_blocks.h"
#include "tests/support/piston_block.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace borewright {
namespace {

using namespace test;

// What stands in a row under a head; heads of several lines are named by their last.
std::string cell(const SheetGrid& grid, std::size_t row, const QString& head) {
    for (std::size_t c = 0; c < grid.columns.size(); ++c)
        if (grid.columns[c].head.section('\n', -1) == head)
            return row < grid.rows.size() ? grid.rows[row][c].text.toStdString() : "no such row";
    return "no such column";
}

std::string fact(const SheetFit& fit, const QString& name) {
    const auto found = std::ranges::find(fit.facts, name, &SheetFact::name);
    return found == fit.facts.end() ? "" : found->value.toStdString();
}

// Two bores of 3.5 in, read as found and finished, whose figures are known.
Workbook twoBores() {
    Workbook workbook = inchBlock(2, {"0.5", "2", "3.5"});
    const std::string found = addSurvey(workbook, SurveyKind::asFound, "as found");
    const std::string last = addSurvey(workbook, SurveyKind::final, "final");
    for (int bore = 1; bore <= 2; ++bore) {
        typeShape(workbook, found, bore, [bore](double depth, const std::string& axis) {
            return depth < 1 && axis == "B" ? 2.0 + bore : 1.0;
        });
        // Bore 1 is 3.5201 but for 3.5200 at 2 in on A; bore 2 is 3.5203.
        typeShape(workbook, last, bore, [bore](double depth, const std::string& axis) {
            if (bore == 2) return 20.3;
            return depth == 2 && axis == "A" ? 20.0 : 20.1;
        });
    }
    for (const char* oversize : {"0.010", "0.020"})
        workbook.sizing.sizes.push_back({typedIn(oversize), {}, {}});
    Damage score;
    score.depth = typedIn("2");
    score.axis = "A";
    score.deep = typedThou("6");
    score.what = "score";
    workbook.sizing.bores[2].damages = {score};
    workbook.sizing.bores[2].side = WearSide::oneSide;
    for (const char* size : {"3.5158", "3.5161", "3.5150"}) {
        Piston piston;
        piston.id = freshPistonId(workbook.fit);
        piston.label = size + 4;
        piston.size = typedIn(size);
        piston.height = typedIn("0.70");
        workbook.fit.pistons.push_back(piston);
    }
    workbook.fit.clearance.lower = typedThou("4");
    workbook.fit.clearance.upper = typedThou("5");
    workbook.fit.clearance.aim = typedThou("4.2");
    return workbook;
}

// 10 thou at 2 in of bore 1, where the bore's mean is 3.52005 in.
Ring ring() {
    Ring made;
    made.id = "g1";
    made.label = "top 1";
    made.measuredIn = 1;
    made.measuredAt = typedIn("2");
    made.gap = typedThou("10");
    made.bore = 1;
    return made;
}

TEST(SheetSizing, HasARowABoreWithBothWaysOfCentring) {
    Workbook workbook = twoBores();
    workbook.fit = {}; // pistons at hand are a size too
    const SheetSizing sizing = dataOf(workbook).sizing;
    ASSERT_EQ(sizing.bores.rows.size(), 2U);
    // Bore 1: 3 thou of wear on B; on the original axis twice that, reckoned as one side.
    EXPECT_EQ(cell(sizing.bores, 0, "as found"), "3.5030");
    EXPECT_EQ(cell(sizing.bores, 0, "worn bore (taken)"), "3.5030");
    EXPECT_EQ(cell(sizing.bores, 0, "original axis"), "3.5060");
    EXPECT_EQ(cell(sizing.bores, 0, "what decides"), "wear, at 0.50 B");
    // Bore 2: 1 thou of wear and a score of 6 below it: 1 + 12 and 2 + 12 thou.
    EXPECT_EQ(cell(sizing.bores, 1, "worn bore (taken)"), "3.5130");
    EXPECT_EQ(cell(sizing.bores, 1, "original axis"), "3.5140");
    EXPECT_EQ(cell(sizing.bores, 1, "what decides"), "score, 6 thou deep, at 2.00 A");
    EXPECT_EQ(cell(sizing.bores, 1, "size"), "0.020 in");
    // 20 − 13 − 0.5 thou.
    EXPECT_EQ(cell(sizing.bores, 1, "margin"), "6.5");
    EXPECT_EQ(cell(sizing.bores, 1, "verdict"), "cleans");
    EXPECT_EQ(cell(sizing.bores, 1, "±"), "no such column") << "no doubt is known";
    EXPECT_EQ(sizing.bars.bores.size(), 2U);
}

TEST(SheetSizing, ABoreBeyondTheLastSizeSaysSo) {
    Workbook workbook = twoBores();
    workbook.fit = {};
    workbook.sizing.bores[2].damages[0].deep = typedThou("11");
    const SheetSizing sizing = dataOf(workbook).sizing;
    EXPECT_EQ(cell(sizing.bores, 1, "size"), "beyond the last: a sleeve");
    EXPECT_EQ(cell(sizing.bores, 0, "size"), "0.010 in") << "the other is not spoiled";
}

TEST(SheetSizing, TheCustomerReadsItUntilSomethingIsHoned) {
    const QString found =
        said(textsOf(dataOf(pistonBlockAsFound(2, 2)), Preferences::Paper::a4)[0]);
    EXPECT_TRUE(found.contains("clean up at 0.020 in over")) << found.toStdString();
    EXPECT_TRUE(found.contains("Wall thickness is not seen by any of this"));
    const QString honed = said(textsOf(dataOf(pistonBlock(2, 2)), Preferences::Paper::a4)[0]);
    EXPECT_FALSE(honed.contains("clean up at")) << honed.toStdString();
    EXPECT_FALSE(honed.contains("Wall thickness"));
}

TEST(SheetFit, GivesTheLeastClearanceOfEachPair) {
    const SheetFit fit = dataOf(twoBores()).fit;
    ASSERT_EQ(fit.pistons.rows.size(), 2U);
    // 3.5200 − 3.5158 and 3.5203 − 3.5161 in, both at the aim; the third is left over.
    EXPECT_EQ(cell(fit.pistons, 0, "piston"), "58");
    EXPECT_EQ(cell(fit.pistons, 0, "as measured"), "3.5158");
    EXPECT_EQ(cell(fit.pistons, 0, "of skirt"), "0.70");
    EXPECT_EQ(cell(fit.pistons, 0, "smallest"), "3.5200");
    EXPECT_EQ(cell(fit.pistons, 0, "at"), "2.00 A");
    EXPECT_EQ(cell(fit.pistons, 0, "clearance"), "4.2");
    EXPECT_EQ(cell(fit.pistons, 0, "verdict"), "within");
    EXPECT_EQ(cell(fit.pistons, 0, "pair"), "proposed");
    EXPECT_EQ(cell(fit.pistons, 1, "piston"), "61");
    EXPECT_EQ(cell(fit.pistons, 1, "clearance"), "4.2");
    EXPECT_EQ(fact(fit, "Clearance allowed"), "4 to 5 thou, aim 4.2 thou");
    EXPECT_EQ(fact(fit, "Pistons in bores"), "as proposed, not yet decided");
    EXPECT_EQ(fact(fit, "Pistons left over"), "50 (3.5150 in)");
    EXPECT_EQ(fact(fit, "Bores as read").find("not the final"), std::string::npos);
    ASSERT_EQ(fit.across.size(), 1U);
    EXPECT_EQ(cell(fit.across[0], 0, "1 A"), "4.3");
    EXPECT_EQ(cell(fit.across[0], 1, "1 A"), "4.2");
    EXPECT_EQ(cell(fit.across[0], 2, "2 B"), "4.2");
}

TEST(SheetFit, TellsDecidedPairsFromProposed) {
    Workbook workbook = twoBores();
    workbook.fit.pistons[2].bore = 2;
    const SheetFit fit = dataOf(workbook).fit;
    EXPECT_EQ(cell(fit.pistons, 0, "pair"), "proposed");
    EXPECT_EQ(cell(fit.pistons, 1, "pair"), "decided");
    EXPECT_EQ(cell(fit.pistons, 1, "clearance"), "5.3");
    EXPECT_EQ(cell(fit.pistons, 1, "verdict"), "outside");
    EXPECT_EQ(fact(fit, "Pistons in bores"),
              "bore 2 as decided, bore 1 as proposed, not yet decided");
    ASSERT_EQ(fit.pairs.pairs.size(), 2U);
    EXPECT_EQ(fit.pairs.pairs[1].verdict, Verdict::outside);
}

TEST(SheetFit, APistonWithoutItsHeightHasNoClearance) {
    Workbook workbook = twoBores();
    workbook.fit.pistons[0].height.reset();
    workbook.fit.pistons[0].bore = 1;
    const SheetFit fit = dataOf(workbook).fit;
    EXPECT_EQ(cell(fit.pistons, 0, "of skirt"), "not given");
    EXPECT_EQ(cell(fit.pistons, 0, "clearance"), "");
    EXPECT_NE(cell(fit.pistons, 0, "remark"), "") << "why is not said";
    for (const SheetPair& pair : fit.pairs.pairs)
        EXPECT_NE(pair.bore.toStdString(), "1");
}

TEST(SheetFit, BoresStillToBeHonedHaveASizeAndNoClearance) {
    Workbook workbook = twoBores();
    workbook.surveys.pop_back();
    workbook.fit.rings = {ring()};
    const SheetFit fit = dataOf(workbook).fit;
    // The smallest piston first: the pistons' own order is by label. 3.5150 + 4.2 thou.
    EXPECT_EQ(cell(fit.pistons, 0, "piston"), "50");
    EXPECT_EQ(cell(fit.pistons, 0, "hone to"), "3.5192");
    EXPECT_EQ(cell(fit.pistons, 0, "clearance"), "no such column");
    EXPECT_TRUE(fit.pairs.pairs.empty());
    EXPECT_TRUE(fit.across.empty());
    EXPECT_NE(fact(fit, "Bores as read").find("not the final clearance"), std::string::npos);
    ASSERT_EQ(fit.rings.size(), 1U);
    EXPECT_EQ(cell(fit.rings[0], 0, "to file"), "no such column")
        << "filed to a bore that is honed afterwards the ring is lost";
    EXPECT_TRUE(fit.ringHeadline.startsWith("Rings come after the last honing"));
    EXPECT_FALSE(fit.ringSentences.join(' ').contains("file"));
    workbook.fit.rings[0].bore.reset();
    EXPECT_TRUE(dataOf(workbook).fit.rings.empty()) << "a table of nothing but bores";
}

// A bore as found gets rings as it is, unless the hone has a size to aim at.
TEST(SheetFit, SaysNothingOfFilingWhereTheHoneHasATarget) {
    Workbook workbook = twoBores();
    workbook.surveys.pop_back();
    workbook.fit.pistons.clear();
    workbook.fit.rings = {ring()};
    workbook.fit.ringGap.lower = typedThou("12");
    workbook.fit.ringGap.upper = typedThou("20");
    const SheetFit found = dataOf(workbook).fit;
    ASSERT_EQ(found.rings.size(), 1U);
    EXPECT_EQ(cell(found.rings[0], 0, "to file"), "6.0") << "10 thou to the middle of the limits";
    workbook.targets[1].size = typedIn("3.5200");
    const SheetFit toHone = dataOf(workbook).fit;
    EXPECT_EQ(cell(toHone.rings[0], 0, "to file"), "no such column");
    EXPECT_FALSE(toHone.ringSentences.join(' ').contains("file"));
    EXPECT_NE(cell(toHone.rings[0], 0, "remark").find("to be honed"), std::string::npos)
        << cell(toHone.rings[0], 0, "remark");
}

TEST(SheetFit, GivesTheGapsOfARingAndWhatToFile) {
    Workbook workbook = twoBores();
    workbook.fit.rings = {ring()};
    workbook.fit.ringGap.lower = typedThou("12");
    workbook.fit.ringGap.upper = typedThou("20");
    workbook.fit.ringGap.aim = typedThou("14");
    const SheetFit fit = dataOf(workbook).fit;
    ASSERT_EQ(fit.rings.size(), 1U);
    const SheetGrid& rings = fit.rings[0];
    EXPECT_EQ(cell(rings, 0, "ring"), "top 1");
    EXPECT_EQ(cell(rings, 0, "measured"), "10.0");
    EXPECT_EQ(cell(rings, 0, "measure at"), "2.00");
    EXPECT_EQ(cell(rings, 0, "smallest"), "10.0");
    // π·(3.5201 − 3.52005) = 0.16 thou more.
    EXPECT_EQ(cell(rings, 0, "largest"), "10.2");
    EXPECT_EQ(cell(rings, 0, "to file"), "4.0");
    EXPECT_EQ(cell(rings, 0, "in steps of"), "2 × 2.0");
    EXPECT_EQ(cell(rings, 0, "verdict"), "outside");
    EXPECT_EQ(cell(rings, 0, "pair"), "decided");
    EXPECT_EQ(fact(fit, "Ring gap allowed"), "12 to 20 thou, aim 14 thou");
}

TEST(SheetFit, NothingIsSaidWhereNothingIsRecorded) {
    const SheetData data = dataOf(wellKnownBlock());
    EXPECT_FALSE(data.sizing.there());
    EXPECT_FALSE(data.fit.there);
    for (const TextLog& log : textsOf(data, Preferences::Paper::a4))
        for (const char* part : {"Which size", "iston", "Wall thickness", "seizes"})
            EXPECT_FALSE(said(log).contains(part)) << part;
}

// With pistons and no rings nobody is told on paper to enter rings.
TEST(SheetFit, SaysNothingOfWhatIsNotThere) {
    const SheetFit pistons = dataOf(twoBores()).fit;
    EXPECT_TRUE(pistons.ringHeadline.isEmpty());
    EXPECT_TRUE(pistons.rings.empty());
    Workbook workbook = twoBores();
    workbook.fit.pistons.clear();
    workbook.fit.rings = {ring()};
    const SheetFit rings = dataOf(workbook).fit;
    EXPECT_TRUE(rings.headline.isEmpty());
    EXPECT_TRUE(rings.pistons.rows.empty());
    EXPECT_EQ(rings.rings.size(), 1U);
}

} // namespace
} // namespace borewright
