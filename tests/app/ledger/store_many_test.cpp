// SPDX-License-Identifier: GPL-3.0-or-later
// Many jobs: entered together, and found sorted without sorting them; on a file and on a server.
#include "app/ledger/ledger_connection.h"
#include "app/ledger/ledger_order.h"
#include "tests/app/ledger/store_support.h"

#include <QSqlQuery>

#include <gmock/gmock.h>

namespace borewright {
namespace {

using namespace test;
using testing::ElementsAre;

class ManyInLedger : public Ledger {};

TEST_P(ManyInLedger, ManyEnteredAtOnceStandAsIfEnteredOneByOne) {
    std::vector<JobEntry> jobs;
    for (int i = 0; i < 300; ++i)
        jobs.push_back(manyJobs(i));
    jobs[7].bores.clear();
    jobs[8].gauges.clear();
    jobs[8].stones.clear();
    ASSERT_TRUE(store->putAll(std::span(jobs).first(200)).has_value());
    for (std::size_t i = 100; i < jobs.size(); ++i) // half of them stand there already
        jobs[i].bores.push_back(madeJob(1, "", "", "").bores.front());
    const auto done = store->putAll(std::span(jobs).subspan(100));
    ASSERT_TRUE(done.has_value()) << done.error().message();
    EXPECT_EQ(store->count().value_or(-1), 300);
    for (const JobEntry& job : jobs) {
        const auto back = store->job(job.file);
        ASSERT_TRUE(back && *back) << job.file;
        EXPECT_TRUE(**back == job) << job.file;
    }
    EXPECT_TRUE(store->putAll({}).has_value());
}

TEST_P(ManyInLedger, OfAFileNamedTwiceAtOnceTheLaterStands) {
    const JobEntry earlier = madeJob(1, "A. Example", "Saltmarsh V6", "SM-1");
    JobEntry later = madeJob(1, "B. Example", "Rushmere 3", "RM-1");
    later.bores.pop_back();
    const std::vector<JobEntry> jobs{earlier, madeJob(2, "C. Example", "Thornwick", "T"), later};
    const auto done = store->putAll(jobs);
    ASSERT_TRUE(done.has_value()) << done.error().message();
    EXPECT_THAT(holding(""), ElementsAre("1", "2"));
    EXPECT_TRUE(*store->job(later.file).value() == later);
}

// Whatever the list is sorted by, its first rows are found without sorting all the others.
TEST_P(ManyInLedger, EverySortHasAnIndexForBothWays) {
    std::vector<JobEntry> jobs;
    for (int i = 0; i < 2000; ++i)
        jobs.push_back(manyJobs(i));
    ASSERT_TRUE(store->putAll(jobs) && store->settle());
    const bool server = GetParam() == Kind::server;
    for (int column = 0; column <= static_cast<int>(LedgerColumn::file); ++column)
        for (const bool descending : {false, true}) {
            const LedgerQuestion question{"", static_cast<LedgerColumn>(column), descending, 20, 0};
            QString plan;
            const auto told =
                store->connection().run(QString(server ? "EXPLAIN " : "EXPLAIN QUERY PLAN ") +
                                            "SELECT job.id FROM job WHERE job.search LIKE '%s%'" +
                                            orderOf("job", question, server) + " LIMIT 20",
                                        {}, [&](const QSqlQuery& row) {
                                            plan += row.value(server ? 0 : 3).toString() + u'\n';
                                        });
            ASSERT_TRUE(told.has_value()) << told.error().message();
            EXPECT_TRUE(plan.contains(server ? "using job_by_" : "USING COVERING INDEX job_by_"))
                << plan.toStdString();
            EXPECT_FALSE(plan.contains(server ? "Sort" : "TEMP B-TREE")) << plan.toStdString();
        }
}

INSTANTIATE_TEST_SUITE_P(On, ManyInLedger, testing::Values(Kind::file, Kind::server), nameOfKind);

} // namespace
} // namespace borewright
