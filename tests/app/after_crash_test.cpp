// SPDX-License-Identifier: GPL-3.0-or-later
// After a crash the window opens with what was on the disk, says so, and asks nothing.
#include "app/document/this_bench.h"
#include "app/shell/window.h"
#include "core/storage/workbook_file.h"
#include "tests/support/bench_context.h"
#include "tests/support/blocks.h"

#include <QFile>
#include <QFileInfo>
#include <QLocale>
#include <QProcess>
#include <QPushButton>
#include <QTemporaryDir>
#include <QTest>

#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;

// The clock and the processes of this machine.
struct RealBench {
    explicit RealBench(const QTemporaryDir& folder)
        : processes(files)
        , workshop({files, clock, dialogs, sounds, preferences, folder.filePath("rescue"),
                    folder.filePath("workbooks"), folder.filePath("copies"), thisBench(processes),
                    &processes})
        , window(workshop) {
        window.show();
    }
    PosixFileSystem files;
    SystemClock clock;
    AnsweringDialogs dialogs;
    CountingSounds sounds;
    PreferencesStore preferences;
    MachineProcesses processes;
    Workshop workshop;
    Window window;
};

class AfterACrash : public testing::Test {
protected:
    AfterACrash() { write(path, inchBlock(2)); }
    static void write(const QString& to, const Workbook& workbook) {
        QFile file(to);
        ASSERT_TRUE(file.open(QIODevice::WriteOnly));
        file.write(QByteArray::fromStdString(writeWorkbook(workbook)));
    }
    // A process of this machine that had the workbook open, and was killed.
    void killOneThatHadIt() {
        PosixFileSystem files;
        MachineProcesses processes(files);
        QProcess program;
        program.start("sleep", {"600"});
        ASSERT_TRUE(program.waitForStarted());
        LockHolder holder = thisBench(processes);
        holder.process = program.processId();
        holder.began = processes.find(holder.process).began;
        holder.since = SystemClock().now();
        ASSERT_FALSE(holder.began.empty());
        ASSERT_TRUE(takeLock(files, path.toStdString(), holder, processes).ours);
        {
            RealBench alive(folder);
            ASSERT_TRUE(alive.window.openPath(path));
            EXPECT_TRUE(alive.window.notice().contains("has had job.borebook open since"))
                << alive.window.notice().toStdString();
        }
        program.kill(); // SIGKILL
        ASSERT_TRUE(program.waitForFinished());
    }

    QTemporaryDir folder;
    const QString path = folder.filePath("job.borebook");
};

TEST_F(AfterACrash, ItOpensWithWhatWasSavedAndSaysSo) {
    killOneThatHadIt();
    const QDateTime saved = QFileInfo(path).lastModified();
    RealBench bench(folder);
    ASSERT_TRUE(bench.window.openPath(path));
    const QString day = QLocale::c().toString(saved.date(), "d MMMM yyyy");
    EXPECT_EQ(bench.window.notice().toStdString(),
              QString("Borewright ended without closing on %1. This is what was saved at %2; "
                      "nothing shown as saved is missing.")
                  .arg(day, saved.time().toString("HH:mm"))
                  .toStdString());
    EXPECT_TRUE(bench.workshop.document().lookOnly().isEmpty()) << "it is open to be changed";
    Job job;
    job.customer = "A. Example";
    EXPECT_TRUE(bench.workshop.document().edit(SetJob{job}, "customer"));
    EXPECT_TRUE(bench.workshop.autosaver().flush(2000));
}

TEST_F(AfterACrash, ClosedInOrderThereIsNothingToSay) {
    {
        RealBench bench(folder);
        ASSERT_TRUE(bench.window.openPath(path));
        bench.window.close();
    }
    RealBench bench(folder);
    ASSERT_TRUE(bench.window.openPath(path));
    EXPECT_EQ(bench.window.notice().toStdString(), "");
}

TEST_F(AfterACrash, ARescueCopyThatIsNewerIsNamed) {
    Workbook workbook = inchBlock(2);
    workbook.history.id = "of this workbook";
    write(path, workbook);
    killOneThatHadIt();
    QDir().mkpath(folder.filePath("rescue"));
    Workbook later = workbook;
    later.job.customer = "A. Example";
    const QString rescued = folder.filePath("rescue/rescue-job.borebook");
    write(rescued, later);
    // One of another workbook of the same name, and one that holds nothing else, say nothing.
    Workbook other = later;
    other.history.id = "of another";
    write(folder.filePath("rescue/rescue-job-2.borebook"), other);
    write(folder.filePath("rescue/rescue-job-3.borebook"), workbook);
    RealBench bench(folder);
    ASSERT_TRUE(bench.window.openPath(path));
    EXPECT_TRUE(bench.window.notice().endsWith("What its place did not take is in " +
                                               QDir::toNativeSeparators(rescued) + "."))
        << bench.window.notice().toStdString();
    EXPECT_EQ(bench.workshop.document().workbook().job.customer, "");
}

} // namespace
} // namespace borewright
