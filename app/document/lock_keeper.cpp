// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/document/lock_keeper.h"

#include "app/document/awake.h"

#include <QCoreApplication>

namespace borewright {

LockKeeper::LockKeeper(FileSystem& files, Processes* processes, QObject* parent)
    : QObject(parent)
    , m_files(files)
    , m_processes(processes) {
    m_thread.setMaxThreadCount(1);
}

LockKeeper::~LockKeeper() {
    release();
    m_thread.waitForDone();
}

void LockKeeper::release() {
    ++m_turn;
    m_answer = {};
    if (m_workbook.isEmpty()) return;
    m_thread.start([this, workbook = m_workbook.toStdString(), me = m_me] {
        releaseLock(m_files, workbook, me);
    });
    m_workbook.clear();
}

void LockKeeper::take(const QString& workbook, const LockHolder& me, bool anyway) {
    // Its own lock again needs no leaving: nobody else shall find it free meanwhile.
    if (workbook != m_workbook) release();
    if (m_processes == nullptr) return;
    const std::uint64_t turn = ++m_turn;
    m_answer =
        anyway ? LockAnswer()
               : awake([&] { return askLock(m_files, workbook.toStdString(), me, *m_processes); });
    if (m_answer.other || turn != m_turn) return;
    m_workbook = workbook;
    m_me = me;
    m_thread.start([this, turn, anyway, path = workbook.toStdString(), me] {
        const LockAnswer taken = takeLock(m_files, path, me, *m_processes, anyway);
        QMetaObject::invokeMethod(
            this,
            [this, turn, taken] {
                if (turn != m_turn) return;
                const auto dead = m_answer.dead;
                m_answer = taken;
                m_answer.dead = dead;
                if (!taken.ours) m_workbook.clear();
                if (taken.other || !taken.problem.empty()) emit answered();
            },
            Qt::QueuedConnection);
    });
}

void LockKeeper::settle() {
    m_thread.waitForDone();
    QCoreApplication::sendPostedEvents(this, QEvent::MetaCall);
}

} // namespace borewright
