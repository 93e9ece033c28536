// SPDX-License-Identifier: GPL-3.0-or-later
// The program's own ledger keeps up with what is saved; where it cannot, the bench goes on and the
// ledger catches up, at the next start if need be.
#include "tests/app/ledger/ledger_desk_support.h"
#include "tests/app/ledger/postgres_server.h"

#include <QDir>
#include <QElapsedTimer>
#include <QSignalSpy>

namespace borewright {
namespace {

using namespace test;
using Password = LedgerSettings::Password;

// Nothing listens on port 1.
LedgerSettings unreachable() {
    LedgerSettings settings;
    settings.onServer = true;
    settings.host = "127.0.0.1";
    settings.port = 1;
    settings.database = "jobs";
    settings.user = "anna";
    return settings;
}

LedgerSettings settingsOf(const LedgerPlace& place, Password password) {
    LedgerSettings settings;
    settings.onServer = true;
    settings.host = QString::fromStdString(place.server->host);
    settings.port = place.server->port;
    settings.database = QString::fromStdString(place.server->database);
    settings.user = QString::fromStdString(place.server->user);
    settings.password = password;
    return settings;
}

TEST_F(LedgerDeskTest, WhatIsSavedEntersAMomentLaterAndOnceForABurst) {
    start();
    QSignalSpy entered(desk.get(), &LedgerDesk::entered);
    desk->setDelay(std::chrono::milliseconds(300));
    const QString file = write("a.borebook", "Ash");
    for (int i = 0; i < 20; ++i)
        desk->saved(file);
    EXPECT_FALSE(QFile::exists(path("data/ledger.sqlite"))) << "the bench waits for no database";
    EXPECT_TRUE(comesTo("Ash")) << customers();
    QTest::qWait(400);
    EXPECT_EQ(entered.count(), 1);
    EXPECT_EQ(desk->word(), "");
}

TEST_F(LedgerDeskTest, AnInventedDemonstrationIsLeftOut) {
    start();
    desk->saved(write("demo.borebook", "Nobody", true));
    desk->saved(write("real.borebook", "Birch"));
    EXPECT_TRUE(comesTo("Birch")) << customers();
}

TEST_F(LedgerDeskTest, WhereNoLedgerIsWantedNothingIsMade) {
    LedgerSettings off;
    off.kept = false;
    start(off);
    desk->saved(write("a.borebook", "Ash"));
    QTest::qWait(200);
    desk.reset();
    EXPECT_FALSE(QFile::exists(path("data")));
}

TEST_F(LedgerDeskTest, WhatWaitsWhenTheProgramEndsIsEnteredBeforeItIsGone) {
    start();
    desk->setDelay(std::chrono::hours(1));
    desk->saved(write("a.borebook", "Ash"));
    desk.reset();
    EXPECT_EQ(customers(), "Ash");
    EXPECT_TRUE(settings->value().waiting.isEmpty());
}

TEST_F(LedgerDeskTest, WithoutItsServerTheBenchGoesOnAndTheNextStartCatchesUp) {
    start(unreachable());
    const QString file = write("a.borebook", "Ash");
    QElapsedTimer took;
    took.start();
    desk->saved(file);
    EXPECT_LT(took.elapsed(), 50) << "the bench waited";
    ASSERT_TRUE(QTest::qWaitFor([&] { return desk->word() == "Ledger: 1 to enter"; }, 20'000))
        << desk->word().toStdString();
    EXPECT_TRUE(desk->whyWaiting().contains("nothing answers there"))
        << desk->whyWaiting().toStdString();
    took.start();
    desk.reset();
    EXPECT_LT(took.elapsed(), 7000);
    EXPECT_EQ(settings->value().waiting, QStringList{file});
    LedgerSettings here = settings->value();
    here.onServer = false;
    settings->set(here);
    start(here);
    EXPECT_TRUE(comesTo("Ash")) << customers();
    desk.reset();
    EXPECT_TRUE(settings->value().waiting.isEmpty());
}

TEST_F(LedgerDeskTest, AnotherPlaceTakesWhatWaitsWithoutHoldingTheWindow) {
    start(unreachable());
    desk->saved(write("a.borebook", "Ash"));
    ASSERT_TRUE(QTest::qWaitFor([&] { return !desk->word().isEmpty(); }, 20'000));
    LedgerSettings here;
    QElapsedTimer took;
    took.start();
    settings->set(here);
    EXPECT_LT(took.elapsed(), 50);
    EXPECT_TRUE(comesTo("Ash")) << customers();
    EXPECT_EQ(desk->word(), "");
}

TEST_F(LedgerDeskTest, APasswordComesFromTheKeyringOrIsAskedForByAWord) {
    PostgresServer& server = PostgresServer::theOne();
    const LedgerPlace place = server.freshDatabase();
    ASSERT_EQ(server.problem(), "");
    keyring.secrets[LedgerDesk::secretName(*place.server)] = server.password();
    start(settingsOf(place, Password::keyring));
    EXPECT_FALSE(desk->access().has_value()) << "it has not answered yet";
    ASSERT_TRUE(QTest::qWaitFor([&] { return desk->access().has_value(); }));
    EXPECT_EQ(desk->access()->password, server.password());
    keyring.problem = "no keyring runs on this desk";
    start(settingsOf(place, Password::keyring));
    ASSERT_TRUE(QTest::qWaitFor([&] { return desk->wantsPassword(); }));
    EXPECT_EQ(desk->word(), "Ledger: password wanted");
    EXPECT_TRUE(desk->whyNot().contains("no keyring runs on this desk"))
        << desk->whyNot().toStdString();
    desk->saved(write("a.borebook", "Ash"));
    QTest::qWait(100);
    desk->givePassword(QString::fromStdString(server.password()));
    const LedgerAccess access{place, server.password()};
    EXPECT_TRUE(QTest::qWaitFor([&] { return customersIn(access) == "Ash"; }, 20'000))
        << customersIn(access);
    EXPECT_EQ(desk->word(), "");
}

// Every file below a folder that holds these bytes.
QStringList filesHolding(const QString& folder, const std::string& bytes) {
    QStringList found;
    for (const QFileInfo& one :
         QDir(folder).entryInfoList(QDir::AllEntries | QDir::Hidden | QDir::NoDotAndDotDot)) {
        if (one.isDir()) {
            found += filesHolding(one.filePath(), bytes);
            continue;
        }
        QFile file(one.filePath());
        if (file.open(QIODevice::ReadOnly) && file.readAll().contains(bytes.c_str()))
            found += one.filePath();
    }
    return found;
}

TEST_F(LedgerDeskTest, NoFileOfOursEverHoldsAPassword) {
    PostgresServer& server = PostgresServer::theOne();
    const LedgerPlace place = server.freshDatabase();
    ASSERT_EQ(server.problem(), "");
    qputenv("PGPASSFILE", path("no-such-file").toUtf8()); // else it would come in without us
    for (const Password from : {Password::keyring, Password::asked}) {
        start(settingsOf(place, from));
        desk->givePassword(QString::fromStdString(server.password()));
        desk->saved(write("a.borebook", "Ash"));
        const LedgerAccess access{place, server.password()};
        ASSERT_TRUE(QTest::qWaitFor([&] { return customersIn(access) == "Ash"; }, 20'000))
            << customersIn(access);
        desk.reset();
        EXPECT_TRUE(QFile::exists(path("config/ledger.json")));
        EXPECT_EQ(filesHolding(folder.path(), server.password()), QStringList());
    }
    server.usePasswordFile();
    EXPECT_EQ(filesHolding(folder.path(), "bench").size(), 1)
        << "the user's name is there, so this search finds what is there";
}

} // namespace
} // namespace borewright
