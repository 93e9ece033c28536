// SPDX-License-Identifier: GPL-3.0-or-later
// One save of a workbook where the disk will not say what stands in its place.
#include "app/document/save_worker.h"
#include "core/storage/workbook_file.h"
#include "tests/support/blocks.h"
#include "tests/support/memory_file_system.h"

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

} // namespace
} // namespace borewright
