// SPDX-License-Identifier: GPL-3.0-or-later
// The command line asks the ledger that the window has, unless another one is named.
#include "app/cli/cli.h"
#include "app/jobs/ledger_settings.h"
#include "app/ledger/ledger_store.h"
#include "app/shell/system_outside.h"
#include "core/storage/posix_file_system.h"
#include "tests/app/ledger/made_jobs.h"
#include "tests/app/ledger/postgres_server.h"

#include <QDir>
#include <QFile>
#include <QFileInfo>

#include <gtest/gtest.h>

#include <sstream>

namespace borewright {
namespace {

using namespace test;

class Standing final : public Clock {
public:
    [[nodiscard]] Timestamp now() const override { return {1'774'000'000, 60}; }
};

class UsualLedger : public testing::Test {
protected:
    ~UsualLedger() override { QFile::remove(ledgerSettingsPath()); }
    void keep(const std::string& settings) {
        ASSERT_TRUE(QDir().mkpath(QFileInfo(ledgerSettingsPath()).path()));
        QFile file(ledgerSettingsPath());
        ASSERT_TRUE(file.open(QIODevice::WriteOnly));
        file.write(settings.data(), static_cast<qint64>(settings.size()));
    }
    int list() { return runCommand({"ledger", "list"}, {files, clock, out, err}).value_or(-1); }

    PosixFileSystem files;
    Standing clock;
    std::ostringstream out, err;
};

TEST_F(UsualLedger, IsTheServerThatTheSettingsName) {
    const LedgerPlace place = PostgresServer::theOne().freshDatabase();
    ASSERT_EQ(PostgresServer::theOne().problem(), "");
    PostgresServer::theOne().usePasswordFile();
    ASSERT_TRUE((*LedgerStore::open(place))->put(madeJob(1, "Ash", "Saltmarsh V6", "SM-1")));
    LedgerSettings settings;
    settings.onServer = true;
    settings.host = "127.0.0.1";
    settings.port = place.server->port;
    settings.database = QString::fromStdString(place.server->database);
    settings.user = QString::fromStdString(place.server->user);
    keep(writeLedgerSettings(settings));
    EXPECT_EQ(list(), exitWithin) << err.str();
    EXPECT_NE(out.str().find("Saltmarsh V6"), std::string::npos) << out.str();
    settings.password = LedgerSettings::Password::asked;
    keep(writeLedgerSettings(settings));
    EXPECT_EQ(list(), exitWrong);
    EXPECT_NE(err.str().find("~/.pgpass"), std::string::npos) << err.str();
}

TEST_F(UsualLedger, IsRefusedWhereTheSettingsAreDamaged) {
    keep("{");
    EXPECT_EQ(list(), exitWrong);
    EXPECT_NE(err.str().find("ledger.json"), std::string::npos) << err.str();
    EXPECT_TRUE(QFile::exists(ledgerSettingsPath())) << "reading it changes nothing";
}

} // namespace
} // namespace borewright
