// SPDX-License-Identifier: GPL-3.0-or-later
// Two windows on one workbook: the second opens to look and says who has it; nobody is kept out.
#include "app/document/this_bench.h"
#include "app/shell/window.h"
#include "core/storage/workbook_file.h"
#include "tests/support/bench_context.h"
#include "tests/support/blocks.h"

#include <QAction>
#include <QFile>
#include <QPushButton>
#include <QTemporaryDir>
#include <QTest>

#include <set>

#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

namespace borewright {
namespace {

using namespace test;

class RunningBenches final : public Processes {
public:
    std::set<std::int64_t> running{1, 2};
    Found find(std::int64_t process) override {
        return {true, running.contains(process), "at noon"};
    }
};

// A bench with a window of its own over a shared folder.
struct OneBench {
    OneBench(const QTemporaryDir& folder, Processes& processes, std::int64_t number)
        : workshop(
              {files, clock, dialogs, sounds, preferences, folder.filePath("rescue"),
               folder.filePath("workbooks"), folder.filePath("copies"),
               LockHolder{
                   "Bench hand " + std::to_string(number), "shop", "id", {}, number, "at noon"},
               &processes})
        , window(workshop) {
        window.show();
    }
    void press(const QString& name) {
        for (auto* button : window.findChildren<QPushButton*>())
            if (button->text() == name && button->isVisibleTo(&window)) return button->click();
        ADD_FAILURE() << "no button " << name.toStdString();
    }
    Result<void> rename(const std::string& customer) {
        Job job = workshop.document().workbook().job;
        job.customer = customer;
        return workshop.document().edit(SetJob{job}, "customer");
    }

    PosixFileSystem files;
    StandingClock clock;
    AnsweringDialogs dialogs;
    CountingSounds sounds;
    PreferencesStore preferences;
    Workshop workshop;
    Window window;
};

class TwoBenches : public testing::Test {
protected:
    TwoBenches() {
        QFile file(path);
        EXPECT_TRUE(file.open(QIODevice::WriteOnly));
        file.write(QByteArray::fromStdString(writeWorkbook(inchBlock(2))));
    }
    // Lock files are written and removed on a thread of their own.
    bool isLockedBy(OneBench& bench) const {
        bench.workshop.settleLock();
        return lockIsThere();
    }
    bool lockIsThere() const { return QFile::exists(folder.filePath(".job.borebook.lock")); }
    std::string onDisk() {
        PosixFileSystem files;
        const auto held = loadWorkbook(files, path.toStdString());
        return held ? held->job.customer : held.error().message();
    }

