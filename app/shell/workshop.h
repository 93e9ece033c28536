// SPDX-License-Identifier: GPL-3.0-or-later
// What the program owns while it runs: the open workbook, what is selected, the preferences.
// Opens, begins and keeps workbooks; the window only shows what it says.
#pragma once

#include "app/context/page_context.h"
#include "app/document/autosaver.h"
#include "app/document/lock_keeper.h"
#include "app/jobs/ledger_desk.h"

#include <QObject>

#include <memory>

namespace borewright {

// What reaches the program from outside, handed in so that tests have their own. All must outlive
// the workshop.
struct Outside {
    FileSystem& files;
    const Clock& clock;
    Dialogs& dialogs;
    Sounds& sounds;
    PreferencesStore& preferences;
    QString rescueFolder;   // where a workbook goes whose own place fails
    QString workbookFolder; // where a new workbook is put
    QString copiesFolder{}; // of dated copies, where the preferences name none; empty = none
    // Who this bench is to others, and what tells whether they are still there; null = no locks.
    LockHolder bench{};
    Processes* processes = nullptr;
    LedgerMeans ledger{}; // of jobs; without a file none is kept
};

class Workshop : public QObject {
    Q_OBJECT
public:
    explicit Workshop(const Outside& outside, QObject* parent = nullptr);
    ~Workshop() override;

    [[nodiscard]] Document& document() { return m_document; }
    [[nodiscard]] Selection& selection() { return m_selection; }
    [[nodiscard]] Autosaver& autosaver() { return m_autosaver; }
    [[nodiscard]] LedgerDesk& ledger() { return m_ledger; }
    [[nodiscard]] LedgerSettingsStore& ledgerSettings() { return m_ledgerSettings; }
    [[nodiscard]] const LedgerMeans& ledgerMeans() const { return m_outside.ledger; }
    [[nodiscard]] FileSystem& files() { return m_outside.files; }
    [[nodiscard]] const QString& workbookFolder() const { return m_outside.workbookFolder; }
    [[nodiscard]] PreferencesStore& preferences() { return m_outside.preferences; }
    [[nodiscard]] Dialogs& dialogs() { return m_outside.dialogs; }
    [[nodiscard]] PageContext context();

    // Whether a workbook is open; else the start form is shown.
    [[nodiscard]] bool isOpen() const { return m_open; }

    // Opens the file at `path`. Refused in a sentence, with what was open left open.
    Result<void> open(const QString& path);
    // Begins a workbook and has it on disk at once, under a name of its own.
    void begin(Workbook workbook);
    // Who else has the open workbook, so that it is open here to look at only.
    [[nodiscard]] const std::optional<LockHolder>& otherBench() const {
        return m_lock.answer().other;
    }
    // Why nobody else is told that it is open here, in a sentence; empty where they are.
    [[nodiscard]] QString lockProblem() const;
    // What became of the workbook last time, where the program ended without closing it: a quiet
    // sentence; empty where it was closed.
    [[nodiscard]] const QString& lastTime() const { return m_lastTime; }
    // Waits until the lock is written or removed.
    void settleLock() { m_lock.settle(); }
    // Whether this file is one of the dated copies: those are open to look at only.
    [[nodiscard]] bool isDatedCopy(const QString& path) const;
    // Takes a workbook that another bench has, as it is on the disk now, to change it here. Refused
    // in a sentence where it cannot be read any more.
    Result<void> changeAnyway();
    // The rules that dated copies are kept by.
    [[nodiscard]] CopyRules copyRules() const;
    // Keeps the open workbook at `path` from now on.
    void saveAs(const QString& path);

signals:
    void opened(); // another workbook is open now
    void taken();  // another bench took the open workbook in the same moment: it is open to look at

private:
    void becameOpen(const QString& path);
    void remember(const QString& path);
    void lock(const QString& path, bool anyway);
    void lookOnly();
    void tellLedger(const QString& path);
    void followPerson();
    [[nodiscard]] QString sentenceOfLastTime(const QString& path) const;

    Outside m_outside;
    Document m_document;
    Selection m_selection;
    QString m_lastTime;
    LockKeeper m_lock;
    Autosaver m_autosaver; // after the document: it saves what the document holds when it ends
    LedgerSettingsStore m_ledgerSettings;
    LedgerDesk m_ledger;
    bool m_open = false;
};

} // namespace borewright
