// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/jobs/ledger_clerk.h"

#include <algorithm>

namespace borewright {

LedgerClerk::LedgerClerk(QObject* parent)
    : QObject(parent)
    , m_thread([this] { work(); }) {}

LedgerClerk::~LedgerClerk() {
    {
        const std::lock_guard lock(m_mutex);
        m_ending = true;
    }
    m_changed.notify_all();
    m_thread.join();
}

void LedgerClerk::setAccess(const std::optional<LedgerAccess>& access) {
    const std::lock_guard lock(m_mutex);
    if (access == m_access) return;
    m_latest.clear();
    m_access = access;
    m_moved = true;
    m_waiting.clear();
}

void LedgerClerk::reopen() {
    const std::lock_guard lock(m_mutex);
    m_moved = true;
}

void LedgerClerk::forget(const QString& kind) {
    m_latest.erase(kind);
    const std::lock_guard lock(m_mutex);
    m_waiting.remove_if([&](const Question& one) { return one.kind == kind; });
}

void LedgerClerk::post(const QString& kind, Work work) {
    m_latest[kind] = ++m_number;
    {
        const std::lock_guard lock(m_mutex);
        if (!m_access) return;
        m_waiting.remove_if([&](const Question& one) { return one.kind == kind; });
        m_waiting.push_back({kind, m_number, std::move(work)});
    }
    m_changed.notify_all();
}

void LedgerClerk::work() {
    std::unique_lock lock(m_mutex);
    for (;;) {
        m_changed.wait(lock, [this] { return m_ending || !m_waiting.empty(); });
        if (m_ending) break;
        const Question question = std::move(m_waiting.front());
        m_waiting.pop_front();
        const LedgerAccess access = m_access.value_or(LedgerAccess());
        const bool moved = std::exchange(m_moved, false);
        lock.unlock();
        if (moved) m_store.reset();
        Told told = answer(question, access);
        QMetaObject::invokeMethod(
            this,
            [this, kind = question.kind, number = question.number, told = std::move(told)] {
                deliver(kind, number, told);
            },
            Qt::QueuedConnection);
        lock.lock();
    }
    lock.unlock();
    m_store.reset(); // where it was opened
}

LedgerClerk::Told LedgerClerk::answer(const Question& question, const LedgerAccess& access) {
    if (!m_store) {
        auto store =
            LedgerStore::open(access.place, LedgerStore::Check::beginning, access.password);
        if (!store) return {{}, QString::fromStdString(store.error().message())};
        m_store = std::move(*store);
        QMetaObject::invokeMethod(
            this,
            [this, notice = QString::fromStdString(m_store->notice()), isNew = m_store->isNew()] {
                emit opened(notice, isNew);
            },
            Qt::QueuedConnection);
    }
    Told told = question.work(*m_store);
    if (!told.then) m_store.reset(); // the connection may be lost: the next question opens another
    return told;
}

void LedgerClerk::deliver(const QString& kind, std::uint64_t number, const Told& told) {
    const auto latest = m_latest.find(kind);
    if (latest == m_latest.end() || latest->second != number) return;
    m_latest.erase(latest);
    if (told.then)
        told.then();
    else
        emit refused(kind, told.problem);
}

} // namespace borewright
