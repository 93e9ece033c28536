// SPDX-License-Identifier: GPL-3.0-or-later
// A keyring that really runs, on a desk of its own without a screen: what is put in comes back, and
// what cannot be had is said at once.
#include <QDir>
#include <QProcess>
#include <QTemporaryDir>

#include <gtest/gtest.h>

namespace borewright {
namespace {

class RealKeyring : public testing::Test {
protected:
    RealKeyring() {
        for (const char* name : {"home", "data", "run"})
            EXPECT_TRUE(QDir().mkpath(desk.filePath(name)));
        QFile::setPermissions(desk.filePath("run"),
                              QFile::ReadOwner | QFile::WriteOwner | QFile::ExeOwner);
    }
    // What these lines of a shell print, on a desk with a message bus and nothing else. `keyring`
    // is this runner's own use of it.
    std::string onDesk(const QString& lines) const {
        QProcessEnvironment own = QProcessEnvironment::systemEnvironment();
        for (const char* name : {"DISPLAY", "WAYLAND_DISPLAY", "DBUS_SESSION_BUS_ADDRESS"})
            own.remove(name);
        own.insert("HOME", desk.filePath("home"));
        own.insert("XDG_DATA_HOME", desk.filePath("data"));
        own.insert("XDG_RUNTIME_DIR", desk.filePath("run"));
        own.insert("LC_ALL", "C.UTF-8");
        own.insert("RUNNER", QFileInfo("/proc/self/exe").symLinkTarget());
        QProcess shell;
        shell.setProcessEnvironment(own);
        shell.start("dbus-run-session",
                    {"--", "sh", "-c", "keyring() { \"$RUNNER\" --keyring \"$@\"; }\n" + lines});
        EXPECT_TRUE(shell.waitForFinished(60'000)) << shell.errorString().toStdString();
        EXPECT_EQ(shell.exitCode(), 0) << shell.readAllStandardError().toStdString();
        return shell.readAllStandardOutput().trimmed().toStdString();
    }
    static inline const QString unlocked =
        "printf word | gnome-keyring-daemon --unlock --components=secrets >/dev/null\n";

    QTemporaryDir desk;
};

TEST_F(RealKeyring, GivesBackWhatWasPutInAndForgets) {
    EXPECT_EQ(onDesk(unlocked + "keyring read 'ledger anna@shop:5432/jobs'\n"
                                "keyring write 'ledger anna@shop:5432/jobs' 's3cret ü'\n"
                                "keyring read 'ledger anna@shop:5432/jobs'\n"
                                "keyring write 'ledger anna@shop:5432/jobs' another\n"
                                "keyring read 'ledger anna@shop:5432/jobs'\n"
                                "keyring read 'ledger anna@shop:5432/other'\n"
                                "keyring forget 'ledger anna@shop:5432/jobs'\n"
                                "keyring forget 'ledger anna@shop:5432/jobs'\n"
                                "keyring read 'ledger anna@shop:5432/jobs'\n"),
              "refused: the keyring has no password for it, or stays locked\n"
              "done\n"
              "s3cret ü\n"
              "done\n"
              "another\n"
              "refused: the keyring has no password for it, or stays locked\n"
              "done\n"
              "done\n"
              "refused: the keyring has no password for it, or stays locked");
}

TEST_F(RealKeyring, LockedItSaysSoAndDoesNotWait) {
    EXPECT_EQ(onDesk(unlocked +
                     "keyring write ledger first\n"
                     "dbus-send --session --print-reply --dest=org.freedesktop.secrets "
                     "/org/freedesktop/secrets org.freedesktop.Secret.Service.Lock "
                     "array:objpath:/org/freedesktop/secrets/collection/login >/dev/null\n"
                     "keyring read ledger\n"
                     "keyring write ledger second\n"),
              "done\n"
              "refused: the keyring has no password for it, or stays locked\n"
              "refused: the keyring stays locked");
}

TEST_F(RealKeyring, WhatWasPutInIsThereAtTheNextLogin) {
    EXPECT_EQ(onDesk(unlocked + "keyring write ledger first\n"), "done");
    EXPECT_EQ(onDesk(unlocked + "keyring read ledger\n"), "first");
}

} // namespace
} // namespace borewright
