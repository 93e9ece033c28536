// SPDX-License-Identifier: GPL-3.0-or-later
// Dated copies go with the saves, off the window's thread, and never make a save fail.
#include "app/document/autosaver.h"
#include "core/storage/saver.h"
#include "core/storage/workbook_file.h"
#include "tests/support/bench_context.h"
#include "tests/support/blocks.h"
#include "tests/support/memory_file_system.h"

#include <QSignalSpy>
#include <QTemporaryDir>
#include <QTest>

#include <atomic>
#include <thread>

#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;
using State = Autosaver::State;

// A clock that the test moves.
class SetClock final : public Clock {
public:
    std::int64_t seconds = 1'774'000'000;
    [[nodiscard]] Timestamp now() const override { return {seconds, 60}; }
};

class AutosaverCopies : public testing::Test {
protected:
    AutosaverCopies()
        : document(clock) {
        document.open(inchBlock(2));
        saver = std::make_unique<Autosaver>(document, files, "/home/rescue");
        saver->setDelays({std::chrono::milliseconds(5), std::chrono::milliseconds(10),
                          std::chrono::milliseconds(40)});
        rules.folder = "/home/copies";
        saver->setCopies(rules);
    }
    ~AutosaverCopies() override { saver.reset(); }
    void name(const std::string& customer) {
        Job job = document.workbook().job;
        job.customer = customer;
        ASSERT_TRUE(document.edit(SetJob{job}, "customer"));
    }
    void saveNow() { ASSERT_TRUE(saver->flush(2000)) << saver->sentence().toStdString(); }
    // Whom each copy names as the customer, newest first; waits for as many.
    std::vector<std::string> customers(std::size_t most) {
        std::vector<std::string> found;
        (void)QTest::qWaitFor(
            [&] {
                found.clear();
                const auto copies = datedCopies(files, rules, path);
                for (const DatedCopy& copy : copies.value_or(std::vector<DatedCopy>())) {
                    const auto held = loadWorkbook(files, copy.path);
                    EXPECT_TRUE(held) << copy.path;
                    if (held) found.push_back(held->job.customer);
                }
                return found.size() >= most;
            },
            2000);
        return found;
    }

    const std::string path = "/shop/job.borebook";
    SetClock clock;
    MemoryFileSystem files;
    Document document;
    CopyRules rules;
    std::unique_ptr<Autosaver> saver;
};

using Names = std::vector<std::string>;

TEST_F(AutosaverCopies, OneIsMadeWithTheFirstSaveAndThenAfterAWhile) {
    saver->setPath(QString::fromStdString(path));
    name("first");
    saveNow();
    EXPECT_EQ(customers(1), Names{"first"});
    clock.seconds += 60;
    name("second");
    saveNow();
    clock.seconds += 240;
    name("third");
    saveNow();
    EXPECT_EQ(customers(2), (Names{"third", "first"})) << "not one at every reading";
}

TEST_F(AutosaverCopies, WhatWasThereOnOpeningIsKeptBeforeItIsReplaced) {
    Workbook tuesday = inchBlock(2);
    tuesday.job.customer = "as of Tuesday";
    files.put(path, writeWorkbook(tuesday));
    document.open(tuesday);
    saver->setPath(QString::fromStdString(path));
    name("today");
    saveNow();
    EXPECT_EQ(customers(2), (Names{"today", "as of Tuesday"}));
}

TEST_F(AutosaverCopies, WhatSomebodyElseWroteIsKeptBeforeItIsSavedOver) {
    saver->setPath(QString::fromStdString(path));
    name("mine");
    saveNow();
    ASSERT_EQ(customers(1), Names{"mine"});
    Workbook theirs = inchBlock(2);
    theirs.job.customer = "theirs";
    clock.seconds += 60;
    files.put(path, writeWorkbook(theirs));
    name("mine again");
    ASSERT_FALSE(saver->flush(2000));
    EXPECT_TRUE(saver->changedUnderneath());
    clock.seconds += 300;
    saver->overwrite();
    saveNow();
    const Names held = customers(3);
    EXPECT_EQ(held.front(), "mine again");
    EXPECT_TRUE(std::ranges::find(held, "theirs") != held.end()) << "somebody's work was lost";
}

