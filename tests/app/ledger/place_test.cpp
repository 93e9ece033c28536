// SPDX-License-Identifier: GPL-3.0-or-later
// Where a ledger may lie, and what becomes of one that cannot be used.
#include "app/ledger/ledger_connection.h"
#include "app/ledger/ledger_fold.h"
#include "app/ledger/ledger_store.h"
#include "tests/app/ledger/made_jobs.h"
#include "tests/app/ledger/postgres_server.h"

#include <gtest/gtest.h>

#include <QElapsedTimer>
#include <QFile>

namespace borewright {
namespace {

using namespace test;

TEST(LedgerPlaces, AreReadFromAFileNameOrAnAddress) {
    EXPECT_EQ(ledgerPlaceFrom("/a/b.sqlite").value().file, "/a/b.sqlite");
    const auto server = ledgerPlaceFrom("postgresql://anna@bench-server:5433/jobs");
    ASSERT_TRUE(server.has_value()) << server.error().message();
    EXPECT_EQ(*server->server, (LedgerServer{"bench-server", 5433, "jobs", "anna"}));
    EXPECT_EQ(ledgerPlaceFrom("postgresql://anna@h/jobs").value().server->port, 5432);
    for (const char* wrong : {"", "postgresql://anna:secret@h/jobs", "postgresql://h/jobs",
                              "postgresql://anna@h", "postgresql://anna@h:99999/jobs"})
        EXPECT_FALSE(ledgerPlaceFrom(wrong).has_value()) << wrong;
}

TEST(LedgerPlaces, OnlyThisMachineIsReachedWithoutTls) {
    const auto options = [](const std::string& host) {
        return connectOptions({host, 5432, "jobs", "anna"});
    };
    for (const char* host : {"", "localhost", "127.0.0.1", "::1", "/run/postgresql"})
        EXPECT_NE(options(host).find("sslmode=prefer"), std::string::npos) << host;
    for (const char* host : {"bench-server", "192.0.2.7", "127.example", "127.0.0.1.example"})
        EXPECT_NE(options(host).find("sslmode=require"), std::string::npos) << host;
}

// 0.0.0.0 reaches this machine by a name that the ledger cannot know to be it; the server has no
// TLS.
TEST(LedgerPlaces, AServerWithoutTlsIsRefusedOnAnyOtherHost) {
    PostgresServer& server = PostgresServer::theOne();
    const LedgerPlace place = server.freshDatabase();
    ASSERT_EQ(server.problem(), "");
    const auto opened = LedgerStore::open(server.at(place, "0.0.0.0"));
    ASSERT_FALSE(opened.has_value()) << "readings of a customer went over the wire in clear";
    EXPECT_NE(opened.error().message().find("SSL"), std::string::npos) << opened.error().message();
}

TEST(LedgerPlaces, AServerThatIsNotThereIsSaidAtOnce) {
    QElapsedTimer took;
    took.start();
    const auto opened = LedgerStore::open({{}, LedgerServer{"127.0.0.1", 1, "jobs", "anna"}});
    ASSERT_FALSE(opened.has_value());
    EXPECT_LT(took.elapsed(), 6000);
    EXPECT_NE(opened.error().message().find("on this machine"), std::string::npos);
}

TEST(LedgerPlaces, AServerThatStopsFailsWithWordsAndIsFoundAgain) {
    PostgresServer& server = PostgresServer::theOne();
    const LedgerPlace place = server.freshDatabase();
    ASSERT_EQ(server.problem(), "");
    auto store = LedgerStore::open(place);
    ASSERT_TRUE(store.has_value()) << store.error().message();
    ASSERT_TRUE((*store)->put(madeJob(1, "A. Example", "Saltmarsh V6", "SM-1")).has_value());
    server.kill();
    QElapsedTimer took;
    took.start();
    EXPECT_FALSE((*store)->put(madeJob(2, "B. Example", "Rushmere 3", "RM-1")).has_value());
    EXPECT_FALSE((*store)->find({}).has_value());
    EXPECT_LT(took.elapsed(), 6000) << "nobody may wait for a server that is gone";
    server.startAgain();
    ASSERT_EQ(server.problem(), "");
    auto again = LedgerStore::open(place);
    ASSERT_TRUE(again.has_value()) << again.error().message();
    EXPECT_TRUE((*again)->put(madeJob(2, "B. Example", "Rushmere 3", "RM-1")).has_value());
    EXPECT_EQ((*again)->count().value_or(-1), 2);
}

TEST(LedgerPlaces, AServersLedgerOfANewerVersionIsRefusedAndLeft) {
    PostgresServer& server = PostgresServer::theOne();
    const LedgerPlace place = server.freshDatabase();
    ASSERT_EQ(server.problem(), "");
    ASSERT_TRUE(
        (*LedgerStore::open(place))->connection().run("UPDATE ledger SET version = version + 1"));
    const auto opened = LedgerStore::open(place);
    ASSERT_FALSE(opened.has_value());
    EXPECT_NE(opened.error().message().find("newer Borewright"), std::string::npos)
        << opened.error().message();
}

class LedgerFile : public testing::Test {
protected:
    LedgerFile() {
        auto store = LedgerStore::open({path(), {}});
        for (int i = 0; i < 200; ++i)
            EXPECT_TRUE((*store)->put(manyJobs(i)).has_value());
    }
    [[nodiscard]] std::string path(const char* name = "ledger.sqlite") const {
        return folder.filePath(name).toStdString();
    }
    void overwrite(qint64 at, const QByteArray& bytes) const {
        QFile file(QString::fromStdString(path()));
        ASSERT_TRUE(file.open(QIODevice::ReadWrite));
        file.seek(at);
        file.write(bytes);
    }
    void expectSetAside(const std::string& why) const {
        auto store = LedgerStore::open({path(), {}});
        ASSERT_TRUE(store.has_value()) << store.error().message();
        EXPECT_TRUE((*store)->isNew());
        EXPECT_NE((*store)->notice().find(why), std::string::npos) << (*store)->notice();
        EXPECT_EQ((*store)->count().value_or(-1), 0);
        EXPECT_TRUE((*store)->put(manyJobs(1)).has_value());
        EXPECT_TRUE(QFile::exists(QString::fromStdString(path("ledger.sqlite.aside-1"))));
    }

