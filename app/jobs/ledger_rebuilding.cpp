// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/jobs/ledger_rebuilding.h"

#include <QElapsedTimer>

#include <algorithm>

namespace borewright {
namespace {

constexpr int tellEvery = 100; // ms

QString told(const Rebuilt& rebuilt) {
    if (rebuilt.cancelled) return LedgerRebuilding::tr("Given up. The ledger is as it was before.");
    QString text = rebuilt.taken == 1
                       ? LedgerRebuilding::tr("Took in 1 workbook")
                       : LedgerRebuilding::tr("Took in %L1 workbooks").arg(rebuilt.taken);
    if (rebuilt.gone > 0)
        text += LedgerRebuilding::tr("; took out %L1 whose file is gone").arg(rebuilt.gone);
    if (!rebuilt.unread.empty())
        text += LedgerRebuilding::tr("; %L1 could not be read").arg(rebuilt.unread.size());
    return text + u'.';
}

Result<Rebuilt> rebuild(const LedgerAccess& access, FileSystem& files,
                        std::vector<std::string> folders, const RebuildProgress& progress,
                        const std::function<bool()>& goesOn) {
    const auto store = LedgerStore::open(access.place, LedgerStore::Check::whole, access.password);
    if (!store) return tl::unexpected(store.error());
    const auto known = (*store)->folders();
    if (!known) return tl::unexpected(known.error());
    for (const std::string& folder : *known)
        if (std::ranges::find(folders, folder) == folders.end()) folders.push_back(folder);
    return rebuildLedger(**store, files, folders, progress, goesOn);
}

} // namespace

LedgerRebuilding::LedgerRebuilding(FileSystem& files, QObject* parent)
    : QObject(parent)
    , m_files(files) {}

LedgerRebuilding::~LedgerRebuilding() {
    cancel();
    if (m_thread.joinable()) m_thread.join();
}

void LedgerRebuilding::cancel() {
    m_cancelled = true;
}

void LedgerRebuilding::start(const LedgerAccess& access, const std::vector<std::string>& folders) {
    if (m_underWay) return;
    if (m_thread.joinable()) m_thread.join(); // it has told its end already
    m_underWay = true;
    m_cancelled = false;
    m_thread = std::thread([this, access, folders] {
        QElapsedTimer since;
        const auto progress = [&](std::int64_t done, std::int64_t all) {
            if (!since.isValid() || since.elapsed() >= tellEvery) {
                since.start();
                QMetaObject::invokeMethod(
                    this, [this, done, all] { emit progressed(done, all); }, Qt::QueuedConnection);
            }
            return !m_cancelled;
        };
        const auto rebuilt =
            rebuild(access, m_files, folders, progress, [this] { return !m_cancelled; });
        QStringList unread;
        for (const UnreadFile& file : rebuilt ? rebuilt->unread : std::vector<UnreadFile>())
            unread += QString::fromStdString(file.file + ": " + file.reason);
        const bool changed = rebuilt && !rebuilt->cancelled;
        const QString sentence = rebuilt
                                     ? told(*rebuilt)
                                     : tr("The ledger was not made anew: %1.")
                                           .arg(QString::fromStdString(rebuilt.error().message()));
        QMetaObject::invokeMethod(
            this,
            [this, sentence, unread, changed] {
                m_underWay = false;
                emit finished(sentence, unread, changed);
            },
            Qt::QueuedConnection);
    });
}

} // namespace borewright
