// SPDX-License-Identifier: GPL-3.0-or-later
// One save of a workbook where the disk will not say what stands in its place.
#include "app/document/save_worker.h"
#include "core/storage/workbook_file.h"
#include "tests/support/blocks.h"
#include "tests/support/memory_file_system.h"

#include <atomic>
#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;

// Each call before the saver's own fails once: what somebody else wrote meanwhile is never taken
// for ours, and nobody is accused where it is only the disk that stutters.
TEST(SaveWorker, WhatTheDiskWillNotTellIsNotOverwritten) {
    for (const std::size_t call : {0U, 1U}) {
        MemoryFileSystem files;
        files.makeFolder("/shop");
        files.put("/shop/job.borebook", writeWorkbook(inchBlock(3))); // by somebody else
        SaveJob job;
        job.workbook = inchBlock(2);
        job.revision = 1;
        job.path = "/shop/job.borebook";
        job.mark = FileMark{1, {}}; // of what was there before
        job.rescueFolder = "/rescue";
        files.forgetCalls();
        files.inject(MemoryFileSystem::Fault{call, false, FileFault::inputOutput, false});
        const SaveAnswer answer = runSave(files, job);
        EXPECT_EQ(files.content(job.path), writeWorkbook(inchBlock(3))) << "call " << call;
        EXPECT_FALSE(answer.mark) << "call " << call << ": it is not saved";
        EXPECT_FALSE(answer.changedUnderneath) << "call " << call << ": that was not seen";
        EXPECT_EQ(answer.problem, inWords(FileFault::inputOutput)) << "call " << call;
        EXPECT_TRUE(files.content(answer.rescuePath))
            << "call " << call << ": " << answer.rescueProblem;
    }
}

// Saves posted one behind the other, as fast as they are answered, with dated copies made
// meanwhile: each is answered once, and the last of them stands on the disk. What the threads share
// is watched by the thread sanitizer.
TEST(SaveWorker, EachOfManySavesIsAnsweredOnceAndTheLastStands) {
    constexpr std::uint64_t saves = 100;
    MemoryFileSystem files; // of the worker alone until it is gone
    files.makeFolder("/shop");
    std::atomic<int> told = 0;
    std::uint64_t copied = 0;
    Workbook workbook = inchBlock(2);
    {
        SaveWorker worker(files, [&] { ++told; });
        std::optional<FileMark> mark;
        for (std::uint64_t revision = 1; revision <= saves; ++revision) {
            workbook.job.notes = std::to_string(revision);
            SaveJob job;
            job.id = revision;
            job.workbook = workbook;
            job.revision = revision;
            job.path = "/shop/job.borebook";
            job.mark = mark;
            job.copies.folder = "/shop/copies";
            job.now = {1'774'000'000 + 400 * static_cast<std::int64_t>(revision), 60};
            worker.post(std::move(job));
            ASSERT_TRUE(worker.wait(std::chrono::seconds(60))) << "save " << revision;
            const auto answer = worker.take();
            ASSERT_TRUE(answer && answer->mark) << "save " << revision;
            EXPECT_EQ(answer->revision, revision);
            EXPECT_FALSE(worker.take()) << "answered twice";
            mark = answer->mark;
            // Asked while they are being made, every other time.
            const auto patience = std::chrono::steady_clock::now() + std::chrono::seconds(60);
            while (revision % 2 == 0 && copied < revision) {
                ASSERT_LT(std::chrono::steady_clock::now(), patience) << "no copies were told";
                std::this_thread::yield();
                const auto copies = worker.takeCopied();
                if (!copies) continue;
                EXPECT_EQ(copies->problem, "");
                EXPECT_GE(copies->id, revision - 1);
                copied = copies->id;
            }
        }
    }
    EXPECT_EQ(told, 2 * static_cast<int>(saves)) << "of each save and of its copies";
    EXPECT_EQ(copied, saves);
    EXPECT_EQ(files.content("/shop/job.borebook"), writeWorkbook(workbook));
}

} // namespace
} // namespace borewright
