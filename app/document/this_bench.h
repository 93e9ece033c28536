// SPDX-License-Identifier: GPL-3.0-or-later
// Who this program is to others that open the same workbook, and what runs on this machine.
#pragma once

#include "core/storage/bench_lock.h"

namespace borewright {

// Asks Linux's folder of processes. Where there is none, nothing is known of any process.
class MachineProcesses final : public Processes {
public:
    explicit MachineProcesses(FileSystem& files)
        : m_files(files) {}
    Found find(std::int64_t process) override;

private:
    FileSystem& m_files;
};

// This program on this machine; `since` and the person's name are for the moment of opening, the
// name being that of his login until the preferences know better.
LockHolder thisBench(Processes& processes);

} // namespace borewright
