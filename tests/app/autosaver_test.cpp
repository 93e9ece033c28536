// SPDX-License-Identifier: GPL-3.0-or-later
// The workbook keeps itself: "saved" only when it is on the disk, a rescue copy when its place
// fails, and nobody else's work overwritten.
#include "app/document/autosaver.h"
#include "core/storage/workbook_file.h"
#include "tests/support/bench_context.h"
#include "tests/support/blocks.h"
#include "tests/support/memory_file_system.h"

#include <QSignalSpy>
#include <QTest>

#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;
using State = Autosaver::State;

const QString path = "/shop/job.borebook";

// Saving gives a workbook its id, so what stood before it was saved differs by that.
bool sameWork(std::optional<Workbook> saved, const Workbook& typed) {
    if (saved) saved->history.id = typed.history.id;
    return saved == typed;
}

class AutosaverTest : public testing::Test {
protected:
    AutosaverTest()
        : document(clock) {
        Workbook workbook = inchBlock(2);
        survey = addSurvey(workbook, SurveyKind::asFound, "found");
        document.open(std::move(workbook));
        saver = std::make_unique<Autosaver>(document, files, "/home/rescue");
        saver->setDelays({std::chrono::milliseconds(5), std::chrono::milliseconds(10),
                          std::chrono::milliseconds(40)});
    }
    // A reading, as the page at the bench keeps it.
    void read(const std::string& thou) {
        Reading reading;
        reading.station = {1, Length::whole(2, Unit::inch), "A"};
        reading.typed = readTyped(thou, Unit::thou).value();
        reading.time = clock.now();
        const auto kept = document.edit(
            recordReading(document.workbook(), survey, reading, std::nullopt), "reading");
        ASSERT_TRUE(kept) << kept.error().message();
    }
    std::optional<Workbook> onDisk(const QString& where = path) const {
        const auto content = files.content(where.toStdString());
        if (!content) return std::nullopt;
        auto workbook = readWorkbook(*content);
        EXPECT_TRUE(workbook) << workbook.error().message();
        return workbook ? std::optional(*workbook) : std::nullopt;
    }
    bool waitFor(State state) const {
        return QTest::qWaitFor([&] { return saver->state() == state; }, 3000);
    }
    void failEverythingAt(FileFault fault) {
        files.inject(MemoryFileSystem::Fault{0, true, fault, false});
    }

    StandingClock clock;
    MemoryFileSystem files;
    Document document;
    std::string survey;
    std::unique_ptr<Autosaver> saver;
};

TEST_F(AutosaverTest, ANewWorkbookIsOnDiskFromItsFirstReading) {
    saver->setPath(path);
    EXPECT_EQ(saver->state(), State::nothingToSave);
    EXPECT_FALSE(onDisk());
    read("-1,5");
    EXPECT_EQ(saver->state(), State::unsaved) << "told as saved before it was";
    ASSERT_TRUE(waitFor(State::saved));
    EXPECT_TRUE(onDisk() == document.workbook());
    EXPECT_EQ(saver->sentence(), "Saved " + QString::fromStdString(clockTime(clock.now())));
}

TEST_F(AutosaverTest, IsNeverSavedWithAChangeThatIsNotOnTheDisk) {
    saver->setPath(path);
    int shown = 0;
    QObject::connect(saver.get(), &Autosaver::stateChanged, [&] {
        if (saver->state() != State::saved) return;
        ++shown;
        EXPECT_TRUE(onDisk() == document.workbook()) << "shown as saved, but is not";
    });
    for (int i = 0; i < 60; ++i) {
        read("-" + std::to_string(i % 9) + "." + std::to_string(i % 10));
        EXPECT_NE(saver->state(), State::saved);
        QTest::qWait(i % 3);
    }
    ASSERT_TRUE(waitFor(State::saved));
    EXPECT_GE(shown, 1);
}

TEST_F(AutosaverTest, ABurstIsSavedInFewWritesButIsNotPutOffByTyping) {
    saver->setDelays({std::chrono::milliseconds(50), std::chrono::milliseconds(10),
                      std::chrono::milliseconds(40)});
    saver->setPath(path);
    QElapsedTimer clockwork;
    clockwork.start();
    int typed = 0;
    while (clockwork.elapsed() < 300) {
        read("1." + std::to_string(typed++ % 10));
        QTest::qWait(5);
    }
    const auto kept = onDisk();
    ASSERT_TRUE(kept) << "typing without a pause for 0.3 s kept anything from being saved";
    EXPECT_GT(kept->surveys[0].readings.size(), 10U);
    EXPECT_TRUE(saver->flush(1000));
    EXPECT_TRUE(onDisk() == document.workbook());
}

