// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/document/document.h"
#include "tests/support/blocks.h"

#include <QSignalSpy>
#include <QTest>

#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;

class FixedClock final : public Clock {
public:
    [[nodiscard]] Timestamp now() const override { return {1'774'000'000, 60}; }
};

// Two bores, read, with a gauge whose doubt is known.
Workbook doubted() {
    Workbook workbook = inchBlock(2);
    addWornLimits(workbook, "3.504", "3", "2");
    const std::string id = addSurvey(workbook, SurveyKind::asFound, "found");
    findSurvey(workbook, id)->header.gauge.gear = tenthDialAndRing();
    for (const int bore : {1, 2})
        typeShape(workbook, id, bore,
                  [](double depth, const std::string&) { return 2 - depth / 2; });
    return workbook;
}

TEST(Document, AnEditThatChangesNothingMakesNoUndoStep) {
    FixedClock clock;
    Document document(clock);
    ASSERT_TRUE(document.edit(SetJob{document.workbook().job}, "job"));
    EXPECT_EQ(document.undoStack().count(), 0);
}

TEST(Document, WholeDoubtsFollowTheQuickOnesFromAnotherThread) {
    FixedClock clock;
    Document document(clock);
    document.open(doubted());
    const std::size_t quick = document.results().surveys[0].bores[0].doubt->trials;
    QSignalSpy changes(&document, &Document::changed);
    ASSERT_TRUE(changes.wait(5000)) << "nothing settled within five seconds";
    EXPECT_EQ(changes.back().front().value<Change>(), Change::doubts);
    const std::size_t whole = document.results().surveys[0].bores[0].doubt->trials;
    EXPECT_GT(whole, quick);
    const std::uint64_t revision = document.revision();
    EXPECT_FALSE(changes.wait(400)) << "settled doubts are not reckoned again";
    EXPECT_EQ(document.revision(), revision);
}

TEST(Document, WhatIsPrintedHasWholeDoubtsAtOnce) {
    FixedClock clock;
    Document document(clock);
    document.open(doubted());
    const std::size_t quick = document.results().surveys[0].bores[0].doubt->trials;
    EXPECT_GT(document.settledResults().surveys[0].bores[0].doubt->trials, quick);
}

TEST(Document, MayBeClosedWhileDoubtsSettle) {
    FixedClock clock;
    for (int i = 0; i < 5; ++i) {
        Document document(clock);
        document.open(doubted());
        (void)document.results();
        QTest::qWait(20 * i + 90);
    }
}

} // namespace
} // namespace borewright
