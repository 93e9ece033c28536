// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/hone/log_tab.h"

#include "app/fields/fold.h"
#include "app/fields/labelled.h"
#include "app/fields/refusal_label.h"
#include "app/hone/hone_verbs.h"
#include "app/hone/hone_words.h"
#include "app/pictures/reading_words.h"
#include "core/results/hone_log.h"

#include <QHBoxLayout>
#include <QSignalBlocker>
#include <QVBoxLayout>

#include <algorithm>

namespace borewright {
namespace {

// With its head and the verbs beneath it, what the tab is high: one scroll bar, not two.
constexpr int mostLogRows = 3, windowsColumn = 2;

std::size_t placeOf(const Workbook& workbook, const std::string& survey) {
    const auto found = std::ranges::find(workbook.surveys, survey,
                                         [](const Survey& each) { return each.header.id; });
    return static_cast<std::size_t>(found - workbook.surveys.begin());
}

QString when(const Timestamp& time) {
    return qs(dateInWords(time)) + QStringLiteral(", ") + qs(clockTime(time));
}

const Pass* passOf(const HoneRecord& record, const std::string& id) {
    const auto found = std::ranges::find(record.passes, id, &Pass::id);
    return found == record.passes.end() ? nullptr : &*found;
}

QString crosshatchOf(const BoreHoneLog& log) {
    const QString words = qs(log.crosshatchWords);
    if (!log.crosshatchDegrees) return LogTab::tr("Crosshatch: %1.").arg(words);
    return LogTab::tr("Crosshatch: %1° %2.").arg(*log.crosshatchDegrees, 0, 'f', 0).arg(words);
}

} // namespace

LogTab::LogTab(const PageContext& context, QWidget* parent)
    : QWidget(parent)
    , m_context(context)
    , m_table(new TextTable(tr("Log of this bore"), this))
    , m_oddities(makePassingWord({}, this))
    , m_reason(new QLineEdit(this))
    , m_strike(new QPushButton(tr("Strike this pass out"), this))
    , m_refusal(makeRefusalLabel(this)) {
    m_table->setChoosable();
    m_table->setMostRows(mostLogRows);
    m_table->setGivesWay(windowsColumn);
    m_oddities->setAccessibleName(tr("What is odd about the log"));
    m_reason->setAccessibleName(tr("Why the pass is struck out"));
    m_reason->setPlaceholderText(tr("why: logged in the wrong bore, …"));
    m_reason->setMaxLength(200);
    auto* verbs = new QHBoxLayout;
    verbs->addWidget(m_reason, 1);
    verbs->addWidget(m_strike);
    verbs->addStretch(1);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 8, 0, 8);
    column->setSpacing(6);
    column->addWidget(m_table);
    column->addLayout(verbs);
    column->addWidget(m_refusal);
    column->addWidget(m_oddities);
    column->addStretch(1);
    connect(m_table, &TextTable::rowChosen, this, &LogTab::choose);
    connect(m_strike, &QPushButton::clicked, this, &LogTab::strike);
    connect(m_reason, &QLineEdit::returnPressed, this, &LogTab::strike);
    refresh();
}

// The surveys that read this bore, of those at these places.
void LogTab::addSurveys(TextModel::Content& content, std::size_t from, std::size_t to) {
    const Workbook& workbook = m_context.document.workbook();
    const Results& results = m_context.document.results();
    const DisplayUnits& units = m_context.document.units();
    for (std::size_t i = from; i < std::min(to, workbook.surveys.size()); ++i) {
        const SurveyHeader& header = workbook.surveys[i].header;
        const SurveyResult* survey = findResult(results, header.id);
        const BoreResult* bore =
            survey != nullptr ? findBoreResult(*survey, m_context.selection.bore()) : nullptr;
        if (bore == nullptr || bore->measured == 0) continue;
        const QString toGo = bore->leastToGo && bore->mostToGo
                                 ? tr("%1–%2 to go")
                                       .arg(qs(formatSmall(*bore->leastToGo, units)),
                                            qs(formatSmall(*bore->mostToGo, units)))
                                 : QString();
        content.rows.push_back(
            {{when(header.time), {}, false, true},
             {tr("measured: %1").arg(qs(header.name)), {}, false, true},
             {toGo, {}, false, true},
             {},
             {},
             {bore->form && bore->straightness ? qs(formatSmall(*bore->straightness, units))
                                               : QString(),
              {},
              false,
              true}});
        m_rows.emplace_back();
    }
}