    QTemporaryDir folder;
    const QString path = folder.filePath("job.borebook");
    RunningBenches processes;
};

TEST_F(TwoBenches, TheSecondLooksAndIsToldWhoHasIt) {
    OneBench first(folder, processes, 1);
    OneBench second(folder, processes, 2);
    ASSERT_TRUE(first.window.openPath(path));
    EXPECT_TRUE(isLockedBy(first));
    EXPECT_EQ(first.window.notice(), "");
    ASSERT_TRUE(second.window.openPath(path));
    EXPECT_TRUE(second.window.notice().startsWith("Bench hand 1 at shop has had job.borebook open "
                                                  "since "))
        << second.window.notice().toStdString();
    EXPECT_TRUE(second.window.windowTitle().endsWith("· to look at"))
        << second.window.windowTitle().toStdString();
    second.press("Understood");
    const auto refused = second.rename("B. Example");
    ASSERT_FALSE(refused) << "it was open to look at only";
    EXPECT_EQ(refused.error().message(),
              "Bench hand 1 at shop has it open, so it is open here to look at");
    EXPECT_FALSE(second.window.notice().isEmpty()) << "the refusal is said with the way out of it";
    EXPECT_TRUE(first.rename("A. Example"));
    EXPECT_TRUE(first.workshop.autosaver().flush(2000));
    EXPECT_EQ(onDisk(), "A. Example");
}

TEST_F(TwoBenches, TheSecondMayChangeItAnywayAndHasWhatIsOnTheDisk) {
    OneBench first(folder, processes, 1);
    OneBench second(folder, processes, 2);
    ASSERT_TRUE(first.window.openPath(path));
    EXPECT_TRUE(isLockedBy(first));
    ASSERT_TRUE(second.window.openPath(path));
    ASSERT_TRUE(first.rename("A. Example"));
    ASSERT_TRUE(first.workshop.autosaver().flush(2000));
    second.press("Open to change anyway");
    EXPECT_EQ(second.workshop.document().workbook().job.customer, "A. Example")
        << "it must go on from what is on the disk now";
    EXPECT_TRUE(second.rename("B. Example"));
    EXPECT_TRUE(second.workshop.autosaver().flush(2000));
    EXPECT_EQ(onDisk(), "B. Example");
    EXPECT_TRUE(first.rename("A. Example again"));
    EXPECT_FALSE(first.workshop.autosaver().flush(2000)) << "the second's work was overwritten";
    EXPECT_TRUE(first.workshop.autosaver().changedUnderneath());
    EXPECT_EQ(onDisk(), "B. Example");
}

TEST_F(TwoBenches, ItIsFreeAgainWhenTheFirstClosesOrOpensAnother) {
    OneBench second(folder, processes, 2);
    {
        OneBench first(folder, processes, 1);
        ASSERT_TRUE(first.window.openPath(path));
    }
    EXPECT_FALSE(lockIsThere()) << "closing left a lock";
    ASSERT_TRUE(second.window.openPath(path));
    EXPECT_EQ(second.window.notice(), "");
    second.workshop.begin(inchBlock(1));
    EXPECT_FALSE(isLockedBy(second)) << "another workbook is open, and this one is still locked";
}

TEST_F(TwoBenches, AKilledWindowsLockIsTakenOverAndItIsSaidWhatIsThere) {
    OneBench first(folder, processes, 1);
    ASSERT_TRUE(first.window.openPath(path));
    EXPECT_TRUE(isLockedBy(first));
    processes.running.erase(1);
    OneBench second(folder, processes, 2);
    ASSERT_TRUE(second.window.openPath(path));
    EXPECT_TRUE(second.window.notice().startsWith("Borewright ended without closing on "))
        << second.window.notice().toStdString();
    EXPECT_TRUE(second.rename("B. Example")) << "there is nothing to choose";
    EXPECT_TRUE(isLockedBy(second));
    // Closed in order there is nothing to say.
    processes.running.insert(1);
    OneBench third(folder, processes, 3);
    EXPECT_EQ(third.window.notice(), "");
}

TEST_F(TwoBenches, ItsOwnFileOpenedAgainIsNotLockedAgainstIt) {
    OneBench first(folder, processes, 1);
    ASSERT_TRUE(first.window.openPath(path));
    ASSERT_TRUE(first.window.openPath(path));
    EXPECT_EQ(first.window.notice(), "");
    EXPECT_TRUE(first.rename("A. Example"));
}

TEST_F(TwoBenches, WhatIsSavedElsewhereCanBeChanged) {
    OneBench first(folder, processes, 1);
    OneBench second(folder, processes, 2);
    ASSERT_TRUE(first.window.openPath(path));
    EXPECT_TRUE(isLockedBy(first));
    ASSERT_TRUE(second.window.openPath(path));
    second.dialogs.answer = folder.filePath("other.borebook");
    second.press("Save as …");
    EXPECT_TRUE(second.rename("B. Example"));
    EXPECT_TRUE(second.workshop.autosaver().flush(2000));
    EXPECT_EQ(onDisk(), "") << "the first's file is as it was";
    second.workshop.settleLock();
    EXPECT_TRUE(QFile::exists(folder.filePath(".other.borebook.lock")));
}

TEST_F(TwoBenches, ADatedCopyIsOpenToLookAt) {
    OneBench first(folder, processes, 1);
    ASSERT_TRUE(first.window.openPath(path));
    ASSERT_TRUE(first.rename("A. Example"));
    ASSERT_TRUE(first.workshop.autosaver().flush(2000));
    std::vector<DatedCopy> copies;
    ASSERT_TRUE(QTest::qWaitFor(
        [&] {
            copies =
                datedCopies(first.files, first.workshop.copyRules(), path.toStdString()).value();
            return copies.size() == 1;
        },
        2000));
    OneBench second(folder, processes, 2);
    ASSERT_TRUE(second.window.openPath(QString::fromStdString(copies.back().path)));
    EXPECT_TRUE(second.window.notice().contains("is an earlier copy"))
        << second.window.notice().toStdString();
    EXPECT_FALSE(second.rename("B. Example")) << "history is never rewritten";
    EXPECT_NE(second.preferences.value().lastFile.toStdString(), copies.back().path);
}

TEST(ThisBench, KnowsItselfAndThatNoProcessHasAnImpossibleNumber) {
    PosixFileSystem files;
    MachineProcesses processes(files);
    const LockHolder me = thisBench(processes);
    EXPECT_FALSE(me.machine.empty());
    const auto found = processes.find(me.process);
    EXPECT_TRUE(found.known && found.running);
    EXPECT_EQ(found.began, me.began);
    EXPECT_FALSE(me.began.empty());
    EXPECT_FALSE(processes.find(999'999'999).running);
}

TEST(ThisBench, AProcessThatEndedIsGoneThoughNobodyTookNoteOfIt) {
    const pid_t child = fork();
    ASSERT_GE(child, 0);
    if (child == 0) _exit(0);
    siginfo_t ended{};
    ASSERT_EQ(waitid(P_PID, static_cast<id_t>(child), &ended, WEXITED | WNOWAIT), 0);
    PosixFileSystem files;
    const auto found = MachineProcesses(files).find(child);
    EXPECT_TRUE(found.known);
    EXPECT_FALSE(found.running) << "its lock would keep the next from changing anything";
    waitpid(child, nullptr, 0);
}

} // namespace
} // namespace borewright
