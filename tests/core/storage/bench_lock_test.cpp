// SPDX-License-Identifier: GPL-3.0-or-later
// The lock tells the second bench, sees when its holder is gone, and keeps nobody out.
#include "core/storage/bench_lock.h"
#include "tests/support/memory_file_system.h"

#include <map>

#include <gtest/gtest.h>

namespace borewright {
namespace {

class KnownProcesses final : public Processes {
public:
    std::map<std::int64_t, std::string> running; // number: when it began
    bool known = true;
    Found find(std::int64_t process) override {
        const auto found = running.find(process);
        if (!known || found == running.end()) return {known, false, {}};
        return {true, true, found->second};
    }
};

class BenchLock : public testing::Test {
protected:
    BenchLock() {
        files.put(path, "a workbook");
        processes.running = {{100, "boot 7"}, {200, "boot 9"}};
    }
    LockAnswer take(const LockHolder& who, bool anyway = false) {
        return takeLock(files, path, who, processes, anyway);
    }
    std::optional<LockHolder> holder() const {
        const auto text = files.content("/shop/.job.borebook.lock");
        if (!text) return std::nullopt;
        const auto read = readLock(*text);
        EXPECT_TRUE(read) << *text;
        return read ? std::optional(*read) : std::nullopt;
    }

    const std::string path = "/shop/job.borebook";
    MemoryFileSystem files;
    KnownProcesses processes;
    const LockHolder first{"A. Example", "bench-1", "id 1", {1'774'000'000, 60}, 100, "boot 7"};
    const LockHolder second{"B. Example", "bench-1", "id 1", {1'774'000'600, 60}, 200, "boot 9"};
    const LockHolder distant{"", "bench-2", "id 2", {1'774'000'900, 60}, 100, "other 3"};
};

TEST_F(BenchLock, TheFirstHasItAndTheSecondIsToldWho) {
    const LockAnswer mine = take(first);
    EXPECT_TRUE(mine.ours);
    EXPECT_FALSE(mine.other);
    const LockAnswer theirs = take(second);
    EXPECT_FALSE(theirs.ours);
    ASSERT_TRUE(theirs.other);
    EXPECT_EQ(*theirs.other, first);
    EXPECT_EQ(inWords(*theirs.other), "A. Example at bench-1");
    EXPECT_EQ(holder(), first) << "looking must not take it";
    EXPECT_EQ(take(distant).other, first) << "from another machine too";
    EXPECT_TRUE(take(first).ours) << "his own lock keeps nobody out";
}

TEST_F(BenchLock, ItGoesWithItsHolderAndWithNobodyElse) {
    take(first);
    releaseLock(files, path, second);
    EXPECT_EQ(holder(), first);
    releaseLock(files, path, first);
    EXPECT_FALSE(holder());
    EXPECT_TRUE(take(second).ours);
}

TEST_F(BenchLock, AProcessThatEndedHasNoLock) {
    take(first);
    processes.running.erase(100);
    EXPECT_TRUE(take(second).ours) << "a killed program's lock is taken over";
    EXPECT_EQ(holder(), second);
}

TEST_F(BenchLock, ANumberGivenToAnotherProcessIsNoHolder) {
    take(first);
    processes.running[100] = "boot 8";
    EXPECT_TRUE(take(second).ours);
}

TEST_F(BenchLock, AnotherMachinesLockStaysWhateverRunsHere) {
    take(distant);
    processes.running.clear();
    EXPECT_EQ(take(first).other, distant);
    EXPECT_EQ(inWords(distant), "somebody at bench-2");
}

TEST_F(BenchLock, TwoMachinesOfOneNameAreTwo) {
    LockHolder twin = first;
    twin.machineId = "id 3";
    take(twin);
    processes.running.clear();
    EXPECT_EQ(take(second).other, twin);
}

TEST_F(BenchLock, WhereTheMachineCannotBeAskedTheLockStays) {
    take(first);
    processes.known = false;
    EXPECT_EQ(take(second).other, first);
}

TEST_F(BenchLock, ItCanAlwaysBeTakenOver) {
    take(distant);
    EXPECT_TRUE(take(first, true).ours);
    EXPECT_EQ(holder(), first);
    releaseLock(files, path, distant);
    EXPECT_EQ(holder(), first) << "the one it was taken from must not remove it";
}

TEST_F(BenchLock, WithoutTheRightToWriteThereIsNoneAndThatIsSaid) {
    files.inject(MemoryFileSystem::Fault{0, true, FileFault::noRight, false});
    const LockAnswer answer = take(first);
    files.inject(std::nullopt);
    EXPECT_FALSE(answer.ours);
    EXPECT_FALSE(answer.other) << "that must not keep anyone out";
    EXPECT_FALSE(answer.problem.empty());
}

TEST_F(BenchLock, DamagedLocksAreTakenOver) {
    for (const char* text : {"", "{", "[]", "{\"format\": \"borewright lock\"}",
                             "{\"format\": \"borewright lock\", \"since\": "
                             "\"2026-03-14T09:26:53Z\", \"process\": \"many\"}"}) {
        files.put("/shop/.job.borebook.lock", text);
        EXPECT_TRUE(take(second).ours) << text;
    }
}

TEST_F(BenchLock, ALinkAndItsFileHaveOneLock) {
    files.put("/shop/real.borebook", "a workbook");
    files.link("/shop/link.borebook", "/shop/real.borebook");
    EXPECT_EQ(lockPath(files, "/shop/link.borebook"), "/shop/.real.borebook.lock");
}

TEST_F(BenchLock, ReadsBackWhatItWrote) {
    LockHolder odd{"\"Käthe\"\n", "bench\\1", "", {1'774'000'000, -330}, 4'194'304, ""};
    const auto read = readLock(writeLock(odd));
    ASSERT_TRUE(read) << read.error().message();
    EXPECT_EQ(*read, odd);
}

TEST_F(BenchLock, AFaultAtAnyCallNeverShowsALockThatIsNotThere) {
    for (const bool persistent : {false, true})
        for (std::size_t call = 0; call < 30; ++call) {
            files.inject(MemoryFileSystem::Fault{call, persistent, FileFault::inputOutput, false});
            const LockAnswer answer = take(first);
            files.inject(std::nullopt);
            if (answer.ours) {
                EXPECT_EQ(holder(), first) << "call " << call;
            }
            EXPECT_EQ(files.content(path), "a workbook");
            releaseLock(files, path, first);
        }
}

} // namespace
} // namespace borewright