std::vector<TextModel::Cell> LogTab::rowOf(const LoggedPass& logged) const {
    const DisplayUnits& units = m_context.document.units();
    const Pass* pass = passOf(m_context.document.workbook().hone, logged.pass);
    QString what = qs(logged.stone);
    if (logged.simulated) what += tr(" (simulated)");
    QString windows = qs(logged.words);
    if (logged.struck && pass != nullptr)
        windows = tr("struck out: %1").arg(qs(pass->struck.value_or(std::string())));
    const auto small = [&](const std::optional<Length>& length, Sign sign) {
        return length ? qs(formatSmall(*length, units, sign)) : QString();
    };
    const QString lead = logged.leadBefore && logged.leadBehind
                             ? small(logged.leadBefore, Sign::always) + QStringLiteral(" → ") +
                                   small(logged.leadBehind, Sign::always)
                             : small(logged.leadBehind, Sign::always);
    return {{pass != nullptr ? when(pass->time) : QString(), {}, false, logged.struck},
            {what, {}, false, logged.struck},
            {windows, {}, false, logged.struck, qs(logged.words)},
            {small(logged.tookOff, Sign::negative), {}, false, logged.struck},
            {lead, {}, false, logged.struck}};
}

TextModel::Content LogTab::contentOf(const BoreHoneLog& log) {
    const Workbook& workbook = m_context.document.workbook();
    const QString unit = unitSymbol(m_context.document.units().small);
    TextModel::Content content;
    content.heads = {tr("When"),
                     tr("Stone"),
                     tr("Windows"),
                     tr("Took off, %1").arg(unit),
                     tr("Lead, %1").arg(unit),
                     tr("Straight, %1").arg(unit)};
    content.words = {0, 1, 2};
    m_rows.clear();
    std::size_t told = 0;
    for (const LoggedPass& logged : log.passes) {
        const Pass* pass = passOf(workbook.hone, logged.pass);
        const std::size_t after =
            pass == nullptr || pass->after.empty() ? 0 : placeOf(workbook, pass->after) + 1;
        addSurveys(content, told, after);
        told = std::max(told, after);
        content.rows.push_back(rowOf(logged));
        m_rows.push_back(logged.pass);
    }
    addSurveys(content, told, workbook.surveys.size());
    return content;
}

void LogTab::refresh() {
    const HoneLog log = honeLogOf(m_context.document.workbook(), m_context.document.results(),
                                  m_context.document.units());
    BoreHoneLog own;
    for (const BoreHoneLog& bore : log.bores)
        if (bore.bore == m_context.selection.bore()) own = bore;
    std::vector<std::string> said = own.oddities;
    if (own.waitsForSurvey)
        said.insert(said.begin(), tr("The last pass waits to be measured (F8).").toStdString());
    if (!own.crosshatchWords.empty()) said.push_back(crosshatchOf(own).toStdString());
    {
        const QSignalBlocker quiet(m_table);
        const std::size_t before = m_rows.size();
        m_table->show(contentOf(own));
        if (m_rows.size() != before)
            m_table->scrollToBottom(); // what was logged last is looked for
        if (m_row >= static_cast<int>(m_rows.size())) m_row = -1;
        m_row < 0 ? m_table->clearSelection() : m_table->selectRow(m_row);
    }
    m_oddities->setText(hone_words::paragraphs({}, said));
    m_table->setVisible(!m_rows.empty());
    choose(m_row);
}

void LogTab::choose(int row) {
    m_row = row;
    const HoneRecord& record = m_context.document.workbook().hone;
    const Pass* pass = row >= 0 && static_cast<std::size_t>(row) < m_rows.size()
                           ? passOf(record, m_rows[static_cast<std::size_t>(row)])
                           : nullptr;
    const bool may = pass != nullptr && !pass->struck;
    m_strike->setEnabled(may);
    m_reason->setEnabled(may);
    m_refusal->hide();
}

void LogTab::strike() {
    const QString why = m_reason->text().trimmed();
    if (!m_strike->isEnabled()) return;
    Result<void> done;
    if (why.isEmpty())
        done = refuse("say why: what is struck out stays readable with its reason");
    else
        done = changeHone(m_context.document, tr("striking a pass out"), [&](HoneRecord& record) {
            strikePass(record, m_rows[static_cast<std::size_t>(m_row)], why.toStdString());
        });
    if (done) m_reason->clear();
    m_refusal->setText(done ? QString() : qs(done.error().message()));
    m_refusal->setVisible(!done);
}

} // namespace borewright
