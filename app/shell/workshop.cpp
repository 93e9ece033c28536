// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/workshop.h"

#include "app/shell/workbook_name.h"
#include "core/storage/workbook_file.h"

#include <QDir>
#include <QFileInfo>

namespace borewright {
namespace {

constexpr int mostRecent = 8;

} // namespace

Workshop::Workshop(const Outside& outside, QObject* parent)
    : QObject(parent)
    , m_outside(outside)
    , m_document(outside.clock)
    , m_selection(m_document)
    , m_autosaver(m_document, outside.files, outside.rescueFolder)
    , m_ledgerSettings(outside.files, outside.ledger.settingsPath)
    , m_ledger(m_ledgerSettings, outside.files, outside.ledger.keyring, outside.ledger.file) {
    connect(&m_autosaver, &Autosaver::kept, &m_ledger,
            [this] { m_ledger.saved(m_autosaver.path()); });
    const auto follow = [this] { m_autosaver.setCopies(copyRules()); };
    connect(&outside.preferences, &PreferencesStore::changed, this, follow);
    follow();
}

Workshop::~Workshop() {
    (void)m_autosaver.flush(2000); // before others are told that it is free
    unlock();
}

CopyRules Workshop::copyRules() const {
    const Preferences& preferences = m_outside.preferences.value();
    const QString& own = preferences.copiesFolder;
    CopyRules rules;
    rules.folder = (own.isEmpty() ? m_outside.copiesFolder : own).toStdString();
    rules.latest = preferences.copiesLatest;
    rules.days = preferences.copiesDays;
    rules.months = preferences.copiesMonths;
    return rules;
}

bool Workshop::isDatedCopy(const QString& path) const {
    const QString folder = QString::fromStdString(copyRules().folder);
    return !folder.isEmpty() && QDir::cleanPath(path).startsWith(QDir::cleanPath(folder) + u'/');
}

QString Workshop::lockProblem() const {
    if (m_lock.problem.empty()) return {};
    return tr("Other benches are not told that you have it open: %1.")
        .arg(QString::fromStdString(m_lock.problem));
}

void Workshop::unlock() {
    if (!m_locked.isEmpty()) releaseLock(m_outside.files, m_locked.toStdString(), m_outside.bench);
    m_locked.clear();
    m_lock = {};
}

void Workshop::lock(const QString& path, bool anyway) {
    unlock();
    if (m_outside.processes == nullptr) return;
    const QString& name = m_outside.preferences.value().measuredBy;
    if (!name.isEmpty()) m_outside.bench.person = name.toStdString();
    m_outside.bench.since = m_document.now();
    m_lock = takeLock(m_outside.files, path.toStdString(), m_outside.bench, *m_outside.processes,
                      anyway);
    if (m_lock.ours) m_locked = path;
}

// Says why nothing can be changed, where that is so.
void Workshop::lookOnly() {
    if (isDatedCopy(m_autosaver.path()))
        m_document.setLookOnly(tr("this is an earlier copy, open to look at"));
    else if (m_lock.other)
        m_document.setLookOnly(tr("%1 has it open, so it is open here to look at")
                                   .arg(QString::fromStdString(inWords(*m_lock.other))));
    else
        m_document.setLookOnly({});
}

Result<void> Workshop::changeAnyway() {
    const QString path = m_autosaver.path();
    auto workbook = loadWorkbook(m_outside.files, path.toStdString());
    if (!workbook) return tl::unexpected(workbook.error());
    m_document.open(std::move(*workbook));
    m_autosaver.setPath(path);
    lock(path, true);
    lookOnly();
    becameOpen(path);
    return {};
}

PageContext Workshop::context() {
    return {m_document,        m_selection,      m_outside.preferences,
            m_outside.dialogs, m_outside.sounds, m_outside.files};
}

Result<void> Workshop::open(const QString& path) {
    const QString whole = QFileInfo(path).absoluteFilePath();
    auto workbook = loadWorkbook(m_outside.files, whole.toStdString());
    if (!workbook) return tl::unexpected(workbook.error());
    m_document.open(std::move(*workbook));
    m_autosaver.setPath(whole);
    if (isDatedCopy(whole))
        unlock(); // nobody changes a copy
    else
        lock(whole, false);
    lookOnly();
    becameOpen(whole);
    return {};
}

void Workshop::begin(Workbook workbook) {
    // Where the folder cannot be made the first save fails and says so.
    (void)m_outside.files.makeFolders(m_outside.workbookFolder.toStdString());
    const QString path = freshPath(m_outside.files, m_outside.workbookFolder,
                                   proposedName(workbook, m_document.now()));
    m_document.open(std::move(workbook));
    m_autosaver.saveAs(path);
    lock(path, true);
    becameOpen(path);
}

void Workshop::saveAs(const QString& path) {
    m_autosaver.saveAs(path);
    lock(path, true);
    lookOnly();
    remember(path);
}

void Workshop::becameOpen(const QString& path) {
    m_open = true;
    remember(path);
    emit opened();
}

void Workshop::remember(const QString& path) {
    Preferences preferences = m_outside.preferences.value();
    if (isDatedCopy(path)) return; // tomorrow he wants the workbook itself
    preferences.lastFile = path;
    preferences.recentFiles.removeAll(path);
    preferences.recentFiles.prepend(path);
    while (preferences.recentFiles.size() > mostRecent)
        preferences.recentFiles.removeLast();
    m_outside.preferences.set(preferences);
}

} // namespace borewright
