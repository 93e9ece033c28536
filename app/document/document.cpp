// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/document/document.h"

#include "app/document/kept_over.h"
#include "core/storage/history_join.h"
#include "core/storage/history_log.h"

#include <QThreadPool>
#include <QUndoCommand>
#include <QUuid>

#include <algorithm>

namespace borewright {
namespace {

bool touchesReadingsOnly(const Edit& edit) {
    if (const auto* group = std::get_if<EditGroup>(&edit))
        return std::ranges::all_of(group->edits, touchesReadingsOnly);
    return std::holds_alternative<InsertReading>(edit) ||
           std::holds_alternative<EraseReading>(edit) || std::holds_alternative<SetStrike>(edit) ||
           std::holds_alternative<SetKept>(edit);
}

// The only survey whose readings an edit touches; nothing where it touches more.
std::optional<std::string> surveyTouched(const Edit& edit) {
    if (const auto* insert = std::get_if<InsertReading>(&edit)) return insert->survey;
    if (const auto* erase = std::get_if<EraseReading>(&edit)) return erase->survey;
    if (const auto* strike = std::get_if<SetStrike>(&edit)) return strike->survey;
    if (const auto* kept = std::get_if<SetKept>(&edit)) return kept->survey;
    const auto* group = std::get_if<EditGroup>(&edit);
    if (group == nullptr || group->edits.empty()) return std::nullopt;
    const auto first = surveyTouched(group->edits.front());
    for (const Edit& one : group->edits)
        if (surveyTouched(one) != first) return std::nullopt;
    return first;
}

// The edit with this person's name at what it strikes out.
Edit signedBy(const std::string& person, Edit edit) {
    if (auto* group = std::get_if<EditGroup>(&edit)) {
        for (Edit& one : group->edits)
            one = signedBy(person, std::move(one));
    } else if (auto* strike = std::get_if<SetStrike>(&edit)) {
        if (strike->strike && strike->strike->who.empty()) strike->strike->who = person;
    }
    return edit;
}

} // namespace

// One step of undo. The edit was applied once before the step was made, so that a refusal can be
// told; the stack's first redo() is therefore passed over.
class EditCommand final : public QUndoCommand {
public:
    EditCommand(Document& document, Edit edit, Edit inverse, const Document::Noted& noted,
                const QString& name)
        : QUndoCommand(name)
        , m_document(document)
        , m_edit(std::move(edit))
        , m_inverse(std::move(inverse))
        , m_noted(noted) {}

    void undo() override {
        m_noted =
            m_document.applyNow(m_inverse, m_noted, Document::tr("taken back: %1").arg(text()));
    }
    void redo() override {
        if (!std::exchange(m_alreadyDone, false))
            m_noted = m_document.applyNow(m_edit, m_noted, text());
    }