TEST_F(AutosaverTest, UndoAndRedoAreSavedToo) {
    saver->setPath(path);
    read("1");
    ASSERT_TRUE(saver->flush(1000));
    document.undoStack().undo();
    EXPECT_NE(saver->state(), State::saved);
    ASSERT_TRUE(waitFor(State::saved));
    EXPECT_TRUE(onDisk()->surveys[0].readings.empty());
}

TEST_F(AutosaverTest, AFullDiskIsToldAtOnceAndTheRescueCopyHoldsEverything) {
    saver->setPath(path);
    read("1");
    ASSERT_TRUE(saver->flush(1000));
    files.removeFolder("/shop"); // the share is gone
    read("2");
    ASSERT_TRUE(waitFor(State::failed));
    EXPECT_EQ(saver->sentence().toStdString(), "Not saved: the folder is gone. A rescue copy is in "
                                               "/home/rescue/rescue-job.borebook. Trying again.");
    EXPECT_TRUE(onDisk("/home/rescue/rescue-job.borebook") == document.workbook());
    read("3");
    EXPECT_TRUE(QTest::qWaitFor(
        [&] { return onDisk("/home/rescue/rescue-job.borebook") == document.workbook(); }, 2000))
        << "the rescue copy does not follow";
    EXPECT_EQ(saver->state(), State::failed);
}

TEST_F(AutosaverTest, SaysAFailureOnceAndGoesBackWhenThePlaceWorksAgain) {
    saver->setPath(path);
    read("1");
    ASSERT_TRUE(saver->flush(1000));
    files.removeFolder("/shop");
    QSignalSpy changes(saver.get(), &Autosaver::stateChanged);
    read("2");
    ASSERT_TRUE(waitFor(State::failed));
    const auto told = changes.count();
    QTest::qWait(120); // several attempts
    EXPECT_EQ(changes.count(), told) << "the same failure was told again";
    files.makeFolder("/shop");
    ASSERT_TRUE(waitFor(State::saved)) << "it did not go on trying";
    EXPECT_TRUE(onDisk() == document.workbook());
    EXPECT_FALSE(files.content("/home/rescue/rescue-job.borebook")) << "the rescue copy was left";
    EXPECT_EQ(saver->rescuePath(), "");
}

TEST_F(AutosaverTest, WhereEverythingFailsItSaysThatToo) {
    saver->setPath(path);
    failEverythingAt(FileFault::diskFull);
    read("1");
    ASSERT_TRUE(waitFor(State::failed));
    EXPECT_EQ(saver->sentence().toStdString(), "Not saved: the disk is full. No rescue copy could "
                                               "be made: the disk is full. Trying again.");
    files.inject(std::nullopt);
    EXPECT_TRUE(waitFor(State::saved));
}

TEST_F(AutosaverTest, EveryCallFailingInTurnNeverShowsAFalseSaved) {
    saver->setPath(path);
    read("1");
    ASSERT_TRUE(saver->flush(1000));
    int cases = 0;
    for (const FileFault fault : {FileFault::diskFull, FileFault::inputOutput, FileFault::noRight})
        for (const bool persistent : {false, true})
            for (std::size_t call = 0; call < 30; ++call) {
                files.inject(MemoryFileSystem::Fault{call, persistent, fault, false});
                read(std::to_string(call % 9));
                const bool flushed = saver->flush(1000);
                if (flushed) {
                    EXPECT_TRUE(onDisk() == document.workbook())
                        << "call " << call << ": shown as saved, but is not";
                    EXPECT_EQ(files.afterCrash(path.toStdString(),
                                               MemoryFileSystem::Crash::nothingUnflushedKept),
                              files.content(path.toStdString()));
                } else {
                    EXPECT_EQ(saver->state(), State::failed);
                }
                ASSERT_TRUE(onDisk()) << "call " << call << ": the file was lost";
                files.inject(std::nullopt);
                ASSERT_TRUE(saver->flush(1000)) << saver->sentence().toStdString();
                ++cases;
            }
    printf("%d saves of the document with an injected fault: none shown falsely\n", cases);
    EXPECT_EQ(cases, 180);
}

