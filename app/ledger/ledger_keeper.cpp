// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/ledger/ledger_keeper.h"

#include "app/ledger/ledger_rebuild.h"
#include "core/storage/hash.h"
#include "core/storage/workbook_file.h"

#include <algorithm>

namespace borewright {
namespace {

constexpr std::chrono::milliseconds longestWait = std::chrono::minutes(1);

} // namespace

LedgerKeeper::LedgerKeeper(LedgerAccess access, FileSystem& files,
                           std::chrono::milliseconds patience, std::function<void()> told)
    : m_access(std::move(access))
    , m_files(files)
    , m_patience(patience)
    , m_told(std::move(told))
    , m_thread([this] { work(); }) {}

LedgerKeeper::~LedgerKeeper() {
    {
        const std::lock_guard lock(m_mutex);
        m_ending = true;
    }
    m_changed.notify_all();
    m_thread.join();
}

void LedgerKeeper::saved(const std::string& file) {
    {
        const std::lock_guard lock(m_mutex);
        if (!m_waiting.insert(file).second) m_again.insert(file);
    }
    m_changed.notify_all();
}

void LedgerKeeper::opened(const std::string& file) {
    {
        const std::lock_guard lock(m_mutex);
        m_opened.insert(file);
    }
    m_changed.notify_all();
}

LedgerKeeper::State LedgerKeeper::state() const {
    const std::lock_guard lock(m_mutex);
    return {{m_waiting.begin(), m_waiting.end()}, m_entered, m_problem};
}

bool LedgerKeeper::settle(std::chrono::milliseconds most) const {
    std::unique_lock lock(m_mutex);
    return m_changed.wait_for(lock, most, [this] { return m_waiting.empty() && m_opened.empty(); });
}

void LedgerKeeper::work() {
    std::chrono::milliseconds wait = m_patience;
    std::string last; // a file that the ledger refuses holds up no other
    std::unique_lock lock(m_mutex);
    while (!m_ending) {
        if (m_waiting.empty() && m_opened.empty() &&
            m_store) { // nobody is kept waiting by a connection that idles
            lock.unlock();
            m_store.reset();
            lock.lock();
        }
        m_changed.wait(lock,
                       [this] { return m_ending || !m_waiting.empty() || !m_opened.empty(); });
        if (m_ending) break;
        if (m_waiting.empty()) {
            look(lock);
            continue;
        }
        const auto next = m_waiting.upper_bound(last);
        const std::string file = next != m_waiting.end() ? *next : *m_waiting.begin();
        last = file;
        m_again.erase(file);
        lock.unlock();
        const std::string problem = enter(file);
        lock.lock();
        m_problem = problem;
        if (problem.empty()) {
            wait = m_patience;
            ++m_entered;
            if (m_again.erase(file) == 0) m_waiting.erase(file);
            m_changed.notify_all();
        }
        if (m_told) {
            lock.unlock();
            m_told();
            lock.lock();
        }
        if (problem.empty()) continue;
        m_changed.wait_for(lock, wait, [this] { return m_ending; });
        wait = std::min(2 * wait, longestWait);
    }
    lock.unlock();
    m_store.reset(); // where it was opened
}

// One of the files that were opened; what was saved goes before.
void LedgerKeeper::look(std::unique_lock<std::mutex>& lock) {
    const std::string file = *m_opened.begin();
    lock.unlock();
    const bool entered = isBehind(file) && enter(file).empty();
    lock.lock();
    m_opened.erase(file);
    if (entered) ++m_entered;
    m_changed.notify_all();
    if (!entered || !m_told) return;
    lock.unlock();
    m_told();
    lock.lock();
}

// The ledger knows the file, and it holds something else now.
bool LedgerKeeper::isBehind(const std::string& file) {
    const LedgerPlace& place = m_access.place;
    if (!place.server && !m_files.facts(place.file)) return false; // none is made for this
    if (!openStore().empty()) return false;
    const auto known = m_store->job(file);
    if (!known) m_store.reset(); // the connection may be lost
    if (!known || !*known) return false;
    const auto bytes = m_files.read(file, largestWorkbookFile);
    return bytes && fnv1a(*bytes) != (*known)->content;
}

std::string LedgerKeeper::openStore() {
    if (m_store) return {};
    auto opened =
        LedgerStore::open(m_access.place, LedgerStore::Check::beginning, m_access.password);
    if (!opened) return opened.error().message();
    m_store = std::move(*opened);
    return {};
}

std::string LedgerKeeper::enter(const std::string& file) {
    if (std::string problem = openStore(); !problem.empty()) return problem;
    const auto job = readJob(m_files, file);
    // Gone or unreadable: the saver says so where it matters, and a rebuilding lists it.
    if (!job || job->invented) return {};
    if (const auto put = m_store->put(*job); !put) {
        m_store.reset(); // the connection may be lost: the next try opens another
        return put.error().message();
    }
    return {};
}

} // namespace borewright
