// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/document/document.h"

#include <QThreadPool>
#include <QUndoCommand>

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

} // namespace

// One step of undo. The edit was applied once before the step was made, so that a refusal can be
// told; the stack's first redo() is therefore passed over.
class EditCommand final : public QUndoCommand {
public:
    EditCommand(Document& document, Edit edit, Edit inverse, const QString& name)
        : QUndoCommand(name)
        , m_document(document)
        , m_edit(std::move(edit))
        , m_inverse(std::move(inverse)) {}

    void undo() override { (void)m_document.applyNow(m_inverse); }
    void redo() override {
        if (!std::exchange(m_alreadyDone, false)) (void)m_document.applyNow(m_edit);
    }

private:
    Document& m_document;
    Edit m_edit;
    Edit m_inverse;
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
        auto found = std::make_shared<std::vector<BoreDoubt>>(
            settle(*bores, [cancelled] { return cancelled->load(); }));
        if (*cancelled) return;
        QMetaObject::invokeMethod(
            this,
            [this, bores, found] {
                m_settling = false;
                m_doubts.learn(*bores, std::move(*found));
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

Result<void> Document::edit(const Edit& edit, const QString& name) {
    if (!m_lookOnly.isEmpty()) {
        emit lookedAtOnly();
        return refuse(m_lookOnly.toStdString());
    }
    // A reading kept or struck out is always a change; only the rest need be compared.
    std::optional<Workbook> before;
    if (!touchesReadingsOnly(edit)) before = m_workbook;
    auto inverse = borewright::apply(m_workbook, edit);
    if (!inverse) return tl::unexpected(inverse.error());
    if (before && m_workbook == *before) return {};
    outdate(edit);
    ++m_revision;
    m_undo.push(new EditCommand(*this, edit, std::move(*inverse), name));
    emit changed(touchesReadingsOnly(edit) ? Change::readings : Change::record);
    return {};
}

Result<Edit> Document::applyNow(const Edit& edit) {
    auto inverse = borewright::apply(m_workbook, edit);
    outdate(edit);
    ++m_revision;
    emit changed(touchesReadingsOnly(edit) ? Change::readings : Change::record);
    return inverse;
}

void Document::setUnits(const DisplayUnits& units) {
    if (units == m_units) return;
    m_units = units;
    m_results.reset();
    emit changed(Change::units);
}

} // namespace borewright
