// SPDX-License-Identifier: GPL-3.0-or-later
// What is saved at the bench comes into the ledger, and the bench never waits for it.
#include "app/ledger/ledger_keeper.h"

#include "app/ledger/ledger_store.h"
#include "core/storage/posix_file_system.h"
#include "core/storage/workbook_file.h"
#include "tests/app/ledger/postgres_server.h"
#include "tests/support/blocks.h"

#include <gtest/gtest.h>

#include <QElapsedTimer>
#include <QFile>

namespace borewright {
namespace {

using namespace std::chrono_literals;
using namespace test;

class Keeper : public testing::Test {
protected:
    std::string write(const char* name, const std::string& customer) const {
        Workbook workbook = inchBlock(1);
        workbook.job.customer = customer;
        const std::string bytes = writeWorkbook(workbook);
        QFile file(folder.filePath(name));
        EXPECT_TRUE(file.open(QIODevice::WriteOnly));
        file.write(bytes.data(), static_cast<qint64>(bytes.size()));
        return file.fileName().toStdString();
    }
    static std::string customerOf(const LedgerPlace& place, const std::string& file) {
        auto store = LedgerStore::open(place);
        if (!store) return store.error().message();
        const auto job = (*store)->job(file);
        if (!job) return job.error().message();
        return *job ? (*job)->customer : "not there";
    }

    QTemporaryDir folder;
    PosixFileSystem files;
};

TEST_F(Keeper, EntersWhatWasSavedAsItIsOnTheDisk) {
    const LedgerPlace place{folder.filePath("ledger.sqlite").toStdString(), {}};
    LedgerKeeper keeper({place, {}}, files);
    const std::string file = write("a.borebook", "Ash");
    keeper.saved(file);
    ASSERT_TRUE(keeper.settle(20s)) << keeper.state().problem;
    EXPECT_EQ(customerOf(place, file), "Ash");
    write("a.borebook", "Birch");
    keeper.saved(file);
    ASSERT_TRUE(keeper.settle(20s)) << keeper.state().problem;
    EXPECT_EQ(customerOf(place, file), "Birch");
}

TEST_F(Keeper, AFileThatIsOpenedIsEnteredAnewWhereTheLedgerHasItOtherwise) {
    const LedgerPlace place{folder.filePath("ledger.sqlite").toStdString(), {}};
    const std::string known = write("a.borebook", "Ash");
    const std::string unknown = write("b.borebook", "Birch");
    LedgerKeeper keeper({place, {}}, files);
    keeper.opened(known);
    ASSERT_TRUE(keeper.settle(20s));
    EXPECT_FALSE(files.facts(place.file)) << "no ledger is made only to look something up";
    keeper.saved(known);
    ASSERT_TRUE(keeper.settle(20s)) << keeper.state().problem;
    keeper.opened(known);
    keeper.opened(unknown);
    ASSERT_TRUE(keeper.settle(20s));
    EXPECT_EQ(keeper.state().entered, 1U) << "the ledger has it as it is";
    EXPECT_EQ(customerOf(place, unknown), "not there");
    write("a.borebook", "Cedar");
    keeper.opened(known);
    ASSERT_TRUE(keeper.settle(20s));
    EXPECT_EQ(keeper.state().entered, 2U);
    EXPECT_EQ(customerOf(place, known), "Cedar");
}

TEST_F(Keeper, AFileThatIsOpenedWhileTheServerIsGoneIsNotWaitedFor) {
    LedgerKeeper keeper({{{}, LedgerServer{"127.0.0.1", 1, "jobs", "anna"}}, {}}, files);
    keeper.opened(write("a.borebook", "Ash"));
    EXPECT_TRUE(keeper.settle(20s));
    EXPECT_EQ(keeper.state().problem, "");
    EXPECT_TRUE(keeper.state().waiting.empty());
}

TEST_F(Keeper, AFileThatIsGoneHoldsNothingUp) {
    LedgerKeeper keeper({{folder.filePath("ledger.sqlite").toStdString(), {}}, {}}, files);
    keeper.saved("/nowhere/gone.borebook");
    EXPECT_TRUE(keeper.settle(20s)) << keeper.state().problem;
}

TEST_F(Keeper, ALostServerNeverHoldsTheBenchAndIsCaughtUpWith) {
    PostgresServer& server = PostgresServer::theOne();
    const LedgerPlace place = server.freshDatabase();
    ASSERT_EQ(server.problem(), "");
    LedgerKeeper keeper({place, {}}, files, 100ms);
    const std::string first = write("a.borebook", "Ash");
    keeper.saved(first);
    ASSERT_TRUE(keeper.settle(20s)) << keeper.state().problem;
    server.kill();
    const std::string second = write("b.borebook", "Birch");
    write("a.borebook", "Cedar");
    QElapsedTimer took;
    took.start();
    keeper.saved(first);
    keeper.saved(second);
    EXPECT_LT(took.elapsed(), 50) << "the bench waited for the ledger";
    EXPECT_FALSE(keeper.settle(500ms)) << "the server is gone";
    EXPECT_EQ(keeper.state().waiting, (std::vector<std::string>{first, second}));
    EXPECT_NE(keeper.state().problem, "");
    server.startAgain();
    ASSERT_EQ(server.problem(), "");
    ASSERT_TRUE(keeper.settle(30s)) << keeper.state().problem;
    EXPECT_EQ(keeper.state().problem, "");
    EXPECT_EQ(customerOf(place, first), "Cedar");
    EXPECT_EQ(customerOf(place, second), "Birch");
}

TEST_F(Keeper, EndsAtOnceWhileTheServerIsGone) {
    QElapsedTimer took;
    {
        LedgerKeeper keeper({{{}, LedgerServer{"127.0.0.1", 1, "jobs", "anna"}}, {}}, files);
        keeper.saved(write("a.borebook", "Ash"));
        EXPECT_FALSE(keeper.settle(300ms));
        took.start();
    }
    EXPECT_LT(took.elapsed(), 6000);
}

} // namespace
} // namespace borewright
