// SPDX-License-Identifier: GPL-3.0-or-later
// One rebuilding of the ledger from the workbooks, on a thread of its own.
#pragma once

#include "app/ledger/ledger_rebuild.h"

#include <QObject>

#include <atomic>
#include <thread>

namespace borewright {

class LedgerRebuilding : public QObject {
    Q_OBJECT
public:
    // `files` must outlive it and allow calls from other threads.
    explicit LedgerRebuilding(FileSystem& files, QObject* parent = nullptr);
    // Gives up what is under way and waits for that.
    ~LedgerRebuilding() override;

    // From these folders, and from those that the ledger was made from before. Nothing happens
    // while one is under way.
    void start(const LedgerAccess& access, const std::vector<std::string>& folders);
    // The ledger stays as it was.
    void cancel();
    [[nodiscard]] bool isUnderWay() const { return m_underWay; }

signals:
    void progressed(qint64 done, qint64 all);
    // What came of it, in words; `changed` where the ledger holds something else now.
    void finished(const QString& sentence, const QStringList& unread, bool changed);

private:
    FileSystem& m_files;
    std::atomic<bool> m_cancelled = false;
    bool m_underWay = false; // of the window's thread
    std::thread m_thread;
};

} // namespace borewright