// On a real disk, with a file where the folder of copies should be.
TEST(AutosaverCopiesOnDisk, AFailureIsSaidOnceAndTheSaveStands) {
    const QTemporaryDir folder;
    const std::string path = folder.filePath("job.borebook").toStdString();
    PosixFileSystem files;
    ASSERT_TRUE(save(files, folder.filePath("copies").toStdString(), "a file"));
    SetClock clock;
    Document document(clock);
    document.open(inchBlock(2));
    Autosaver saver(document, files, folder.filePath("rescue"));
    CopyRules rules;
    rules.folder = folder.filePath("copies").toStdString();
    saver.setCopies(rules);
    saver.setPath(QString::fromStdString(path));
    QSignalSpy told(&saver, &Autosaver::told);
    for (int i = 0; i < 6; ++i) {
        Job job = document.workbook().job;
        job.customer = "customer " + std::to_string(i);
        ASSERT_TRUE(document.edit(SetJob{job}, "customer"));
        ASSERT_TRUE(saver.flush(2000)) << saver.sentence().toStdString();
        EXPECT_EQ(loadWorkbook(files, path)->job.customer, job.customer);
        EXPECT_TRUE(QTest::qWaitFor([&] { return told.count() >= 1; }, 1000));
        QTest::qWait(20);
        clock.seconds += i % 2 == 0 ? 1 : 301; // at once, and after a while
    }
    ASSERT_EQ(told.count(), 1) << "said again and again, or never";
    const QString sentence = told.at(0).at(0).toString();
    EXPECT_TRUE(sentence.startsWith("No dated copy could be kept in ")) << sentence.toStdString();
    EXPECT_TRUE(
        sentence.endsWith("copies: its folder is not a folder. The workbook itself is saved."))
        << sentence.toStdString();
}

// A disk that takes its time with the copy holds up neither the word "saved" nor the window.
TEST_F(AutosaverCopies, ASaveIsAnsweredBeforeItsCopyIsMade) {
    saver->setPath(QString::fromStdString(path));
    name("first");
    saveNow();
    ASSERT_EQ(customers(1).size(), 1U);
    clock.seconds += 60;
    files.forgetCalls();
    name("second"); // too soon for a copy: the folder of copies is listed, and no more
    saveNow();
    QTest::qWait(50);
    const std::size_t callsOfASave = files.calls() - 1;
    clock.seconds += 301;
    std::atomic<bool> go = false;
    files.forgetCalls();
    files.onCall([&](std::size_t call) {
        for (int i = 0; i < 300 && call >= callsOfASave && !go; ++i)
            std::this_thread::sleep_for(std::chrono::milliseconds(10));
    });
    name("third");
    EXPECT_TRUE(saver->flush(1500)) << "the save waited for its copy";
    EXPECT_EQ(saver->state(), State::saved);
    go = true;
    EXPECT_EQ(customers(2), (Names{"third", "first"}));
    files.onCall({});
}

TEST_F(AutosaverCopies, NoneAreMadeWhereNoneAreWanted) {
    rules.latest = rules.days = rules.months = 0;
    saver->setCopies(rules);
    saver->setPath(QString::fromStdString(path));
    name("first");
    saveNow();
    QTest::qWait(30);
    EXPECT_TRUE(files.names(copiesOf(rules, path)).empty());
}

TEST_F(AutosaverCopies, AFaultAtAnyCallNeverShowsAFalseSaved) {
    saver->setPath(QString::fromStdString(path));
    name("first");
    saveNow();
    for (const bool persistent : {false, true})
        for (std::size_t call = 0; call < 60; ++call) {
            clock.seconds += 301;
            files.inject(MemoryFileSystem::Fault{call, persistent, FileFault::diskFull, false});
            const std::string now = "call " + std::to_string(call);
            name(now + (persistent ? "p" : ""));
            if (saver->flush(2000)) {
                EXPECT_TRUE(readWorkbook(*files.content(path)).value() == document.workbook())
                    << now << ": shown as saved, but is not";
            }
            files.inject(std::nullopt);
            saveNow();
        }
}

} // namespace
} // namespace borewright
