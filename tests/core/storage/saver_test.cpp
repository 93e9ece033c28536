// SPDX-License-Identifier: GPL-3.0-or-later
// The saver under every single fault and at every moment at which power may go.
#include "core/storage/hash.h"
#include "core/storage/posix_file_system.h"
#include "core/storage/saver.h"
#include "tests/support/memory_file_system.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>

namespace borewright {
namespace {

using Crash = MemoryFileSystem::Crash;
using Fault = MemoryFileSystem::Fault;

const std::string path = "/shop/block.borebook";
const std::string oldContent(30, 'o');
const std::string newContent(50, 'n');

std::size_t callsOfOneSave(bool earlier, bool unnamedRefused) {
    MemoryFileSystem files;
    files.refuseUnnamed(unnamedRefused);
    if (earlier) files.put(path, oldContent);
    files.forgetCalls();
    EXPECT_TRUE(save(files, path, newContent));
    return files.calls();
}

// What must hold after a save, whatever happened to it.
void expectWhole(const MemoryFileSystem& files, bool earlier, bool success, bool durable,
                 const std::string& what) {
    const auto content = files.content(path);
    if (success) {
        EXPECT_EQ(content, newContent) << what << ": success told, but the file differs";
    } else if (earlier) {
        EXPECT_TRUE(content == oldContent || content == newContent)
            << what << ": the earlier file is damaged";
    } else {
        EXPECT_TRUE(!content || content == newContent) << what << ": half a file was left";
    }
    for (const Crash crash : {Crash::nothingUnflushedKept, Crash::namesKept, Crash::tornContent}) {
        if (!success || !durable) break;
        EXPECT_EQ(files.afterCrash(path, crash), newContent)
            << what << ": told as saved, lost with the power";
    }
    EXPECT_EQ(files.openHandles(), 0U) << what << ": a file was left open";
}

TEST(Saver, ReplacesAndMakesFiles) {
    MemoryFileSystem files;
    ASSERT_TRUE(save(files, path, oldContent));
    EXPECT_EQ(files.content(path), oldContent);
    const auto report = save(files, path, newContent);
    ASSERT_TRUE(report) << report.error().message();
    EXPECT_EQ(files.content(path), newContent);
    EXPECT_EQ(report->facts.size, newContent.size());
    EXPECT_EQ(files.names("/shop").size(), 1U) << "a part was left behind";
}

TEST(Saver, KeepsTheEarlierFileAndNeverTellsAFalseSuccessWhicheverCallFails) {
    constexpr FileFault faults[] = {
        FileFault::diskFull, FileFault::quotaUsed,   FileFault::inputOutput,
        FileFault::noRight,  FileFault::readOnly,    FileFault::interrupted,
        FileFault::notFound, FileFault::unsupported, FileFault::other};
    int cases = 0, successes = 0;
    for (const bool earlier : {true, false})
        for (const bool unnamedRefused : {true, false}) {
            const std::size_t calls = callsOfOneSave(earlier, unnamedRefused);
            for (std::size_t call = 0; call < calls; ++call)
                for (const bool persistent : {true, false})
                    for (int kind = 0; kind <= static_cast<int>(std::size(faults)); ++kind) {
                        Fault fault{call, persistent, FileFault::other, false};
                        if (kind == static_cast<int>(std::size(faults)))
                            fault.shortWrite = true;
                        else
                            fault.fault = faults[kind];
                        MemoryFileSystem files;
                        files.refuseUnnamed(unnamedRefused);
                        if (earlier) files.put(path, oldContent);
                        files.inject(fault);
                        const auto saved = save(files, path, newContent);
                        const std::string what =
                            fmt::format("call {} of {}, fault {}, {}", call, calls, kind,
                                        persistent ? "from then on" : "once");
                        // A share that cannot flush a folder is taken at its word.
                        expectWhole(files, earlier, saved.has_value(),
                                    fault.fault != FileFault::unsupported, what);
                        if (fault.shortWrite ||
                            (fault.fault == FileFault::interrupted && !persistent)) {
                            EXPECT_TRUE(saved) << what << ": should have been got over";
                        }
                        if (!saved) {
                            EXPECT_FALSE(saved.error().what.empty()) << what;
                        }
                        ++cases;
                        if (saved) ++successes;
                    }
        }
    fmt::print("{} injected faults: {} got over, {} told, 0 files damaged\n", cases, successes,
               cases - successes);
    EXPECT_GT(cases, 800);
    EXPECT_GT(successes, 0);
    EXPECT_LT(successes, cases);
}

TEST(Saver, EveryMomentThePowerMayGoLeavesTheOldOrTheNewWhole) {
    int moments = 0;
    for (const bool unnamedRefused : {true, false})
        for (const Crash crash :
             {Crash::nothingUnflushedKept, Crash::namesKept, Crash::tornContent}) {
            MemoryFileSystem files;
            files.refuseUnnamed(unnamedRefused);
            files.put(path, oldContent);
            files.onCall([&](std::size_t call) {
                const auto left = files.afterCrash(path, crash);
                EXPECT_TRUE(left == oldContent || left == newContent)
                    << "power lost before call " << call << " leaves a damaged file";
                ++moments;
            });
            ASSERT_TRUE(save(files, path, newContent));
        }
    fmt::print("{} moments of losing power: 0 files damaged\n", moments);
    EXPECT_GT(moments, 60);
}

// The test's own check can fail: a saver that writes without a flush is caught by it.
TEST(Saver, TheModelOfLostPowerCatchesAFileThatWasNotFlushed) {
    MemoryFileSystem files;
    files.put(path, oldContent);
    const auto part = files.openNamed("/shop", "part");
    ASSERT_TRUE(part);
    ASSERT_TRUE(files.write(part->handle, newContent));
    ASSERT_TRUE(files.rename(part->path, path));
    EXPECT_EQ(files.afterCrash(path, Crash::namesKept), "") << "content was never flushed";
    EXPECT_EQ(files.afterCrash(path, Crash::nothingUnflushedKept), oldContent);
}

TEST(Saver, EveryLevelOfANearlyFullDisk) {
    for (std::size_t room = 0; room < 120; room += 2) {
        MemoryFileSystem files;
        files.put(path, oldContent);
        files.limitBytes(room);
        const auto saved = save(files, path, newContent);
        EXPECT_EQ(saved.has_value(), room >= oldContent.size() + newContent.size())
            << room << " bytes of room";
        EXPECT_EQ(files.content(path), saved ? newContent : oldContent) << room << " bytes of room";
        if (!saved) {
            EXPECT_EQ(saved.error().message(), "the disk is full");
        }
    }
}

TEST(Saver, ADiskThatGivesBackSomethingElseIsNotASuccess) {
    MemoryFileSystem files;
    files.put(path, oldContent);
    files.corruptWrites(true);
    const auto saved = save(files, path, newContent);
    ASSERT_FALSE(saved);
    EXPECT_EQ(saved.error().message(), "the disk gives back something else than was written");
    EXPECT_EQ(files.content(path), oldContent);
}

TEST(Saver, FollowsALinkAndKeepsAttributes) {
    MemoryFileSystem files;
    files.makeFolder("/share");
    files.put("/share/real.borebook", oldContent, "0640 shop");
    files.link(path, "/share/real.borebook");
    const auto saved = save(files, path, newContent);
    ASSERT_TRUE(saved);
    EXPECT_EQ(saved->path, "/share/real.borebook");
    EXPECT_EQ(files.content("/share/real.borebook"), newContent);
    EXPECT_EQ(files.attributes("/share/real.borebook"), "0640 shop");
    EXPECT_EQ(files.content(path), std::nullopt) << "the link was replaced by a file";
}

TEST(Saver, SweepsPartsOfADeadSaverButNotOfOneAtWork) {
    MemoryFileSystem files;
    const std::string prefix =
        fmt::format(".borewright-{:08x}-", fnv1a("block.borebook") & 0xffffffffU);
    files.put("/shop/" + prefix + "dead", "half");
    files.put("/shop/.borewright-somebody-else", "half");
    files.letTimePass(120);
    files.put("/shop/" + prefix + "busy", "half");
    ASSERT_TRUE(save(files, path, newContent));
    EXPECT_EQ(files.content("/shop/" + prefix + "dead"), std::nullopt);
    EXPECT_TRUE(files.content("/shop/" + prefix + "busy"));
    EXPECT_TRUE(files.content("/shop/.borewright-somebody-else"));
}

TEST(Saver, PartsLeftBeforeTheClockWasSetBackAreSweptToo) {
    MemoryFileSystem files;
    const std::string part =
        fmt::format("/shop/.borewright-{:08x}-dead", fnv1a("block.borebook") & 0xffffffffU);
    files.letTimePass(3600);
    files.put(part, "half");
    files.letTimePass(-3600);
    ASSERT_TRUE(save(files, path, newContent));
    EXPECT_EQ(files.content(part), std::nullopt) << "left lying until the clock catches up";
}

TEST(Saver, SaysInWordsWhyNot) {
    MemoryFileSystem files;
    files.put(path, oldContent);
    files.setWritable(path, false);
    EXPECT_EQ(save(files, path, "x").error().message(), "the file is write-protected");
    EXPECT_EQ(save(files, "/shop", "x").error().message(), "a folder has that name");
    EXPECT_EQ(save(files, "/gone/x", "x").error().message(), "the folder is gone");
    EXPECT_EQ(save(files, "/shop/", "x").error().message(), "no name was given");
}

TEST(Hash, IsThePublishedOne) {
    // Values from memory of the authors' own test vectors: empty text and "a".
    EXPECT_EQ(fnv1a(""), 0xcbf29ce484222325U);
    EXPECT_EQ(fnv1a("a"), 0xaf63dc4c8601ec8cU);
}

TEST(Saver, SaysHowManyOtherNamesKeepWhatTheFileHeldBefore) {
    namespace fs = std::filesystem;
    std::string name = (fs::temp_directory_path() / "borewright-links-XXXXXX").string();
    const fs::path folder = ::mkdtemp(name.data());
    const std::string first = (folder / "job.borebook").string();
    const std::string second = (folder / "second.borebook").string();
    PosixFileSystem files;
    ASSERT_TRUE(save(files, first, "old"));
    fs::create_hard_link(first, second);
    const auto saved = save(files, first, "new");
    ASSERT_TRUE(saved) << saved.error().message();
    EXPECT_EQ(saved->otherNames, 1U);
    EXPECT_EQ(files.read(first, 100), "new");
    EXPECT_EQ(files.read(second, 100), "old") << "whole, as it was";
    const auto again = save(files, first, "newer");
    ASSERT_TRUE(again);
    EXPECT_EQ(again->otherNames, 0U) << "said once: it has one name by now";
    fs::remove_all(folder);
}

} // namespace
} // namespace borewright
