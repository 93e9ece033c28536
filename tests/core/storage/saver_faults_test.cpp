// SPDX-License-Identifier: GPL-3.0-or-later
// The saver under faults by the ten thousand: each call failing in each way, two faults in one
// save, and power going at each call with every choice of what had reached the disk by then.
// Whatever happens, the old or the new content is there whole, "saved" is never said falsely, and
// the next save sweeps away what was left lying about.
#include "core/storage/saver.h"
#include "tests/support/faulty_files.h"
#include "tests/support/memory_file_system.h"

#include <algorithm>
#include <array>
#include <fmt/format.h>
#include <gtest/gtest.h>

namespace borewright {
namespace {

using test::FaultyFiles;
using test::PlannedFault;
using Way = PlannedFault::Way;

const std::string path = "/shop/block.borebook";
const std::string oldContent(30, 'o');
const std::string newContent(50, 'n');
const std::string nextContent(40, 'x');

constexpr std::array faults{FileFault::diskFull,    FileFault::quotaUsed, FileFault::inputOutput,
                            FileFault::noRight,     FileFault::readOnly,  FileFault::interrupted,
                            FileFault::unsupported, FileFault::other};

// What the disk is like before the save.
struct Ground {
    bool earlier = true;
    bool unnamedRefused = false;
};
constexpr std::array grounds{Ground{true, false}, Ground{true, true}, Ground{false, false},
                             Ground{false, true}};

void prepare(MemoryFileSystem& files, const Ground& ground) {
    files.refuseUnnamed(ground.unnamedRefused);
    files.limitWrites(20); // three writes for the new content
    if (ground.earlier) files.put(path, oldContent);
}

// What became of all cases; the first few that broke a promise are kept in words.
struct Tally {
    int cases = 0;
    int saved = 0;
    int told = 0;
    int promisesBroken = 0;
    std::vector<std::string> broken;

