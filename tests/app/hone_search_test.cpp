// SPDX-License-Identifier: GPL-3.0-or-later
// The search off the window's thread: the latest question counts, a cancelled one says nothing, the
// window is never held up; and the demonstration honed by itself to the end.
#include "core/honing/log.h"
#include "tests/app/hone_support.h"

#include "app/hone/played_round.h"
#include "app/measure/survey_proposal.h"
#include "core/honing/played_bore.h"

#include <QDir>
#include <QElapsedTimer>
#include <QSignalSpy>

#include <atomic>

namespace borewright {
namespace {

using namespace test;

TEST(LatestJob, OnlyTheLatestArrives) {
    LatestJob job;
    std::vector<int> arrived;
    std::atomic<int> begun = 0;
    for (int i = 0; i < 5; ++i)
        job.start([&, i](const LatestJob::Line& line) {
            ++begun;
            while (i < 4 && !line.givenUp())
                QThread::msleep(1);
            line.tell([&arrived, i] { arrived.push_back(i); });
        });
    job.finish();
    EXPECT_EQ(arrived, std::vector<int>{4});
    EXPECT_FALSE(job.isBusy());
    EXPECT_GE(begun, 1);
}

TEST(LatestJob, WhatWasGivenUpSaysNothing) {
    bool arrived = false;
    LatestJob job;
    job.start([&](const LatestJob::Line& line) { line.tell([&] { arrived = true; }); });
    job.giveUp();
    job.finish();
    EXPECT_FALSE(arrived);
}

TEST_F(Honing, WhatIsFoundIsOfTheRevisionAskedFor) {
    QSignalSpy found(&page.search(), &HoneSearch::found);
    page.settle();
    ASSERT_GT(found.count(), 0);
    EXPECT_EQ(found.last().at(0).toULongLong(), bench.document.revision());
    EXPECT_TRUE(page.search().isOfNow());
    EXPECT_EQ(page.search().outlook().bores.size(), 2U);
    HoneRecord changed = record();
    changed.hone.feed = "stiff spring";
    ASSERT_TRUE(bench.document.edit(SetHone{changed}, "feed"));
    EXPECT_FALSE(page.search().isOfNow());
    EXPECT_FALSE(button(page, "Done as planned (F9)")->isEnabled())
        << "the plan is of before the change";
    page.settle();
    EXPECT_TRUE(page.search().isOfNow());
}

TEST_F(Honing, TheWindowIsNeverHeldUp) {
    QElapsedTimer clock;
    clock.start();
    page.search().askNow();
    // Copies only; the search itself takes up to a second a bore.
    EXPECT_LT(clock.elapsed(), 100) << "ms";
    EXPECT_TRUE(page.search().isSearching());
    page.search().cancel();
    EXPECT_FALSE(page.search().isSearching());
    page.settle();
}

TEST_F(Honing, TheSameWorkbookGivesTheSameOutlook) {
    page.settle();
    const BoreOutlook* first = outlook(1);
    ASSERT_NE(first, nullptr);
    const std::string headline = first->headline;
    test::Bench other(roughBlock());
    HonePage second(other.context());
    second.show();
    second.settle();
    ASSERT_NE(second.search().bore(1), nullptr);
    EXPECT_EQ(second.search().bore(1)->headline, headline);
}

class HoningOneBore : public Honing {
protected:
    HoningOneBore()
        : Honing(roughBlock(1)) {}
    // Largest less smallest of the true sizes at the levels, the worse axis.
    double trueSpread_thou() {
        const Workbook& workbook = bench.document.workbook();
        const auto played = PlayedBore::replay(workbook, 1);
        double worst = 0;
        for (const char* axis : {"A", "B"}) {
            double least = 1e9, most = -1e9;
            for (const Level& level : workbook.block.bores.front().levels) {
                const double size = played->sizeAt(level.depth.value(), axis).in(Unit::thou);
                least = std::min(least, size);
                most = std::max(most, size);
            }
            worst = std::max(worst, most - least);
        }
        return worst;
    }
    double largest_in() {
        const auto played = PlayedBore::replay(bench.document.workbook(), 1);
        double most = 0;
        for (int i = 0; i < 410; ++i)
            for (const char* axis : {"A", "B"})
                most = std::max(
                    most,
                    played->sizeAt(Length::nearest(0.01 * i, Unit::inch), axis).in(Unit::inch));
        return most;
    }
};

// What the page promises: pressed again and again it closes the V to a quarter of a thou, never
// over size, and says stop.
TEST_F(HoningOneBore, TheDemonstrationIsHonedStraightByItself) {
    EXPECT_GT(trueSpread_thou(), 2.0) << "a V to begin with";
    int presses = 0;
    page.settle();
    while (presses < 16 && outlook(1) != nullptr && outlook(1)->outcome == HoneOutcome::next) {
        press(Qt::Key_F12);
        ++presses;
        EXPECT_EQ(says("Why it was not done"), "") << "press " << presses;
        page.settle();
    }
    ASSERT_NE(outlook(1), nullptr);
    EXPECT_LE(trueSpread_thou(), 0.25) << outlook(1)->headline;
    EXPECT_EQ(outlook(1)->headline.find("Straight within "), 0U)
        << "a good bore is not told as a bad one: " << outlook(1)->headline;
    EXPECT_NE(outlook(1)->headline.find("top."), std::string::npos) << outlook(1)->headline;
    EXPECT_LE(largest_in(), 3.4410) << "the finish limit";
    EXPECT_GE(presses, 4);
    EXPECT_LE(presses, 12) << outlook(1)->headline;
    EXPECT_EQ(steps(), presses) << "a press is one step";
    const std::vector<std::string> odd = logOddities(bench.document.workbook(), 1);
    EXPECT_TRUE(odd.empty()) << "played faster than read, yet in order: " << odd.front();
    for (const Pass& pass : record().passes)
        EXPECT_TRUE(pass.simulated);
    EXPECT_NE(bench.document.workbook().surveys.back().header.notes.find("simulated"),
              std::string::npos);
}

} // namespace
} // namespace borewright
