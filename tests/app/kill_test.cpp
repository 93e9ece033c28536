// SPDX-License-Identifier: GPL-3.0-or-later
// Kills while typing: what was shown as saved is in the file, which opens. Fifty, or as many as
// BOREWRIGHT_KILLS says.
#include "core/storage/posix_file_system.h"
#include "core/storage/workbook_file.h"
#include "tests/app/robot.h"
#include "tests/app/typist.h"

#include <QCoreApplication>
#include <QElapsedTimer>
#include <QProcess>
#include <QTemporaryDir>

#include <gtest/gtest.h>

#include <random>

namespace borewright {
namespace {

struct Killed {
    QString path;
    int shownAsSaved = -1; // readings in the last "saved"
};

// Starts the robot, lets it type for `ms` after its first "saved", kills it.
Killed typeAndKill(const QString& folder, int ms) {
    QProcess robot;
    QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
    environment.insert(test::robotVariable, folder);
    robot.setProcessEnvironment(environment);
    robot.start(QCoreApplication::applicationFilePath(), QStringList());
    QByteArray told;
    QElapsedTimer clock;
    clock.start();
    while (!told.contains("saved ") && clock.elapsed() < 30'000 && robot.waitForReadyRead(30'000))
        told += robot.readAllStandardOutput();
    clock.restart();
    while (clock.elapsed() < ms)
        if (robot.waitForReadyRead(ms - static_cast<int>(clock.elapsed())))
            told += robot.readAllStandardOutput();
    EXPECT_EQ(robot.state(), QProcess::Running)
        << "the robot stopped by itself with " << robot.exitCode() << ": "
        << robot.readAllStandardError().toStdString();
    robot.kill(); // SIGKILL: nothing of the program runs after it
    robot.waitForFinished();
    told += robot.readAllStandardOutput();

    Killed killed;
    for (const QByteArray& line : told.split('\n')) {
        if (line.startsWith("path ")) killed.path = QString::fromUtf8(line.mid(5));
        // The last line may be cut off by the kill; it then lacks its end and is not "shown".
        if (line.startsWith("saved ")) killed.shownAsSaved = line.mid(6).toInt();
    }
    if (!told.endsWith('\n')) {
        const auto whole = told.left(told.lastIndexOf('\n'));
        const auto last = whole.lastIndexOf("saved ");
        killed.shownAsSaved = last < 0 ? -1 : whole.mid(last + 6).split('\n').first().toInt();
    }
    return killed;
}

int killsAsked() {
    return std::max(qEnvironmentVariableIntValue("BOREWRIGHT_KILLS"), 50);
}

TEST(Kill, FiftyKillsWhileTypingLoseNothingThatWasShownAsSaved) {
    const int kills = killsAsked();
    std::mt19937 random(20'260'314);
    std::uniform_int_distribution<int> pause(0, 400);
    PosixFileSystem files;
    int readings = 0;
    for (int kill = 0; kill < kills; ++kill) {
        QTemporaryDir folder;
        ASSERT_TRUE(folder.isValid());
        const Killed killed = typeAndKill(folder.path(), pause(random));
        ASSERT_GE(killed.shownAsSaved, 0) << "kill " << kill << ": nothing was ever saved";
        const auto workbook = loadWorkbook(files, killed.path.toStdString());
        ASSERT_TRUE(workbook) << "kill " << kill << ": " << workbook.error().message();
        const auto& kept = workbook->surveys.at(0).readings;
        ASSERT_GE(static_cast<int>(kept.size()), killed.shownAsSaved)
            << "kill " << kill << ": readings shown as saved are lost";
        for (std::size_t i = 0; i < kept.size(); ++i)
            EXPECT_EQ(kept[i].typed.text(), test::robotText(i)) << "kill " << kill;
        readings += killed.shownAsSaved;
    }
    printf("%d kills while typing: %d readings had been shown as saved, 0 lost\n", kills, readings);
    EXPECT_GT(readings, 10 * kills) << "the robot hardly typed: this proves nothing";
}

} // namespace
} // namespace borewright
