// SPDX-License-Identifier: GPL-3.0-or-later
// From the bench to the ledger: what the autosaver has put on the disk is entered by itself.
#include "app/document/this_bench.h"
#include "app/shell/workshop.h"
#include "tests/app/ledger/ledger_desk_support.h"
#include "tests/support/bench_context.h"

#include <QProcess>

namespace borewright {
namespace {

using namespace test;

class SavedJob : public LedgerBenchTest {
protected:
    static Workbook workbookOf(const std::string& customer) {
        Workbook workbook = inchBlock(1);
        workbook.job.customer = customer;
        return workbook;
    }
    static void rename(Workshop& workshop, const std::string& customer) {
        Job job = workshop.document().workbook().job;
        job.customer = customer;
        ASSERT_TRUE(workshop.document().edit(SetJob{job}, "customer"));
    }
};

TEST_F(SavedJob, EntersTheLedgerAfterItsSaveAndFollowsEachLaterOne) {
    Workshop workshop(outside());
    workshop.ledger().setDelay(std::chrono::milliseconds(20));
    workshop.begin(workbookOf("Ash"));
    EXPECT_TRUE(comesTo("Ash")) << customers();
    rename(workshop, "Birch");
    EXPECT_TRUE(comesTo("Birch")) << customers();
}

TEST_F(SavedJob, IsInTheLedgerThoughTheProgramEndsRightAfterTheSave) {
    {
        Workshop workshop(outside());
        workshop.begin(workbookOf("Ash"));
        rename(workshop, "Birch");
    }
    EXPECT_EQ(customers(), "Birch");
}

TEST_F(SavedJob, LookingAtAWorkbookEntersNothing) {
    const QString file = write("a.borebook", "Ash");
    Workshop workshop(outside());
    workshop.ledger().setDelay(std::chrono::milliseconds(1));
    ASSERT_TRUE(workshop.open(file));
    QTest::qWait(100);
    EXPECT_FALSE(QFile::exists(path("data/ledger.sqlite")));
}

TEST_F(SavedJob, SavedJustBeforeAKillEntersWhenItIsOpenedAgain) {
    const QString file = write("a.borebook", "Ash");
    {
        Workshop workshop(outside());
        workshop.ledger().setDelay(std::chrono::milliseconds(1));
        ASSERT_TRUE(workshop.open(file));
        rename(workshop, "Birch");
        EXPECT_TRUE(comesTo("Birch")) << customers();
    }
    write("a.borebook", "Cedar"); // saved, and killed before the ledger had it
    Workshop workshop(outside());
    workshop.ledger().setDelay(std::chrono::milliseconds(1));
    ASSERT_TRUE(workshop.open(file));
    EXPECT_TRUE(comesTo("Cedar")) << customers();
    EXPECT_EQ(workshop.ledger().word(), "");
    EXPECT_FALSE(workshop.document().undoStack().canUndo());
}

TEST_F(SavedJob, KilledBeforeItWasEverEnteredEntersToo) {
    const QString file = write("a.borebook", "Ash");
    const QString shown = write("invented.borebook", "Birch", true);
    MachineProcesses processes(files);
    QProcess program; // had both open
    program.start("sleep", {"600"});
    ASSERT_TRUE(program.waitForStarted());
    LockHolder holder = thisBench(processes);
    holder.process = program.processId();
    holder.began = processes.find(holder.process).began;
    holder.since = clock.now();
    for (const QString& path : {file, shown})
        ASSERT_TRUE(takeLock(files, path.toStdString(), holder, processes).ours);
    program.kill();
    ASSERT_TRUE(program.waitForFinished());
    Outside outsideOf = outside();
    outsideOf.bench = thisBench(processes);
    outsideOf.processes = &processes;
    Workshop workshop(outsideOf);
    workshop.ledger().setDelay(std::chrono::milliseconds(1));
    ASSERT_TRUE(workshop.open(shown));
    ASSERT_NE(workshop.lastTime(), "");
    ASSERT_TRUE(workshop.open(file));
    ASSERT_NE(workshop.lastTime(), "");
    EXPECT_TRUE(comesTo("Ash")) << customers();
}

TEST_F(SavedJob, ADiskThatTakesNothingLeavesTheLedgerAsItWas) {
    ASSERT_TRUE(QFile(path("workbooks")).open(QIODevice::WriteOnly)); // no folder can be made there
    Workshop workshop(outside());
    workshop.ledger().setDelay(std::chrono::milliseconds(1));
    workshop.begin(workbookOf("Ash"));
    EXPECT_FALSE(workshop.autosaver().flush(2000));
    QTest::qWait(100);
    EXPECT_FALSE(QFile::exists(path("data/ledger.sqlite"))) << "it was never saved";
}

} // namespace
} // namespace borewright
