// SPDX-License-Identifier: GPL-3.0-or-later
// What the ledger keeps and finds: the same tests on a file and on a real server.
#include "app/ledger/ledger_connection.h"
#include "app/ledger/ledger_totals.h"
#include "tests/app/ledger/store_support.h"
#include "tests/support/lengths.h"

#include <gmock/gmock.h>

#include <thread>

namespace borewright {
namespace {

using namespace test;
using testing::ElementsAre;
using testing::IsEmpty;

TEST_P(Ledger, GivesBackAllThatWasPutInToThePicometre) {
    JobEntry job = madeJob(1, "Müller & Søn \"quoted\"", "Saltmarsh V6; DROP TABLE job", "SM'1");
    job.bores[0].before->largest += Length::fromPicometres(1);
    put(job);
    const auto back = store->job(job.file);
    ASSERT_TRUE(back && *back) << "the job is not there";
    EXPECT_EQ((*back)->bores[0].before->largest, job.bores[0].before->largest);
    EXPECT_EQ((*back)->stones[0].strokes, 72.5);
    EXPECT_EQ((*back)->content, job.content);
    EXPECT_TRUE(**back == job) << "something was lost on the way";
    const auto none = store->job("/shop/none.borebook");
    ASSERT_TRUE(none.has_value());
    EXPECT_FALSE(none->has_value());
}

TEST_P(Ledger, AFileEnteredAgainTakesItsOwnPlace) {
    JobEntry job = madeJob(1, "A. Example", "Saltmarsh V6", "SM-1");
    put(job);
    job.customer = "B. Example";
    job.bores.pop_back();
    job.stones.clear();
    put(job);
    EXPECT_EQ(store->count().value_or(-1), 1);
    EXPECT_TRUE(*store->job(job.file).value() == job);
    ASSERT_TRUE(store->forget(job.file).has_value());
    EXPECT_EQ(store->count().value_or(-1), 0);
}

TEST_P(Ledger, FindsEveryWordInAnyFieldWithoutCaseOrAccents) {
    put(madeJob(1, "Müller & Søn", "Saltmarsh V6", "SM-4711"));
    put(madeJob(2, "A. Example", "Rushmere 3", "RM-0042"));
    put(madeJob(3, "Mueller", "Saltmarsh I4", "100%_ok!"));
    EXPECT_THAT(holding("muller"), ElementsAre("1"));
    EXPECT_THAT(holding("  SØN  müller "), ElementsAre("1"));
    EXPECT_THAT(holding("saltmarsh"), ElementsAre("1", "3"));
    EXPECT_THAT(holding("saltmarsh 71"), ElementsAre("1"));
    EXPECT_THAT(holding("000002.bore"), ElementsAre("2"));
    EXPECT_THAT(holding("%_ok!"), ElementsAre("3")) << "signs of the search mean themselves";
    EXPECT_THAT(holding("0%4"), IsEmpty());
    EXPECT_THAT(holding("' OR '1'='1"), IsEmpty());
    EXPECT_THAT(holding(""), ElementsAre("1", "2", "3"));
    EXPECT_EQ(store->count("saltmarsh").value_or(-1), 2);
}

TEST_P(Ledger, SortsByAnyColumnBothWaysWithWhatIsMissingLast) {
    JobEntry first = madeJob(1, "beta", "Saltmarsh", "3");
    JobEntry second = madeJob(2, "Älpha", "Rushmere", "2");
    JobEntry third = madeJob(3, "gamma", "Thornwick", "1");
    for (BoreEntry& bore : second.bores)
        bore.before->largest += thou("5");
    for (BoreEntry& bore : third.bores) {
        bore.before.reset();
        bore.after.reset();
        bore.oversize.reset();
        bore.verdict = Verdict::within;
    }
    third.opened.reset();
    third.lastSurvey.reset();
    first.bores.pop_back();
    for (const JobEntry& job : {first, second, third})
        put(job);
    const auto sorted = [&](LedgerColumn column, bool descending) {
        return found({"", column, descending, -1});
    };
    EXPECT_THAT(sorted(LedgerColumn::customer, false), ElementsAre("2", "1", "3"));
    EXPECT_THAT(sorted(LedgerColumn::customer, true), ElementsAre("3", "1", "2"));
    EXPECT_THAT(sorted(LedgerColumn::engine, false), ElementsAre("2", "1", "3"));
    EXPECT_THAT(sorted(LedgerColumn::serial, false), ElementsAre("3", "2", "1"));
    EXPECT_THAT(sorted(LedgerColumn::opened, true), ElementsAre("2", "1", "3"));
    EXPECT_THAT(sorted(LedgerColumn::opened, false), ElementsAre("1", "2", "3"));
    EXPECT_THAT(sorted(LedgerColumn::lastSurvey, false), ElementsAre("1", "2", "3"));
    EXPECT_THAT(sorted(LedgerColumn::before, true), ElementsAre("2", "1", "3"));
    EXPECT_THAT(sorted(LedgerColumn::before, false), ElementsAre("1", "2", "3"));
    EXPECT_THAT(sorted(LedgerColumn::after, true), ElementsAre("2", "1", "3"));
    EXPECT_THAT(sorted(LedgerColumn::oversize, true), ElementsAre("2", "1", "3"));
    EXPECT_THAT(sorted(LedgerColumn::bores, false), ElementsAre("1", "2", "3"));
    EXPECT_THAT(sorted(LedgerColumn::verdict, false), ElementsAre("2", "1", "3"));
    EXPECT_THAT(sorted(LedgerColumn::file, true), ElementsAre("3", "2", "1"));
    EXPECT_THAT(found({"", LedgerColumn::file, false, 2}), ElementsAre("1", "2"));
}

TEST_P(Ledger, TellsWhatAnEngineNeededEachTime) {
    put(madeJob(1, "A. Example", "Saltmarsh V6", "SM-1"));
    put(madeJob(2, "B. Example", "Rushmere 3", "RM-1"));
    JobEntry later = madeJob(3, "C. Example", "saltmarsh v6", "SM-2");
    later.bores.clear();
    put(later);
    const auto needed = neededBy(*store, "SALTMARSH V6");
    ASSERT_TRUE(needed.has_value()) << needed.error().message();
    ASSERT_EQ(needed->size(), 2U);
    EXPECT_EQ((*needed)[0].job.serial, "SM-2") << "the latest comes first";
    EXPECT_TRUE((*needed)[0].bores.empty());
    ASSERT_EQ((*needed)[1].bores.size(), 3U);
    EXPECT_EQ((*needed)[1].bores[0].oversize, thou("20"));
    EXPECT_EQ((*needed)[1].job.before->largest, in("3.5033"));
}

// Two jobs took 4 thou in 72.5 and 2 thou in 27.5 strokes: 6 thou in 100, so 1.524 µm a stroke.
TEST_P(Ledger, TellsHowFastEachStoneCutOverAllJobs) {
    put(madeJob(1, "A. Example", "Saltmarsh V6", "SM-1"));
    JobEntry other = madeJob(2, "B. Example", "Rushmere 3", "RM-1");
    other.stones = {{"FULL 100", "100", Surface::iron, 1, 27.5, thou("2")},
                    {"full 100", "100", Surface::ironSleeveInAluminium, 1, 10, thou("1")}};
    put(other);
    const auto rates = stoneRates(*store, {});
    ASSERT_TRUE(rates.has_value()) << rates.error().message();
    ASSERT_EQ(rates->size(), 2U) << "a stone that was not measured has no rate";
    const StoneRate& iron = rates->front();
    EXPECT_EQ(iron.sum.surface, Surface::iron);
    EXPECT_EQ(iron.jobs, 2);
    EXPECT_EQ(iron.sum.passes, 4);
    EXPECT_EQ(iron.sum.tookOff, thou("6"));
    EXPECT_NEAR(micrometresPerStroke(iron.sum).value_or(0), 1.524, 1e-9);
    EXPECT_NEAR(iron.slowest_um, 4 * 25.4 / 72.5, 1e-9);
    EXPECT_NEAR(iron.fastest_um, 2 * 25.4 / 27.5, 1e-9);
    EXPECT_EQ(stoneRates(*store, "rushmere").value().front().sum.passes, 1);
}

TEST_P(Ledger, ListsEveryJobThatAGaugeTouched) {
    put(madeJob(1, "A. Example", "Saltmarsh V6", "SM-1"));
    JobEntry other = madeJob(2, "B. Example", "Rushmere 3", "RM-1");
    other.gauges.pop_back();
    put(other);
    const auto second = touchedBy(*store, "Gauge No. 3");
    ASSERT_TRUE(second.has_value()) << second.error().message();
    ASSERT_EQ(second->size(), 1U);
    EXPECT_EQ(second->front().job.serial, "SM-1");
    EXPECT_EQ(second->front().gauge.bores, "1 and 2");
    EXPECT_EQ(touchedBy(*store, "ring 3.5000").value().size(), 2U)
        << "a ring found wrong spoils what was set on it";
    EXPECT_EQ(touchedBy(*store, "no. 9").value().size(), 0U);
    EXPECT_FALSE(touchedBy(*store, "  ").has_value());
}

TEST_P(Ledger, WhatIsEnteredTogetherIsEnteredWholeOrNotAtAll) {
    put(madeJob(1, "A. Example", "Saltmarsh V6", "SM-1"));
    const auto done = store->connection().together([&]() -> Result<void> {
        put(madeJob(2, "B. Example", "Rushmere 3", "RM-1"));
        return refuse("given up");
    });
    EXPECT_FALSE(done.has_value());
    EXPECT_THAT(holding(""), ElementsAre("1"));
    put(madeJob(2, "B. Example", "Rushmere 3", "RM-1"));
    EXPECT_THAT(holding(""), ElementsAre("1", "2")) << "the ledger goes on after a refusal";
}

TEST_P(Ledger, SeveralThreadsEnterAndSearchEachOnTheirOwnConnection) {
    constexpr int each = 25;
    std::atomic<int> failures{0};
    {
        std::vector<std::jthread> benches;
        for (int bench = 0; bench < 4; ++bench)
            benches.emplace_back([&, bench] {
                auto own = LedgerStore::open(place);
                for (int i = 0; own && i < each; ++i) {
                    failures += (*own)->put(manyJobs(bench * each + i)) ? 0 : 1;
                    failures += (*own)->find({"salt", LedgerColumn::opened, true, 5}) ? 0 : 1;
                }
                failures += own ? 0 : 1;
            });
    }
    EXPECT_EQ(failures.load(), 0);
    EXPECT_EQ(store->count().value_or(-1), 4 * each);
}

TEST_P(Ledger, OpenedAgainItHoldsWhatItHeld) {
    EXPECT_TRUE(store->isNew());
    put(madeJob(1, "A. Example", "Saltmarsh V6", "SM-1"));
    ASSERT_TRUE(store->setFolders({"/shop/jobs", "/shop/old"}).has_value());
    store.reset();
    auto again = LedgerStore::open(place);
    ASSERT_TRUE(again.has_value()) << again.error().message();
    EXPECT_FALSE((*again)->isNew());
    EXPECT_EQ((*again)->notice(), "");
    EXPECT_EQ((*again)->count().value_or(-1), 1);
    EXPECT_THAT((*again)->folders().value(), ElementsAre("/shop/jobs", "/shop/old"));
}

TEST_P(Ledger, ATextWithAZeroCharacterIsTakenWithASpace) {
    put(madeJob(1, std::string("A.\0Example", 10), "Saltmarsh V6", "SM-1"));
    EXPECT_THAT(holding("a. example"), ElementsAre("1"));
}

TEST_P(Ledger, GivesItsRowsAPageAtATimeInOneOrder) {
    for (int i = 1; i <= 7; ++i)
        put(madeJob(i, i % 2 == 0 ? "Even" : "Odd", "Saltmarsh V6", "SM-1")); // many are alike
    std::vector<std::string> pages;
    for (int skip = 0; skip < 9; skip += 3)
        for (const std::string& file : found({"saltmarsh", LedgerColumn::customer, true, 3, skip}))
            pages.push_back(file);
    EXPECT_EQ(pages, found({"saltmarsh", LedgerColumn::customer, true, -1}));
    EXPECT_EQ(pages.size(), 7U);
}

// An index of a server takes no text that is longer than a third of a page, 2.7 KB.
TEST_P(Ledger, ATextTooLongForAnyIndexIsEnteredAndFound) {
    JobEntry job = madeJob(1, "", "Saltmarsh V6", "SM-1");
    for (int i = 0; i < 3000; ++i)
        job.customer += manyJobs(i).serial + ' ';
    put(job);
    EXPECT_THAT(holding(manyJobs(2999).serial), ElementsAre("1"));
    ASSERT_TRUE(store->settle().has_value());
}

TEST_P(Ledger, TablesOfAnOlderVersionAreMadeAnewAndRememberTheirFolders) {
    put(madeJob(1, "A. Example", "Saltmarsh V6", "SM-1"));
    ASSERT_TRUE(store->setFolders({"/shop/jobs"}).has_value());
    ASSERT_TRUE(store->connection().run("UPDATE ledger SET version = 1").has_value());
    store.reset();
    auto again = LedgerStore::open(place);
    ASSERT_TRUE(again.has_value()) << again.error().message();
    EXPECT_TRUE((*again)->isNew()) << "it waits to be filled";
    EXPECT_NE((*again)->notice().find("older Borewright"), std::string::npos);
    EXPECT_EQ((*again)->count().value_or(-1), 0);
    EXPECT_THAT((*again)->folders().value(), ElementsAre("/shop/jobs"));
    EXPECT_TRUE((*again)->put(madeJob(2, "B. Example", "Rushmere 3", "RM-1")).has_value());
    again->reset();
    again = LedgerStore::open(place); // whoever only entered a save has not filled it
    ASSERT_TRUE(again.has_value()) << again.error().message();
    EXPECT_TRUE((*again)->isNew()) << "it waits still";
    ASSERT_TRUE((*again)->setFolders({"/shop/jobs"}).has_value());
    again->reset();
    again = LedgerStore::open(place);
    ASSERT_TRUE(again.has_value()) << again.error().message();
    EXPECT_FALSE((*again)->isNew());
    EXPECT_EQ((*again)->count().value_or(-1), 1);
}

INSTANTIATE_TEST_SUITE_P(On, Ledger, testing::Values(Kind::file, Kind::server), nameOfKind);

} // namespace
} // namespace borewright
