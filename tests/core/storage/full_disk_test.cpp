// SPDX-License-Identifier: GPL-3.0-or-later
// A disk that is really full: a child process mounts one of 64 KiB that only it can see, fills it
// to each level, and saves. Where the system lets nobody mount, a limit on the size of files stands
// in for it. Either way real writes come back short or refused.
#include "core/storage/posix_file_system.h"
#include "core/storage/saver.h"

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <gtest/gtest.h>
#include <iterator>
#include <string>

#include <sched.h>
#include <sys/mount.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

namespace borewright {
namespace {

namespace fs = std::filesystem;

std::string contentOf(const fs::path& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

// What the child came to, by its exit status.
enum Outcome {
    held = 0,
    falseSuccess,    // told as saved, but the new content is not there
    earlierFileLost, // refused, but the earlier content is gone
    wrongWords,      // refused, but not for the disk
    partsLeft,       // parts of a save were left lying about
    neverRefused,    // the disk never was full: this proves nothing
    couldNotPrepare,
};

// Saves 20 KB over 10 KB, as good as it goes.
Outcome saveOnce(const fs::path& folder, const std::string& words, int& refusals) {
    const fs::path path = folder / "job.borebook";
    const std::string earlier(10'000, 'o');
    const std::string later(20'000, 'n');
    PosixFileSystem files;
    const auto saved = save(files, path.string(), later);
    const std::string found = contentOf(path);
    if (saved && found != later) return falseSuccess;
    if (!saved && found != earlier) return earlierFileLost;
    if (!saved && saved.error().message() != words) return wrongWords;
    for (const auto& entry : fs::directory_iterator(folder))
        if (entry.path().filename() != "job.borebook" && entry.path().filename() != "fill")
            return partsLeft;
    if (!saved) ++refusals;
    return held;
}

bool put(const fs::path& path, std::size_t bytes, char letter) {
    std::ofstream file(path, std::ios::binary | std::ios::trunc);
    file << std::string(bytes, letter);
    file.flush();
    return file.good();
}

bool mountSmallDisk(const fs::path& folder) {
    if (unshare(CLONE_NEWNS) != 0 && unshare(CLONE_NEWUSER | CLONE_NEWNS) != 0) return false;
    (void)mount(nullptr, "/", nullptr, MS_REC | MS_PRIVATE, nullptr);
    return mount("tmpfs", folder.c_str(), "tmpfs", 0, "size=64k") == 0;
}

Outcome onSmallDisk(const fs::path& folder) {
    if (!mountSmallDisk(folder)) return couldNotPrepare;
    int refusals = 0;
    for (std::size_t fill = 0; fill <= 48; fill += 4) {
        if (!put(folder / "job.borebook", 10'000, 'o')) return couldNotPrepare;
        if (!put(folder / "fill", fill * 1024, 'f')) return couldNotPrepare;
        const Outcome outcome = saveOnce(folder, "the disk is full", refusals);
        fs::remove(folder / "fill");
        if (outcome != held) return outcome;
    }
    return refusals > 3 ? held : neverRefused;
}

Outcome underFileLimit(const fs::path& folder) {
    if (!put(folder / "job.borebook", 10'000, 'o')) return couldNotPrepare;
    PosixFileSystem ignoresTheSignal;
    const rlimit limit{15'000, 15'000};
    if (setrlimit(RLIMIT_FSIZE, &limit) != 0) return couldNotPrepare;
    int refusals = 0;
    const Outcome outcome =
        saveOnce(folder, "the file is larger than this system allows", refusals);
    if (outcome != held) return outcome;
    return refusals == 1 ? held : neverRefused;
}

// The outcome of `work` in a child of its own, since mounts and limits would stay.
Outcome inChild(Outcome (*work)(const fs::path&)) {
    std::string pattern = (fs::temp_directory_path() / "borewright-disk-XXXXXX").string();
    if (mkdtemp(pattern.data()) == nullptr) return couldNotPrepare;
    const fs::path folder = pattern;
    const pid_t child = fork();
    if (child == 0) _exit(work(folder));
    int status = 0;
    if (child < 0 || waitpid(child, &status, 0) != child || !WIFEXITED(status))
        return couldNotPrepare;
    fs::remove_all(folder);
    return static_cast<Outcome>(WEXITSTATUS(status));
}

TEST(FullDisk, KeepsTheEarlierFileAtEveryLevel) {
    Outcome outcome = inChild(onSmallDisk);
    const bool mounted = outcome != couldNotPrepare;
    std::printf("%s\n", mounted ? "a real disk of 64 KiB, 13 levels"
                                : "nobody may mount here: see the limit on files below");
    if (!mounted) outcome = inChild(underFileLimit);
    EXPECT_EQ(outcome, held);
}

TEST(FullDisk, AWriteThatComesBackShortIsNoSuccess) {
    EXPECT_EQ(inChild(underFileLimit), held);
}

} // namespace
} // namespace borewright
