// SPDX-License-Identifier: GPL-3.0-or-later
// Where the ledger lies is kept in a file that is read strictly, and the desk's keyring where there
// is none.
#include "app/jobs/ledger_settings.h"

#include "app/shell/desk_keyring.h"
#include "core/storage/posix_file_system.h"

#include <QDir>
#include <QFile>
#include <QTemporaryDir>
#include <QTest>

#include <gtest/gtest.h>

namespace borewright {
namespace {

LedgerSettings inEveryField() {
    LedgerSettings settings;
    settings.kept = false;
    settings.onServer = true;
    settings.host = "bench-server";
    settings.port = 5433;
    settings.database = "jobs";
    settings.user = "anna";
    settings.password = LedgerSettings::Password::asked;
    settings.units = LedgerSettings::Units::metric;
    settings.waiting = QStringList{"/a.borebook", "/b.borebook"};
    return settings;
}

TEST(LedgerSettings, ComeBackAsTheyWereWritten) {
    const auto read = readLedgerSettings(writeLedgerSettings(inEveryField()));
    ASSERT_TRUE(read) << read.error().message();
    EXPECT_EQ(*read, inEveryField());
    EXPECT_EQ(readLedgerSettings(R"({"borewrightLedger": 1})").value(), LedgerSettings());
}

TEST(LedgerSettings, AreRefusedWithTheFieldThatIsWrong) {
    for (const auto& [bytes, field] : std::initializer_list<std::pair<const char*, const char*>>{
             {R"({"borewrightLedger": 1, "port": 0})", "port"},
             {R"({"borewrightLedger": 1, "port": 65536})", "port"},
             {R"({"borewrightLedger": 1, "port": "5432"})", "port"},
             {R"({"borewrightLedger": 1, "password": "secret"})", "password"},
             {R"({"borewrightLedger": 1, "kept": 1})", "kept"},
             {R"({"borewrightLedger": 1, "waiting": [1]})", "waiting"},
             {R"({"borewrightLedger": 1, "units": 3})", "units"},
             {R"({"port": 5432})", ""},
             {"{", ""}}) {
        const auto read = readLedgerSettings(bytes);
        ASSERT_FALSE(read.has_value()) << bytes;
        EXPECT_EQ(read.error().where, field) << bytes;
    }
}

TEST(LedgerSettings, ADamagedFileIsPutAsideAndSaid) {
    const QTemporaryDir folder;
    PosixFileSystem files;
    const QString path = folder.filePath("config/ledger.json");
    LedgerSettingsStore(files, path).set(inEveryField());
    EXPECT_EQ(LedgerSettingsStore(files, path).value(), inEveryField());
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly) && file.write("{") > 0);
    file.close();
    const LedgerSettingsStore store(files, path);
    EXPECT_EQ(store.value(), LedgerSettings());
    EXPECT_TRUE(store.notice().contains("ledger.json.damaged")) << store.notice().toStdString();
    EXPECT_TRUE(QFile::exists(path + ".damaged"));
}

// Without a desk there is no keyring, and QtKeychain must not put the secret anywhere else.
TEST(DeskKeyrings, WhereNoneRunsItIsSaidAndNothingIsKept) {
    const QByteArray bus = qgetenv("DBUS_SESSION_BUS_ADDRESS"), home = qgetenv("HOME");
    const QTemporaryDir empty;
    qunsetenv("DBUS_SESSION_BUS_ADDRESS");
    qputenv("HOME", empty.path().toUtf8());
    DeskKeyring keyring;
    std::string wrote, read;
    keyring.write("ledger test", "a secret", [&](const Result<void>& done) {
        wrote = done ? "kept" : done.error().message();
    });
    ASSERT_TRUE(QTest::qWaitFor([&] { return !wrote.empty(); }, 60'000));
    keyring.read("ledger test", [&](const Result<std::string>& found) {
        read = found ? "found" : found.error().message();
    });
    ASSERT_TRUE(QTest::qWaitFor([&] { return !read.empty(); }, 60'000));
    EXPECT_EQ(wrote, "no keyring runs on this desk");
    EXPECT_EQ(read, "no keyring runs on this desk");
    EXPECT_TRUE(QDir(empty.path()).isEmpty()) << "it was put somewhere";
    qputenv("HOME", home);
    if (!bus.isEmpty()) qputenv("DBUS_SESSION_BUS_ADDRESS", bus);
}

} // namespace
} // namespace borewright