TEST_F(AutosaverTest, AnotherPersonsWorkIsNotOverwritten) {
    saver->setPath(path);
    read("1");
    ASSERT_TRUE(saver->flush(1000));
    const std::string theirs = writeWorkbook(inchBlock(4));
    files.put(path.toStdString(), theirs);
    read("2");
    ASSERT_TRUE(waitFor(State::failed));
    EXPECT_TRUE(saver->changedUnderneath());
    EXPECT_EQ(files.content(path.toStdString()), theirs) << "somebody's work was overwritten";
    EXPECT_EQ(saver->sentence().toStdString(), "Not saved: somebody else changed the file. A "
                                               "rescue copy is in "
                                               "/home/rescue/rescue-job.borebook.");
    EXPECT_TRUE(onDisk("/home/rescue/rescue-job.borebook") == document.workbook());
    saver->overwrite();
    ASSERT_TRUE(waitFor(State::saved));
    EXPECT_TRUE(onDisk() == document.workbook());
}

TEST_F(AutosaverTest, AFileMerelyTouchedIsStillOurs) {
    saver->setPath(path);
    read("1");
    ASSERT_TRUE(saver->flush(1000));
    files.put(path.toStdString(), *files.content(path.toStdString())); // same bytes, other time
    read("2");
    EXPECT_TRUE(waitFor(State::saved)) << saver->sentence().toStdString();
}

TEST_F(AutosaverTest, AStrangersFileAtTheChosenPlaceIsNotReplaced) {
    const std::string theirs = writeWorkbook(inchBlock(4));
    files.put(path.toStdString(), theirs);
    saver->setPath(path);
    read("1");
    ASSERT_TRUE(waitFor(State::failed));
    EXPECT_EQ(files.content(path.toStdString()), theirs);
}

TEST_F(AutosaverTest, AnEarlierRescueCopyIsKept) {
    files.makeFolder("/home/rescue");
    files.put("/home/rescue/rescue-job.borebook", "of last week");
    saver->setPath("/gone/job.borebook");
    read("1");
    ASSERT_TRUE(waitFor(State::failed));
    EXPECT_EQ(files.content("/home/rescue/rescue-job.borebook"), "of last week");
    EXPECT_TRUE(onDisk("/home/rescue/rescue-job-2.borebook") == document.workbook());
}

TEST_F(AutosaverTest, SaveAsTakesTheWorkAndTheRescueCopyAlong) {
    saver->setPath("/gone/job.borebook");
    read("1");
    ASSERT_TRUE(waitFor(State::failed));
    saver->saveAs("/shop/other.borebook");
    ASSERT_TRUE(waitFor(State::saved));
    EXPECT_TRUE(onDisk("/shop/other.borebook") == document.workbook());
    EXPECT_FALSE(files.content("/home/rescue/rescue-job.borebook"));
}

TEST_F(AutosaverTest, OpeningAnotherWorkbookSavesTheEarlierOneInItsOwnPlace) {
    saver->setPath(path);
    read("1");
    const Workbook before = document.workbook();
    document.open(inchBlock(8));
    EXPECT_TRUE(sameWork(onDisk(), before)) << "what was typed last was lost";
    EXPECT_EQ(saver->path(), "");
    saver->setPath("/shop/next.borebook");
    ASSERT_TRUE(document.edit(SetJob{{"A. Customer", {}, {}, {}, {}, {}, {}}}, "customer"));
    ASSERT_TRUE(waitFor(State::saved));
    EXPECT_TRUE(sameWork(onDisk(), before)) << "the new workbook went to the old one's place";
    EXPECT_TRUE(onDisk("/shop/next.borebook") == document.workbook());
}

TEST_F(AutosaverTest, EndingTheProgramSavesWhatWasTypedLast) {
    saver->setPath(path);
    read("1");
    saver.reset();
    EXPECT_TRUE(onDisk() == document.workbook());
}

TEST_F(AutosaverTest, WhatCouldNotBeOpenedAgainIsNotPutOverTheGoodFile) {
    saver->setPath(path);
    read("1");
    ASSERT_TRUE(saver->flush(1000));
    const auto good = files.content(path.toStdString());
    // Nothing that is typed leads there any more; what a mistake of ours would lead to.
    const auto held = markOf(files, path.toStdString(), document.workbook());
    Workbook unreadable = document.workbook();
    unreadable.surveys.back().header.notes = std::string(70'000, 'x');
    document.open(unreadable);
    saver->setPath(path, held);
    read("2");
    ASSERT_TRUE(waitFor(State::failed));
    EXPECT_TRUE(saver->sentence().contains("notes: is a text longer than 64 KB"))
        << saver->sentence().toStdString();
    EXPECT_EQ(files.content(path.toStdString()), good);
    SurveyHeader header = findSurvey(document.workbook(), survey)->header;
    header.notes = "mended";
    ASSERT_TRUE(document.edit(SetSurveyHeader{survey, header}, "notes"));
    EXPECT_TRUE(waitFor(State::saved));
}

} // namespace
} // namespace borewright
