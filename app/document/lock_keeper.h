// SPDX-License-Identifier: GPL-3.0-or-later
// Keeps the lock beside the open workbook. Lock files are written and removed on a thread of their
// own, in order, since a slow disk takes seconds for each; only who has it is waited for (awake.h).
#pragma once

#include "core/storage/bench_lock.h"

#include <QObject>
#include <QString>
#include <QThreadPool>

namespace borewright {

class LockKeeper : public QObject {
    Q_OBJECT
public:
    // `files` and `processes` are used from both threads and must outlive this; without processes
    // there are no locks.
    LockKeeper(FileSystem& files, Processes* processes, QObject* parent = nullptr);
    ~LockKeeper() override; // removes the lock, and waits for it

    // Leaves the lock held so far and takes that of another workbook for `me`: from whoever has it
    // with `anyway`; else the answer at once says who has it, and whose lock a dead one was.
    // What becomes of the writing is answered() later.
    void take(const QString& workbook, const LockHolder& me, bool anyway);
    void release();
    [[nodiscard]] const LockAnswer& answer() const { return m_answer; }
    // Waits for what is under way; what was answered is told before it returns.
    void settle();

signals:
    void answered(); // answer() says something else than it did

private:
    FileSystem& m_files;
    Processes* m_processes;
    QString m_workbook; // that a lock of ours lies beside, or will; empty = none
    LockHolder m_me;
    LockAnswer m_answer;
    std::uint64_t m_turn = 0; // counts what was asked: an answer about an earlier workbook is stale
    QThreadPool m_thread;     // of one; last, so that it ends before what it might reach
};

} // namespace borewright