    void breaks(std::string what) {
        ++promisesBroken;
        if (broken.size() < 10) broken.push_back(std::move(what));
    }
    void print(const char* of) const {
        fmt::print("{} {}: {} saved, {} told, {} damaged, falsely saved or left lying\n", cases, of,
                   saved, told, promisesBroken);
    }
};

std::string inWords(const Ground& ground, const std::vector<PlannedFault>& planned) {
    std::string text = ground.earlier ? "over an earlier file" : "a new file";
    if (ground.unnamedRefused) text += " on a share";
    for (const PlannedFault& fault : planned)
        text += fmt::format(", call {} {}{}: {}", fault.call, fault.fromThenOn ? "and on " : "",
                            fault.way == Way::shortWrite    ? "short"
                            : fault.way == Way::doneAndLost ? "done, but told as failed"
                                                            : "failed",
                            borewright::inWords(fault.fault));
    return text;
}

bool isWhole(const std::optional<std::string>& content, const Ground& ground) {
    if (content == newContent) return true;
    return ground.earlier ? content == oldContent : !content.has_value();
}

// A share that says that it cannot flush a folder is taken at its word.
bool mayBeLost(const std::vector<PlannedFault>& planned) {
    return std::ranges::any_of(planned, [](const PlannedFault& fault) {
        return fault.fault == FileFault::unsupported && fault.way == Way::refused;
    });
}

// The next save of a healthy disk, later, goes well and leaves nothing but the file.
void expectHealed(MemoryFileSystem& disk, const std::string& what, Tally& tally) {
    disk.letTimePass(120);
    const auto saved = save(disk, path, nextContent);
    if (!saved) return tally.breaks(what + ": the next save fails: " + saved.error().message());
    if (disk.content(path) != nextContent) tally.breaks(what + ": the next save is wrong");
    if (disk.names("/shop").size() != 1) tally.breaks(what + ": parts are left for good");
}

// Power goes now, with every choice of what had reached the disk.
void cutPower(const MemoryFileSystem& files, const Ground& ground, bool toldSaved, bool healing,
              const std::string& what, Tally& tally) {
    const std::uint64_t choices = 1ULL << std::min<std::size_t>(files.unflushed(), 8);
    for (std::uint64_t arrived = 0; arrived < choices; ++arrived) {
        const auto disk = files.afterPowerCut(arrived);
        const auto content = disk->content(path);
        ++tally.cases;
        ++(toldSaved ? tally.saved : tally.told);
        if (toldSaved && content != newContent)
            tally.breaks(what + ": told as saved, lost with the power");
        if (!isWhole(content, ground)) tally.breaks(what + ": damaged by the loss of power");
        if (healing) expectHealed(*disk, what, tally);
    }
}

// Saves under the faults; returns how many of them struck.
std::size_t saveUnder(const std::vector<PlannedFault>& planned, const Ground& ground,
                      Tally& tally) {
    MemoryFileSystem disk;
    prepare(disk, ground);
    FaultyFiles files(disk, planned);
    const auto saved = save(files, path, newContent);
    if (files.struck() < planned.size()) return files.struck();
    const auto content = disk.content(path);
    ++tally.cases;
    ++(saved ? tally.saved : tally.told);
    const auto words = [&] { return inWords(ground, planned); };
    if (saved && content != newContent) tally.breaks(words() + ": a false \"saved\"");
    if (!isWhole(content, ground)) tally.breaks(words() + ": the file is damaged");
    if (!saved && saved.error().message().empty()) tally.breaks(words() + ": no words");
    if (disk.openHandles() != 0) tally.breaks(words() + ": a file was left open");
    if (saved && !mayBeLost(planned) && disk.afterPowerCut(0)->content(path) != newContent)
        tally.breaks(words() + ": told as saved, lost with the power");
    expectHealed(disk, words(), tally);
    return files.struck();
}

// Every way in which one call can go wrong.
std::vector<PlannedFault> waysToFail(std::size_t call) {
    std::vector<PlannedFault> all;
    for (const bool fromThenOn : {false, true}) {
        for (const FileFault fault : faults)
            for (const Way way : {Way::refused, Way::doneAndLost})
                all.push_back({call, fromThenOn, way, fault});
        all.push_back({call, fromThenOn, Way::shortWrite, FileFault::other});
    }
    return all;
}

void expectNothingBroken(const Tally& tally) {
    for (const std::string& what : tally.broken)
        ADD_FAILURE() << what;
}

TEST(SaverFaults, EachCallFailsInEachWayUntilASavePasses) {
    Tally tally;
    for (const Ground& ground : grounds)
        for (const PlannedFault& way : waysToFail(0))
            for (PlannedFault fault = way;; ++fault.call)
                if (saveUnder({fault}, ground, tally) == 0) break;
    expectNothingBroken(tally);
    tally.print("single faults");
    EXPECT_GT(tally.cases, 1500);
    EXPECT_GT(tally.saved, 300) << "hardly a fault was got over";
    EXPECT_GT(tally.told, 300) << "hardly a fault was told: this proves nothing";
}

TEST(SaverFaults, AFaultWhileRecoveringFromAFault) {
    Tally tally;
    for (const Ground& ground : grounds)
        for (const PlannedFault& way : waysToFail(0))
            for (PlannedFault first = way;; ++first.call) {
                if (first.fromThenOn) break; // no second fault could be told apart
                std::size_t struck = 0;
                for (const PlannedFault& then : waysToFail(first.call + 1))
                    for (PlannedFault second = then;; ++second.call) {
                        const std::size_t now = saveUnder({first, second}, ground, tally);
                        struck = std::max(struck, now);
                        if (now < 2) break;
                    }
                if (struck == 0) break;
            }
    expectNothingBroken(tally);
    tally.print("pairs of faults");
    EXPECT_GT(tally.cases, 20'000);
}

TEST(SaverFaults, PowerGoesAtEachCallWithEveryChoiceOfWhatHadArrived) {
    Tally tally;
    for (const Ground& ground : grounds) {
        MemoryFileSystem disk;
        prepare(disk, ground);
        disk.onCall([&](std::size_t call) {
            cutPower(disk, ground, false, true, fmt::format("power lost at call {}", call), tally);
        });
        ASSERT_TRUE(save(disk, path, newContent));
        disk.onCall({});
        cutPower(disk, ground, true, true, "power lost when saved", tally);
    }
    expectNothingBroken(tally);
    tally.print("losses of power");
    EXPECT_GT(tally.cases, 150);
}

TEST(SaverFaults, PowerGoesWhileASaveIsFailing) {
    Tally tally;
    for (const Ground& ground : grounds)
        for (const PlannedFault& way : waysToFail(0))
            for (PlannedFault fault = way;; ++fault.call) {
                MemoryFileSystem disk;
                prepare(disk, ground);
                FaultyFiles files(disk, {fault});
                disk.onCall([&](std::size_t) {
                    // While it mends what the fault did; later it only repeats itself.
                    if (files.struck() > 0 && files.calls() < fault.call + 9)
                        cutPower(disk, ground, false, false, inWords(ground, {fault}), tally);
                });
                const auto saved = save(files, path, newContent);
                disk.onCall({});
                if (files.struck() == 0) break;
                cutPower(disk, ground, saved && !mayBeLost({fault}), true,
                         inWords(ground, {fault}) + ", at its end", tally);
            }
    expectNothingBroken(tally);
    tally.print("losses of power after a fault");
    EXPECT_GT(tally.cases, 10'000);
}

// These checks can fail: a file written without a flush is damaged by some choice of what arrived.
TEST(SaverFaults, TheModelCatchesAFileThatWasNotFlushed) {
    MemoryFileSystem files;
    prepare(files, grounds[1]);
    const auto part = files.openNamed("/shop", "part");
    ASSERT_TRUE(part);
    for (int i = 0; i < 2; ++i)
        ASSERT_TRUE(files.write(part->handle, std::string(20, 'n')));
    ASSERT_TRUE(files.rename(part->path, path));
    EXPECT_EQ(files.unflushed(), 4U) << "two names and two writes";
    EXPECT_EQ(files.afterPowerCut(0)->content(path), oldContent);
    EXPECT_EQ(files.afterPowerCut(0b0010)->content(path), "") << "the name came, nothing else";
    EXPECT_EQ(files.afterPowerCut(0b1010)->content(path),
              std::string(20, '\0') + std::string(20, 'n'));
    Tally tally;
    cutPower(files, grounds[1], false, false, "not flushed", tally);
    EXPECT_FALSE(tally.broken.empty());
}

} // namespace
} // namespace borewright
