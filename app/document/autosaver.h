// SPDX-License-Identifier: GPL-3.0-or-later
// Keeps the open workbook on disk: saves by itself after each change, off the window's thread, and
// never says "saved" before the bytes are on the disk. Where the file's place fails it keeps a
// rescue copy in the user's own folder, says so, and goes on trying.
#pragma once

#include "app/document/document.h"
#include "app/document/save_worker.h"
#include "core/storage/file_system.h"

#include <QObject>
#include <QString>
#include <QTimer>

#include <chrono>
#include <memory>
#include <optional>

namespace borewright {

class Autosaver : public QObject {
    Q_OBJECT
public:
    enum class State {
        nothingToSave, // no path was given, or nothing was changed since it was opened
        saved,         // the current revision is on the disk, at path()
        unsaved,       // changed a moment ago, or a change with no path to save to
        saving,
        failed, // the last attempt failed; it is tried again
    };

    // Delays between a change and its save, and between attempts; tests have shorter ones.
    struct Delays {
        std::chrono::milliseconds afterChange{120};
        std::chrono::milliseconds firstRetry{500};
        std::chrono::milliseconds longestRetry{10'000}; // each delay is twice the one before
    };

    // `rescueFolder` is where copies go while the file's own place fails; made when needed.
    // `files` is used from the worker's thread and must outlive this.
    Autosaver(Document& document, FileSystem& files, QString rescueFolder,
              QObject* parent = nullptr);
    // Waits up to two seconds for what is not yet saved.
    ~Autosaver() override;

    // Where the workbook is kept from now on. Call after Document::open(): what the document holds
    // now counts as what the file holds, if it is there; if not, the file is made with the first
    // change. Empty: nowhere.
    void setPath(const QString& path);
    // The same where the file has been read already: `held` is what markOf() said of it.
    void setPath(const QString& path, const std::optional<FileMark>& held);
    // As setPath(), but what the document holds is saved there now ("save as"). An existing file
    // is replaced: the caller has asked.
    void saveAs(const QString& path);
    // Overwrites what somebody else wrote there, once, with what the document holds.
    void overwrite();

    [[nodiscard]] QString path() const { return m_path; }
    [[nodiscard]] State state() const { return m_state; }
    // The state in words: "Saved 10:42", "Not saved: the disk is full. A rescue copy is in …".
    [[nodiscard]] QString sentence() const;
    // Somebody else changed the file since it was opened or saved here.
    [[nodiscard]] bool changedUnderneath() const { return m_changedUnderneath; }
    // Where the rescue copy is; empty where there is none.
    [[nodiscard]] QString rescuePath() const { return m_rescuePath; }
    void setDelays(const Delays& delays) { m_delays = delays; }
    // Where and how many dated copies are kept beside the saves; none at first.
    void setCopies(const CopyRules& rules) { m_copies = rules; }

    // Saves now and waits up to `ms` milliseconds; true when the current revision is on the disk
    // or there is nothing to save.
    bool flush(int ms);
    // The same, but on a disk that is slow the window goes on painting meanwhile; keys and clicks
    // wait.
    bool flushAwake(int ms);

signals:
    void stateChanged();
    // What the document holds, or held a moment ago, is on the disk at path().
    void kept();
    // Something beside the saving that he should know, in a sentence, once: no dated copy could be
    // kept, or the file had other names (hard links), which keep what it held before.
    void told(const QString& sentence);

private:
    void documentOpened();
    void documentChanged();
    void setPlace(const QString& path);
    void start();
    void takeAnswer();
    void takeCopyAnswer();
    void succeeded(const SaveAnswer& answer);
    void failed(const SaveAnswer& answer);
    void say(State state);
    [[nodiscard]] bool isCurrent() const;
    [[nodiscard]] QString failureSentence() const;

    Document& m_document;
    FileSystem& m_files;
    QString m_rescueFolder;
    QString m_path;
    Delays m_delays;
    State m_state = State::nothingToSave;
    QString m_said; // the sentence that listeners know
    QTimer m_timer;
    bool m_busy = false;
    bool m_overwriteOnce = false;
    bool m_changedUnderneath = false;
    std::uint64_t m_place = 0; // counts changes of path: an answer about another place is stale
    std::uint64_t m_savedRevision = 0;
    std::optional<FileMark> m_mark;
    std::vector<std::uint64_t> m_attempted;
    std::chrono::milliseconds m_retry{0};
    QString m_problem;
    QString m_rescuePath;
    std::uint64_t m_rescuedRevision = 0;
    QString m_rescueProblem;
    std::optional<Timestamp> m_savedAt;
    CopyRules m_copies;
    bool m_savedHere = false; // the file was written here since this place was taken
    std::optional<Timestamp> m_copyFailedAt;
    SaveWorker m_worker; // last: its thread ends before anything it might reach
};

} // namespace borewright
