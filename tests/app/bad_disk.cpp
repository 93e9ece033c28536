// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/bad_disk.h"

#include <cstdio>
#include <string>

#include <sched.h>
#include <sys/mount.h>

namespace borewright::test {
namespace {

// True where this process now has a disk of 2 MiB of its own there.
bool mountSmallDisk(const std::string& folder) {
    if (unshare(CLONE_NEWNS) != 0 && unshare(CLONE_NEWUSER | CLONE_NEWNS) != 0) return false;
    (void)mount(nullptr, "/", nullptr, MS_REC | MS_PRIVATE, nullptr);
    return mount("tmpfs", folder.c_str(), "tmpfs", 0, "size=2m") == 0;
}

} // namespace

void prepareBadDisk() {
    const QString work = qEnvironmentVariable(badDiskVariable);
    if (!work.startsWith("small:")) return;
    const bool mounted = mountSmallDisk(work.mid(6).toStdString());
    std::printf(mounted ? "mounted\n" : "not mounted\n");
    std::fflush(stdout);
}

int workOnBadDisk(const QString& work) {
    const QString folder = work.mid(work.indexOf(':') + 1);
    if (work.startsWith("faults:")) return workUnderFaults(folder, false);
    if (work.startsWith("interrupted:")) return workUnderFaults(folder, true);
    if (work.startsWith("slow:")) return workOnSlowDisk(folder);
    if (work.startsWith("opening:")) return openOnSlowDisk(folder);
    if (work.startsWith("small:")) return workOnSmallDisk(folder);
    return 2;
}

} // namespace borewright::test
