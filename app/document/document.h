// SPDX-License-Identifier: GPL-3.0-or-later
// The open workbook: the only owner of its data, the only writer. Pages read workbook() and
// results(), and tell edit() what the user did; nothing else passes between them.
#pragma once

#include "app/document/clock.h"
#include "core/results/results.h"
#include "core/workbook/edit.h"

#include <QObject>
#include <QString>
#include <QTimer>
#include <QUndoStack>

#include <atomic>
#include <memory>
#include <optional>

namespace borewright {

// What changed, so that a view need not rebuild more than it shows.
enum class Change {
    everything, // another workbook was opened
    record,     // job, block, limits, surveys: headings and rows may differ
    readings,   // readings of a survey: only values differ
    units,      // nothing but how lengths are shown
    doubts,     // nothing of the data: results are known better than before
};

class Document : public QObject {
    Q_OBJECT
public:
    explicit Document(const Clock& clock, QObject* parent = nullptr);

    [[nodiscard]] const Workbook& workbook() const { return m_workbook; }
    // Computed on demand, once after each change. Doubts come quick at first; the whole ones follow
    // from another thread, with changed().
    [[nodiscard]] const Results& results() const;
    // The same, but only its surveys need be of now: what is shown at every reading typed asks no
    // more than that.
    [[nodiscard]] const Results& surveyResults() const;
    // The same with whole doubts, now: for what is printed.
    [[nodiscard]] const Results& settledResults();
    ~Document() override;
    [[nodiscard]] Timestamp now() const { return m_clock.now(); }

    // Makes `workbook` the open one; undo starts afresh, units follow the workbook.
    void open(Workbook workbook);

    // Applies an edit as one undo step called `name` ("reading bore 3, 1.75 in, B"; shown as
    // "Undo …"). An edit that changes nothing makes no step. Refusals leave everything as it was.
    Result<void> edit(const Edit& edit, const QString& name);

    // Who works at this bench: stands with every change in the workbook's history.
    void setPerson(const std::string& person) { m_person = person; }
    [[nodiscard]] const std::string& person() const { return m_person; }
    // Notes in the history that a sheet was printed, as of `sheet` (its readings are filled in);
    // no step of undo. Nothing where the workbook is open to look at only.
    void noteSheet(PrintedSheet sheet);
    // The workbook for the disk. What its history says by then is never taken back: undoing
    // a change that was handed out is a change of its own.
    [[nodiscard]] const Workbook& handOut();
    // Goes on as a workbook of its own, told apart from the one it was until now.
    void becomeAnother() { m_workbook.history.id.clear(); }

    // Open to look at only: every edit is refused with this reason, until it is empty again.
    // Another workbook opened is open to be changed.
    void setLookOnly(const QString& why) { m_lookOnly = why; }
    [[nodiscard]] const QString& lookOnly() const { return m_lookOnly; }

    [[nodiscard]] QUndoStack& undoStack() { return m_undo; }
    // Counts every change of the data, undo and redo included; equal counts mean equal data.
    [[nodiscard]] std::uint64_t revision() const { return m_revision; }

    // How lengths are shown: a matter of the view, never of the data.
    [[nodiscard]] const DisplayUnits& units() const { return m_units; }
    void setUnits(const DisplayUnits& units);

signals:
    void aboutToOpen(); // the workbook is still the earlier one
    void changed(borewright::Change change);
    void lookedAtOnly(); // an edit was refused for that
    void noted(); // a sheet was noted as printed: nothing else changed, but it is to be saved

private:
    friend class EditCommand;
    // What a step left in the history, for taking it back.
    struct Noted {
        enum class As {
            nothing, // readings appended need no entry, nor does it to take them away unseen
            entry,   // the last of the history then
            undone,  // it took away the entry of the step that it undid
        };
        As as = As::nothing;
        std::uint64_t handedOut = 0;            // how often, when the step was made
        std::size_t entries = 0;                // how many there were after it
        std::optional<HistoryEntry> tookAway{}; // to be put back where it is done again unseen
    };
    Noted note(const std::optional<Workbook>& before, const Edit& inverse, const QString& what);
    Noted applyNow(const Edit& edit, const Noted& undone, const QString& what);
    void outdate(const Edit& edit);
    void settleDoubts();

    const Clock& m_clock;
    Workbook m_workbook;
    DisplayUnits m_units;
    QString m_lookOnly;
    std::string m_person;
    std::uint64_t m_handedOut = 0;
    QUndoStack m_undo;
    std::uint64_t m_revision = 0;
    mutable std::optional<Results> m_results;
    mutable DoubtMemory m_doubts;
    mutable QTimer m_settleSoon;
    bool m_settling = false;
    std::shared_ptr<std::atomic<bool>> m_cancelled = std::make_shared<std::atomic<bool>>(false);
    mutable std::string m_outdated;   // the one survey whose results are old; empty = none
    mutable bool m_concluded = false; // stories, size, fit and sentences are of now
};

} // namespace borewright
