// SPDX-License-Identifier: GPL-3.0-or-later
// Questions to the ledger wait for nobody, and only the latest of a kind is answered.
#include "app/jobs/ledger_clerk.h"

#include "tests/app/ledger/made_jobs.h"

#include <QSignalSpy>
#include <QTemporaryDir>
#include <QTest>

#include <gtest/gtest.h>

#include <semaphore>

namespace borewright {
namespace {

using namespace test;

class Clerk : public testing::Test {
protected:
    Clerk() { clerk.setAccess(LedgerAccess{{folder.filePath("l.sqlite").toStdString(), {}}, {}}); }
    void ask(int number, std::counting_semaphore<>* held = nullptr) {
        clerk.ask<int>(
            "list",
            [number, held, this](LedgerStore&) -> Result<int> {
                ++begun;
                if (held != nullptr) held->acquire();
                return number;
            },
            [this](const int& answer) { answers.push_back(answer); });
    }

    QTemporaryDir folder;
    std::counting_semaphore<> gate{0};
    std::atomic<int> begun = 0;
    std::vector<int> answers;
    LedgerClerk clerk;
};

TEST_F(Clerk, AnswersTheLatestAloneThoughAnEarlierOneIsStillUnderWay) {
    ask(1, &gate);
    ASSERT_TRUE(QTest::qWaitFor([&] { return begun == 1; }));
    for (int number = 2; number <= 50; ++number)
        ask(number);
    gate.release();
    ASSERT_TRUE(QTest::qWaitFor([&] { return !answers.empty(); }));
    QTest::qWait(50);
    EXPECT_EQ(answers, std::vector<int>{50}) << "an earlier answer was shown";
    EXPECT_EQ(begun, 2) << "what nobody waits for any more was still asked";
}

TEST_F(Clerk, ForgetsWhatIsAskedOfAnotherLedger) {
    ask(1, &gate);
    ASSERT_TRUE(QTest::qWaitFor([&] { return begun == 1; }));
    clerk.setAccess(LedgerAccess{{folder.filePath("other.sqlite").toStdString(), {}}, {}});
    gate.release();
    ask(2);
    ASSERT_TRUE(QTest::qWaitFor([&] { return !answers.empty(); }));
    EXPECT_EQ(answers, std::vector<int>{2});
}

TEST_F(Clerk, SaysWhyThereIsNoAnswerAndAsksAgain) {
    QSignalSpy refused(&clerk, &LedgerClerk::refused);
    clerk.setAccess(LedgerAccess{{{}, LedgerServer{"127.0.0.1", 1, "jobs", "anna"}}, {}});
    ask(1);
    ASSERT_TRUE(QTest::qWaitFor([&] { return refused.count() == 1; }, 10'000));
    EXPECT_EQ(refused[0][0].toString(), "list");
    EXPECT_TRUE(refused[0][1].toString().contains("nothing answers there"))
        << refused[0][1].toString().toStdString();
    clerk.setAccess(LedgerAccess{{folder.filePath("l.sqlite").toStdString(), {}}, {}});
    ask(2);
    EXPECT_TRUE(QTest::qWaitFor([&] { return !answers.empty(); }));
}

TEST_F(Clerk, WithoutALedgerNothingIsAsked) {
    clerk.setAccess({});
    ask(1);
    QTest::qWait(50);
    EXPECT_EQ(begun, 0);
}

} // namespace
} // namespace borewright