    QTemporaryDir folder;
};

TEST_F(LedgerFile, DamagedAtItsBeginningIsSetAside) {
    overwrite(0, QByteArray(4096, 'x'));
    expectSetAside("was damaged");
}

TEST_F(LedgerFile, CutShortIsSetAside) {
    QFile::resize(QString::fromStdString(path()), 5000);
    expectSetAside("was damaged");
}

TEST_F(LedgerFile, OfANewerVersionIsSetAside) {
    ASSERT_TRUE((*LedgerStore::open({path(), {}}))
                    ->connection()
                    .run("UPDATE ledger SET version = version + 1"));
    expectSetAside("newer Borewright");
}

TEST_F(LedgerFile, DamagedInTheMiddleIsSaidAndRebuildingSetsItAside) {
    ASSERT_TRUE((*LedgerStore::open({path(), {}}))->setFolders({"/shop/jobs"}).has_value());
    const qint64 size = QFile(QString::fromStdString(path())).size();
    for (qint64 at = size / 2 / 4096 * 4096; at < size; at += 4096)
        overwrite(at, QByteArray(4096, '\xee'));
    {
        auto store = LedgerStore::open({path(), {}});
        ASSERT_TRUE(store.has_value()) << store.error().message();
        const auto rows = (*store)->find({"", LedgerColumn::customer, true, -1});
        ASSERT_FALSE(rows.has_value()) << "half of the file is gone";
        EXPECT_NE(rows.error().message().find("damaged"), std::string::npos)
            << rows.error().message();
    }
    auto store = LedgerStore::open({path(), {}}, LedgerStore::Check::whole);
    ASSERT_TRUE(store.has_value()) << store.error().message();
    EXPECT_NE((*store)->notice().find("was damaged"), std::string::npos);
    EXPECT_EQ((*store)->folders().value(), std::vector<std::string>{"/shop/jobs"})
        << "what it was made from is at the beginning of the file and can be read";
}

TEST_F(LedgerFile, AnythingElseNamedByMistakeStaysAsItIs) {
    QFile other(QString::fromStdString(path("job.borebook")));
    ASSERT_TRUE(other.open(QIODevice::WriteOnly) && other.write("{\"format\": 1}") > 0);
    other.close();
    EXPECT_FALSE(LedgerStore::open({path("job.borebook"), {}}).has_value());
    ASSERT_TRUE(other.open(QIODevice::ReadOnly));
    EXPECT_EQ(other.readAll(), "{\"format\": 1}");
}

TEST_F(LedgerFile, ADatabaseOfSomethingElseIsRefusedAndLeft) {
    {
        auto other = LedgerConnection::open({path("other.sqlite"), {}});
        ASSERT_TRUE((*other)->run("CREATE TABLE recipes (name TEXT)"));
    }
    EXPECT_FALSE(LedgerStore::open({path("other.sqlite"), {}}).has_value());
    EXPECT_FALSE(QFile::exists(QString::fromStdString(path("other.sqlite.aside-1"))));
}

TEST_F(LedgerFile, InAFolderThatCannotBeMadeIsRefused) {
    EXPECT_FALSE(LedgerStore::open({path() + "/below/a/file.sqlite", {}}).has_value());
}

TEST(LedgerFold, TakesCaseAccentsAndSpacesOff) {
    EXPECT_EQ(folded(QStringLiteral("  Łódź ÆRØ Straße\n\tÉtalon ")), "lodz aero strasse etalon");
    EXPECT_EQ(holding(QStringLiteral("5%_!")), "%5!%!_!!%");
    EXPECT_EQ(searchWords(QStringLiteral("a b c d e f g h i j")).size(), 8);
}

} // namespace
} // namespace borewright
