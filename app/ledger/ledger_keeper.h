// SPDX-License-Identifier: GPL-3.0-or-later
// Keeps the ledger up with what is saved at the bench, on a thread of its own. The bench never
// waits for it: where the ledger cannot be reached, what was saved waits, and the ledger catches
// up.
#pragma once

#include "app/ledger/ledger_place.h"
#include "core/storage/file_system.h"

#include <chrono>
#include <condition_variable>
#include <functional>
#include <memory>
#include <mutex>
#include <set>
#include <string>
#include <thread>
#include <vector>

namespace borewright {

class LedgerStore;

class LedgerKeeper {
public:
    // After a failure it waits `patience`, then twice as long each time, a minute at most. `files`
    // must outlive it and allow calls from its thread. `told` is called from that thread, without a
    // lock, whenever state() has changed.
    LedgerKeeper(LedgerAccess access, FileSystem& files,
                 std::chrono::milliseconds patience = std::chrono::seconds(2),
                 std::function<void()> told = {});
    // Waits for the job under way, seconds at most; what still waits is for the next rebuilding.
    ~LedgerKeeper();
    LedgerKeeper(const LedgerKeeper&) = delete;
    LedgerKeeper& operator=(const LedgerKeeper&) = delete;

    // A workbook was saved: it is read from the disk, which is the truth, and entered. Returns at
    // once, from any thread. A file that is saved again before its turn is entered once; one that
    // is marked as invented is left out.
    void saved(const std::string& file);

    // A workbook was opened: where the ledger knows its file with other content, as after a crash
    // of whatever saved it last, it is entered anew. Returns at once, from any thread. Where the
    // ledger cannot be reached nothing is said, and it does not wait.
    void opened(const std::string& file);

    struct State {
        std::vector<std::string> waiting; // files to be entered
        std::size_t entered = 0;          // jobs so far
        std::string problem;              // why the last try failed; empty where it did not
    };
    [[nodiscard]] State state() const;
    // Waits until nothing waits and what was opened is looked at, at most this long; whether that
    // came true.
    bool settle(std::chrono::milliseconds most) const;

private:
    void work();
    std::string enter(const std::string& file); // what failed of the ledger; else empty
    std::string openStore();                    // the same
    bool isBehind(const std::string& file);
    void look(std::unique_lock<std::mutex>& lock);

    const LedgerAccess m_access;
    FileSystem& m_files;
    const std::chrono::milliseconds m_patience;
    const std::function<void()> m_told;
    mutable std::mutex m_mutex;
    mutable std::condition_variable m_changed;
    std::set<std::string> m_waiting;
    std::set<std::string> m_again;  // saved once more while they were being entered
    std::set<std::string> m_opened; // to be looked at
    std::string m_problem;
    std::size_t m_entered = 0;
    bool m_ending = false;
    std::unique_ptr<LedgerStore> m_store; // of the thread alone
    std::thread m_thread;                 // last: it uses all above
};

} // namespace borewright
