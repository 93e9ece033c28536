// SPDX-License-Identifier: GPL-3.0-or-later
// The real program on disks that fail, dawdle or are full: a child process does the work and
// prints what it found.
#include "tests/app/bad_disk.h"

#include <QCoreApplication>
#include <QDir>
#include <QProcess>
#include <QRegularExpression>
#include <QTemporaryDir>

#include <gtest/gtest.h>

namespace borewright {
namespace {

// What the child printed; its words are told where it ended badly.
QString workIn(const QString& kind, bool shim) {
    const QTemporaryDir folder;
    const QString disk = folder.filePath("disk");
    QDir().mkpath(disk);
    QProcess child;
    QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
    environment.insert(test::badDiskVariable, kind + ':' + disk);
    if (shim) {
        environment.insert("LD_PRELOAD", BOREWRIGHT_DISK_SHIM);
        environment.insert("ASAN_OPTIONS", "verify_asan_link_order=0");
    }
    child.setProcessEnvironment(environment);
    child.start(QCoreApplication::applicationFilePath(), QStringList());
    EXPECT_TRUE(child.waitForFinished(300'000)) << "the program hangs on a bad disk";
    EXPECT_EQ(child.exitStatus(), QProcess::NormalExit) << "the program crashed on a bad disk";
    EXPECT_EQ(child.exitCode(), 0) << child.readAllStandardError().toStdString();
    const QString told = QString::fromUtf8(child.readAllStandardOutput());
    std::printf("%s", qPrintable(told));
    return told;
}

// The number behind a word; -1 where it is not there.
int figure(const QString& text, const QString& word) {
    const QRegularExpression pattern("\\b" + word + " (\\d+)");
    const auto match = pattern.match(text);
    return match.hasMatch() ? match.captured(1).toInt() : -1;
}

TEST(BadDisk, EachCallOfTheSystemFailingNeverDamagesNorShowsAFalseSaved) {
    const QString told = workIn("faults", true);
    EXPECT_GE(figure(told, "cases"), 500);
    EXPECT_EQ(figure(told, "false"), 0) << "shown as saved or rescued, but it is not";
    EXPECT_EQ(figure(told, "damaged"), 0);
    EXPECT_EQ(figure(told, "unhealed"), 0) << "not saved though the disk works again";
    EXPECT_GT(figure(told, "told"), 100) << "the disk hardly failed: this proves nothing";
    EXPECT_EQ(figure(told, "rescued"), figure(told, "told")) << "a failed save without its copy";
    EXPECT_GT(figure(told, "saved"), 50);
}

TEST(BadDisk, AShareThatInterruptsForEverIsToldInsteadOfWaitedForWithoutEnd) {
    const QString told = workIn("interrupted", true);
    EXPECT_GT(figure(told, "told"), 20);
    EXPECT_EQ(figure(told, "unhealed"), 0) << "the saver never came back";
    EXPECT_EQ(figure(told, "damaged"), 0);
}

TEST(BadDisk, TheWindowIsNeverFrozenByADiskThatTakesTwoSeconds) {
    const QString told = workIn("slow", true);
    int runs = 0;
    for (const QString& line : told.split('\n')) {
        if (!line.startsWith("worst ")) continue;
        ++runs;
        EXPECT_LT(line.mid(6).toDouble(), 100.0) << "ms that the window stood still";
    }
    EXPECT_EQ(runs, 2);
    EXPECT_GT(figure(told, "readings"), 50) << "hardly anything was typed";
    EXPECT_EQ(figure(told, "held"), 1) << "what was typed is not in the file afterwards";
}

TEST(BadDisk, OpeningAndClosingNeverHoldTheWindow) {
    const QString told = workIn("opening", true);
    int runs = 0;
    for (const QString& line : told.split('\n')) {
        if (!line.startsWith("worst ")) continue;
        ++runs;
        EXPECT_LT(line.mid(6).toDouble(), 150.0) << "ms that the window stood still";
    }
    EXPECT_EQ(runs, 2);
    EXPECT_EQ(told.count("opened 1"), 2) << "what was saved was not left for another";
}

TEST(BadDisk, TwoHundredLevelsOfANearlyFullDiskForAllThatIsWritten) {
    const QString told = workIn("small", false);
    const bool mounted = told.startsWith("mounted");
    if (!mounted)
        std::printf("nobody may mount here: the disk was never full, see Saver.EveryLevel…\n");
    EXPECT_EQ(figure(told, "levels"), 200);
    int outputs = 0;
    for (const QString& line : told.split('\n')) {
        if (!line.contains(" saved ")) continue;
        ++outputs;
        EXPECT_EQ(figure(line, "saved") + figure(line, "told"), 200) << line.toStdString();
        EXPECT_EQ(figure(line, "false"), 0) << line.toStdString();
        EXPECT_EQ(figure(line, "damaged"), 0) << line.toStdString();
        EXPECT_EQ(figure(line, "left"), 0) << line.toStdString();
        EXPECT_GT(figure(line, "saved"), 0) << line.toStdString();
        EXPECT_EQ(figure(line, "told") > 0, mounted) << line.toStdString();
    }
    EXPECT_EQ(outputs, 4);
}

} // namespace
} // namespace borewright
