// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/workshop.h"

#include "app/document/awake.h"
#include "app/shell/workbook_name.h"
#include "core/storage/workbook_file.h"

#include <QDir>
#include <QFileInfo>

namespace borewright {
namespace {

constexpr int mostRecent = 8;

// A rescue copy of this workbook that is newer than its file and holds something else.
QString rescueCopyOf(FileSystem& files, const QString& folder, const QString& path,
                     const Workbook& held, std::int64_t modified) {
    const auto names = files.list(folder.toStdString());
    const QString stem = QStringLiteral("rescue-") + QFileInfo(path).completeBaseName();
    for (const std::string& name : names ? *names : std::vector<std::string>()) {
        const QString found = folder + u'/' + QString::fromStdString(name);
        if (!QString::fromStdString(name).startsWith(stem)) continue;
        const auto facts = files.facts(found.toStdString());
        if (!facts || facts->modified <= modified) continue;
        const auto copy = loadWorkbook(files, found.toStdString());
        if (!copy) continue;
        // A file that was never saved since ids are given has none.
        const bool ofIt = held.history.id.empty() || copy->history.id == held.history.id;
        Workbook record = *copy;
        record.history = held.history;
        if (ofIt && record != held) return found;
    }
    return {};
}

} // namespace

Workshop::Workshop(const Outside& outside, QObject* parent)
    : QObject(parent)
    , m_outside(outside)
    , m_document(outside.clock)
    , m_selection(m_document)
    , m_lock(outside.files, outside.processes)
    , m_autosaver(m_document, outside.files, outside.rescueFolder)
    , m_ledgerSettings(outside.files, outside.ledger.settingsPath)
    , m_ledger(m_ledgerSettings, outside.files, outside.ledger.keyring, outside.ledger.file) {
    connect(&m_autosaver, &Autosaver::kept, &m_ledger,
            [this] { m_ledger.saved(m_autosaver.path()); });
    const auto follow = [this] {
        m_autosaver.setCopies(copyRules());
        followPerson();
    };
    connect(&outside.preferences, &PreferencesStore::changed, this, follow);
    follow();
    connect(&m_lock, &LockKeeper::answered, this, [this] {
        if (!otherBench()) return;
        lookOnly();
        emit taken();
    });
}

Workshop::~Workshop() {
    (void)m_autosaver.flush(2000); // before others are told that it is free
}

// The name of his login, until the preferences know better.
void Workshop::followPerson() {
    const QString& name = m_outside.preferences.value().measuredBy;
    if (!name.isEmpty()) m_outside.bench.person = name.toStdString();
    m_document.setPerson(m_outside.bench.person);
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
    if (m_lock.answer().problem.empty()) return {};
    return tr("Other benches are not told that you have it open: %1.")
        .arg(QString::fromStdString(m_lock.answer().problem));
}

void Workshop::lock(const QString& path, bool anyway) {
    m_outside.bench.since = m_document.now();
    m_lock.take(path, m_outside.bench, anyway);
}

// Says why nothing can be changed, where that is so.
void Workshop::lookOnly() {
    if (isDatedCopy(m_autosaver.path()))
        m_document.setLookOnly(tr("this is an earlier copy, open to look at"));
    else if (otherBench())
        m_document.setLookOnly(tr("%1 has it open, so it is open here to look at")
                                   .arg(QString::fromStdString(inWords(*otherBench()))));
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

// A lock whose process is gone tells of a crash; a rescue copy newer than the file, that its place
// had failed before.
QString Workshop::sentenceOfLastTime(const QString& path) const {
    const auto& dead = m_lock.answer().dead;
    if (!dead) return {};
    const auto facts = m_outside.files.facts(path.toStdString());
    if (!facts) return {};
    constexpr std::int64_t nanoseconds = 1'000'000'000;
    const Timestamp saved{facts->modified / nanoseconds, m_document.now().offsetMinutes};
    const auto day = [](const Timestamp& time) {
        return QString::fromStdString(dateInWords(time));
    };
    const QString ended = day(std::max(saved, dead->since));
    const QString clock = QString::fromStdString(clockTime(saved));
    const QString at = day(saved) == ended ? clock : tr("%1 on %2").arg(clock, day(saved));
    QString sentence = tr("Borewright ended without closing on %1. This is what was saved at %2; "
                          "nothing shown as saved is missing.")
                           .arg(ended, at);
    const QString rescued = rescueCopyOf(m_outside.files, m_outside.rescueFolder, path,
                                         m_document.workbook(), facts->modified);
    if (!rescued.isEmpty())
        sentence +=
            u' ' +
            tr("What its place did not take is in %1.").arg(QDir::toNativeSeparators(rescued));
    return sentence;
}

PageContext Workshop::context() {
    return {m_document,        m_selection,      m_outside.preferences,
            m_outside.dialogs, m_outside.sounds, m_outside.files};
}

Result<void> Workshop::open(const QString& path) {
    const QString whole = QFileInfo(path).absoluteFilePath();
    std::optional<FileMark> mark;
    auto workbook = awake([&] {
        auto loaded = loadWorkbook(m_outside.files, whole.toStdString());
        if (loaded) mark = markOf(m_outside.files, whole.toStdString(), *loaded);
        return loaded;
    });
    if (!workbook) return tl::unexpected(workbook.error());
    m_document.open(std::move(*workbook));
    m_autosaver.setPath(whole, mark);
    if (isDatedCopy(whole))
        m_lock.release(); // nobody changes a copy
    else
        lock(whole, false);
    m_lastTime = sentenceOfLastTime(whole);
    lookOnly();
    tellLedger(whole);
    becameOpen(whole);
    return {};
}

// A save enters its job some seconds later, and a program that is killed in between never does.
void Workshop::tellLedger(const QString& path) {
    if (isDatedCopy(path)) return;
    if (m_lock.answer().dead)
        m_ledger.saved(path);
    else
        m_ledger.opened(path);
}

void Workshop::begin(Workbook workbook) {
    // Where the folder cannot be made the first save fails and says so.
    (void)m_outside.files.makeFolders(m_outside.workbookFolder.toStdString());
    const QString path = freshPath(m_outside.files, m_outside.workbookFolder,
                                   proposedName(workbook, m_document.now()));
    m_document.open(std::move(workbook));
    m_autosaver.saveAs(path);
    m_lastTime.clear();
    lock(path, true);
    becameOpen(path);
}

void Workshop::saveAs(const QString& path) {
    if (path != m_autosaver.path()) m_document.becomeAnother();
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
