// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/document/autosaver.h"

#include "app/document/awake.h"
#include "core/storage/hash.h"
#include "core/storage/workbook_file.h"

#include <QDeadlineTimer>
#include <QDir>
#include <QEventLoop>

namespace borewright {

Autosaver::Autosaver(Document& document, FileSystem& files, QString rescueFolder, QObject* parent)
    : QObject(parent)
    , m_document(document)
    , m_files(files)
    , m_rescueFolder(std::move(rescueFolder))
    , m_savedRevision(document.revision())
    , m_worker(files, [this] {
        QMetaObject::invokeMethod(this, &Autosaver::takeAnswer, Qt::QueuedConnection);
    }) {
    m_timer.setSingleShot(true);
    connect(&m_timer, &QTimer::timeout, this, &Autosaver::start);
    connect(&document, &Document::aboutToOpen, this, [this] { (void)flush(2000); });
    connect(&document, &Document::changed, this, [this](Change change) {
        if (change == Change::everything)
            documentOpened();
        else if (change != Change::units && change != Change::doubts)
            documentChanged();
    });
    connect(&document, &Document::noted, this, &Autosaver::documentChanged);
    m_said = sentence();
}

Autosaver::~Autosaver() {
    (void)flush(2000);
}

// Another workbook must never go to the earlier one's place.
void Autosaver::documentOpened() {
    setPlace({});
    m_savedRevision = m_document.revision();
    say(State::nothingToSave);
}

void Autosaver::documentChanged() {
    if (m_path.isEmpty()) return say(State::unsaved);
    const bool failing = m_state == State::failed;
    // The delay counts from the first change of a burst, so that a fast typist does not put it
    // off; while a place fails, the rescue copy still wants the change soon.
    const auto delay = m_delays.afterChange;
    if (!m_busy && (!m_timer.isActive() || m_timer.remainingTimeAsDuration() > delay))
        m_timer.start(delay);
    say(failing ? State::failed : State::unsaved);
}

void Autosaver::setPlace(const QString& path) {
    m_timer.stop();
    ++m_place;
    m_path = path;
    m_mark.reset();
    m_attempted.clear();
    m_overwriteOnce = false;
    m_changedUnderneath = false;
    m_retry = std::chrono::milliseconds(0);
    m_problem.clear();
    m_rescuePath.clear();
    m_rescuedRevision = 0;
    m_rescueProblem.clear();
    m_savedAt.reset();
    m_savedHere = false;
}

void Autosaver::setPath(const QString& path) {
    setPath(path, path.isEmpty() ? std::nullopt
                                 : markOf(m_files, path.toStdString(), m_document.workbook()));
}

void Autosaver::setPath(const QString& path, const std::optional<FileMark>& held) {
    setPlace(path);
    m_savedRevision = m_document.revision();
    m_mark = held;
    say(m_mark ? State::saved : State::nothingToSave);
}

void Autosaver::saveAs(const QString& path) {
    // The rescue copy of the earlier place goes when the new place holds the work.
    const auto rescued = std::pair(m_rescuePath, m_rescuedRevision);
    setPlace(path);
    std::tie(m_rescuePath, m_rescuedRevision) = rescued;
    overwrite();
}

void Autosaver::overwrite() {
    if (m_path.isEmpty()) return;
    m_overwriteOnce = true;
    m_savedRevision = m_document.revision() - 1; // whatever is there: not this
    m_timer.start(0);
    say(State::unsaved);
}

bool Autosaver::isCurrent() const {
    return m_savedRevision == m_document.revision();
}

void Autosaver::start() {
    if (m_busy || m_path.isEmpty() || isCurrent()) return;
    m_timer.stop();
    m_busy = true;
    SaveJob job;
    job.id = m_place;
    job.workbook = m_document.handOut();
    job.revision = m_document.revision();
    job.path = m_path.toStdString();
    job.mark = m_mark;
    job.attempted = m_attempted;
    job.overwrite = m_overwriteOnce;
    job.rescueFolder = m_rescueFolder.toStdString();
    job.rescuePath = m_rescuePath.toStdString();
    job.rescuedRevision = m_rescuedRevision;
    job.now = m_document.now();
    // A place that takes no copies is asked again after a while, not at every reading.
    const bool resting =
        m_copyFailedAt &&
        job.now.secondsSinceEpoch < m_copyFailedAt->secondsSinceEpoch + m_copies.apart.count();
    if (!resting) job.copies = m_copies;
    job.keepEarlier = !m_savedHere || m_overwriteOnce;
    m_worker.post(std::move(job));
    if (m_state != State::failed) say(State::saving);
}

void Autosaver::takeCopyAnswer() {
    const auto answer = m_worker.takeCopied();
    if (!answer || answer->id != m_place) return; // about a place that was left
    const bool failedBefore = m_copyFailedAt.has_value();
    m_copyFailedAt.reset();
    if (answer->problem.empty()) return;
    m_copyFailedAt = m_document.now();
    if (failedBefore) return;
    emit told(tr("No dated copy could be kept in %1: %2. The workbook itself is saved.")
                  .arg(QDir::toNativeSeparators(QString::fromStdString(m_copies.folder)),
                       QString::fromStdString(answer->problem)));
}

void Autosaver::takeAnswer() {
    takeCopyAnswer();
    const auto answer = m_worker.take();
    if (!answer) return; // taken by flush() already
    m_busy = false;
    if (answer->id != m_place) { // about a place that was left
        if (!m_path.isEmpty() && !isCurrent()) m_timer.start(0);
        return;
    }
    if (answer->mark)
        succeeded(*answer);
    else
        failed(*answer);
}

void Autosaver::succeeded(const SaveAnswer& answer) {
    m_mark = answer.mark;
    m_attempted.clear();
    m_overwriteOnce = false;
    m_changedUnderneath = false;
    m_savedRevision = answer.revision;
    m_savedHere = true;
    m_savedAt = m_document.now();
    m_retry = std::chrono::milliseconds(0);
    m_problem.clear();
    m_rescuePath.clear();
    m_rescuedRevision = 0;
    m_rescueProblem.clear();
    if (answer.otherNames > 0)
        emit told(tr("%1 has other names on this disk (hard links). It is saved under this name; "
                     "the others keep what it held before.")
                      .arg(QDir::toNativeSeparators(m_path)));
    emit kept();
    if (isCurrent()) return say(State::saved);
    m_timer.start(0);
    say(State::saving);
}

void Autosaver::failed(const SaveAnswer& answer) {
    m_attempted.push_back(answer.hash);
    m_changedUnderneath = answer.changedUnderneath;
    m_problem = QString::fromStdString(answer.problem);
    m_rescuePath = QString::fromStdString(answer.rescuePath);
    m_rescuedRevision = answer.rescuedRevision;
    m_rescueProblem = QString::fromStdString(answer.rescueProblem);
    m_retry =
        m_retry.count() == 0 ? m_delays.firstRetry : std::min(m_retry * 2, m_delays.longestRetry);
    // What was typed meanwhile is in no file yet.
    m_timer.start(answer.revision == m_document.revision() ? m_retry : m_delays.afterChange);
    say(State::failed);
}

bool Autosaver::flush(int ms) {
    const QDeadlineTimer deadline(ms);
    const auto left = [&] { return std::chrono::milliseconds(deadline.remainingTime()); };
    if (m_busy && m_worker.wait(left())) takeAnswer(); // of an earlier revision, perhaps
    while (!m_path.isEmpty() && !isCurrent()) {
        start();
        if (!m_worker.wait(left())) return false;
        takeAnswer();
        if (m_state == State::failed) return false;
    }
    return isCurrent();
}

bool Autosaver::flushAwake(int ms) {
    if (flush(unnoticed) || m_state == State::failed) return isCurrent();
    QEventLoop loop;
    QTimer patience;
    patience.setSingleShot(true);
    connect(&patience, &QTimer::timeout, &loop, &QEventLoop::quit);
    connect(this, &Autosaver::stateChanged, &loop, [&] {
        if (m_state == State::failed || m_state == State::saved) loop.quit();
    });
    patience.start(ms);
    if (m_path.isEmpty()) return isCurrent();
    loop.exec(QEventLoop::ExcludeUserInputEvents);
    return isCurrent();
}

void Autosaver::say(State state) {
    const bool sameState = std::exchange(m_state, state) == state;
    const QString now = sentence();
    if (std::exchange(m_said, now) == now && sameState) return;
    emit stateChanged();
}

QString Autosaver::failureSentence() const {
    QString text = tr("Not saved: %1.").arg(m_problem);
    if (!m_rescuePath.isEmpty())
        text += u' ' + tr("A rescue copy is in %1.").arg(QDir::toNativeSeparators(m_rescuePath));
    if (!m_rescueProblem.isEmpty())
        text += u' ' + tr("No rescue copy could be made: %1.").arg(m_rescueProblem);
    if (!m_changedUnderneath) text += u' ' + tr("Trying again.");
    return text;
}

QString Autosaver::sentence() const {
    switch (m_state) {
    case State::nothingToSave:
        return tr("Nothing to save yet");
    case State::saved:
        return m_savedAt ? tr("Saved %1").arg(QString::fromStdString(clockTime(*m_savedAt)))
                         : tr("Saved");
    case State::unsaved:
        return m_path.isEmpty() ? tr("Not saved: the workbook has no name yet") : tr("Saving …");
    case State::saving:
        return tr("Saving …");
    case State::failed:
        return failureSentence();
    }
    return {};
}

} // namespace borewright