    // No step itself, but no step before it may take an entry away any more.
    static void keepOver(Document& document, const Workbook& theirs) {
        Workbook& mine = document.m_workbook;
        mine.history = joinedHistory(mine, theirs, document.m_person, document.now());
        ++document.m_handedOut;
        ++document.m_revision;
        emit document.noted();
    }

private:
    Document& m_document;
    Edit m_edit;
    Edit m_inverse;
    Document::Noted m_noted; // of the last time it was done or undone
    bool m_alreadyDone = true;
};

Document::Document(const Clock& clock, QObject* parent)
    : QObject(parent)
    , m_clock(clock)
    , m_workbook(emptyWorkbook())
    , m_units(naturalUnits(m_workbook)) {
    // Long enough that fast typing is not held up by trials that the next key makes stale.
    constexpr int settleAfter_ms = 120;
    m_settleSoon.setSingleShot(true);
    m_settleSoon.setInterval(settleAfter_ms);
    connect(&m_settleSoon, &QTimer::timeout, this, &Document::settleDoubts);
}

Document::~Document() {
    *m_cancelled = true;
    if (m_settling) QThreadPool::globalInstance()->waitForDone();
}

const Results& Document::results() const {
    (void)surveyResults();
    if (!std::exchange(m_concluded, true)) conclude(m_workbook, m_units, *m_results);
    return *m_results;
}

const Results& Document::surveyResults() const {
    if (!m_results) {
        m_results = compute(m_workbook, m_units, m_doubts, Reckoning::quick);
        m_concluded = true;
    } else if (!m_outdated.empty()) {
        m_results = computeSurvey(m_workbook, m_units, std::move(*m_results), m_outdated, m_doubts,
                                  Reckoning::quick);
        m_concluded = false;
    } else {
        return *m_results;
    }
    m_outdated.clear();
    if (!m_doubts.isSettled()) m_settleSoon.start();
    return *m_results;
}

const Results& Document::settledResults() {
    if (!m_doubts.isSettled() || !m_results || !m_outdated.empty()) {
        m_results = compute(m_workbook, m_units, m_doubts, Reckoning::whole);
        m_outdated.clear();
        m_concluded = true;
    }
    return results();
}

// The trials run in the pool on copies; what they find comes back to this thread.
void Document::settleDoubts() {
    if (m_settling) return m_settleSoon.start();
    const auto bores = std::make_shared<const std::vector<TrialBore>>(m_doubts.unsettled());
    if (bores->empty()) return;
    m_settling = true;
    QThreadPool::globalInstance()->start([this, bores, cancelled = m_cancelled] {
        // By value: what is taken out of it there, nobody here looks at any more.
        std::vector<BoreDoubt> found = settle(*bores, [cancelled] { return cancelled->load(); });
        if (*cancelled) return;
        QMetaObject::invokeMethod(
            this,
            [this, bores, found = std::move(found)]() mutable {
                m_settling = false;
                m_doubts.learn(*bores, std::move(found));
                m_results.reset();
                emit changed(Change::doubts);
            },
            Qt::QueuedConnection);
    });
}

// Typing changes one survey; the others' results stay.
void Document::outdate(const Edit& edit) {
    const auto survey = surveyTouched(edit);
    if (!survey || (!m_outdated.empty() && m_outdated != *survey))
        m_results.reset();
    else
        m_outdated = *survey;
}

void Document::open(Workbook workbook) {
    emit aboutToOpen();
    m_workbook = std::move(workbook);
    m_units = naturalUnits(m_workbook);
    m_results.reset();
    m_doubts = {}; // those of the workbook before
    m_undo.clear();
    m_lookOnly.clear();
    ++m_revision;
    emit changed(Change::everything);
}

Result<void> Document::edit(const Edit& asked, const QString& name) {
    if (!m_lookOnly.isEmpty()) {
        emit lookedAtOnly();
        return refuse(m_lookOnly.toStdString());
    }
    const Edit edit = signedBy(m_person, asked);
    // A reading kept or struck out is always a change; only the rest need be compared.
    std::optional<Workbook> before;
    if (!touchesReadingsOnly(edit)) before = m_workbook;
    auto inverse = borewright::apply(m_workbook, edit);
    if (!inverse) return tl::unexpected(inverse.error());
    if (before && m_workbook == *before) return {};
    outdate(edit);
    ++m_revision;
    const Noted noted = note(before, *inverse, name);
    m_undo.push(new EditCommand(*this, edit, std::move(*inverse), noted, name));
    emit changed(touchesReadingsOnly(edit) ? Change::readings : Change::record);
    return {};
}

Document::Noted Document::note(const std::optional<Workbook>& before, const Edit& inverse,
                               const QString& what) {
    HistoryEntry entry{now(), m_person, what.toStdString(), {}};
    entry.was = before ? oldValues(*before, m_workbook) : oldReadings(m_workbook, inverse);
    const bool noted = borewright::noteChange(m_workbook, std::move(entry));
    return {noted ? Noted::As::entry : Noted::As::nothing, m_handedOut,
            m_workbook.history.entries.size()};
}

Document::Noted Document::applyNow(const Edit& edit, const Noted& undone, const QString& what) {
    // What no disk and no paper has seen is as if it had never been.
    const bool unseen = undone.as != Noted::As::undone && undone.handedOut == m_handedOut &&
                        undone.entries == m_workbook.history.entries.size();
    const bool again = undone.as == Noted::As::undone && undone.handedOut == m_handedOut &&
                       undone.tookAway.has_value();
    std::optional<Workbook> before;
    if (!unseen && !again && !touchesReadingsOnly(edit)) before = m_workbook;
    const auto inverse = borewright::apply(m_workbook, edit);
    Noted noted{Noted::As::nothing, m_handedOut, m_workbook.history.entries.size()};
    if (again) {
        m_workbook.history.entries.push_back(*undone.tookAway);
        noted = {Noted::As::entry, m_handedOut, m_workbook.history.entries.size()};
    } else if (!unseen && inverse) {
        noted = note(before, *inverse, what);
    } else if (undone.as == Noted::As::entry) {
        noted.tookAway = std::move(m_workbook.history.entries.back());
        m_workbook.history.entries.pop_back();
        noted.as = Noted::As::undone;
        --noted.entries;
    }
    outdate(edit);
    ++m_revision;
    emit changed(touchesReadingsOnly(edit) ? Change::readings : Change::record);
    return noted;
}

void Document::noteSheet(PrintedSheet sheet) {
    if (!m_lookOnly.isEmpty()) return;
    HistoryEntry entry{now(), m_person, {}, {}};
    entry.sheet = std::move(sheet);
    borewright::noteSheet(m_workbook, std::move(entry));
    ++m_handedOut;
    ++m_revision;
    emit noted();
}

const Workbook& Document::handOut() {
    if (m_workbook.history.id.empty())
        m_workbook.history.id = QUuid::createUuid().toString(QUuid::Id128).toStdString();
    ++m_handedOut;
    return m_workbook;
}

void noteKeptOver(Document& document, const Workbook& theirs) {
    EditCommand::keepOver(document, theirs);
}

void Document::setUnits(const DisplayUnits& units) {
    if (units == m_units) return;
    m_units = units;
    m_results.reset();
    emit changed(Change::units);
}

} // namespace borewright
