// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/hone/set_up_panel.h"

#include "app/fields/fold.h"
#include "app/fields/labelled.h"
#include "app/fields/refusal_label.h"
#include "app/fields/scaled_font.h"
#include "app/hone/hone_verbs.h"
#include "app/hone/hone_words.h"
#include "app/hone/played_round.h"
#include "app/measure/survey_proposal.h"
#include "app/pictures/reading_words.h"
#include "core/results/hone_log.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QVBoxLayout>

#include <algorithm>
#include <cmath>

namespace borewright {
namespace {

constexpr int sentenceLines = 4, factLines = 4;
constexpr double mostSeconds = 3600;

void keepLines(QLabel& label, int lines) {
    label.setWordWrap(true);
    label.setAlignment(Qt::AlignTop | Qt::AlignLeft);
    label.setTextInteractionFlags(Qt::TextSelectableByMouse);
    label.setFixedHeight(lines * label.fontMetrics().lineSpacing() + 2);
}

} // namespace

SetUpPanel::SetUpPanel(const PageContext& context, HoneSearch& search, QWidget* parent)
    : QWidget(parent)
    , m_context(context)
    , m_search(search)
    , m_sentence(new QLabel(this))
    , m_facts(makePassingWord({}, this))
    , m_next(new QPushButton(tr("What next (F5)"), this))
    , m_done(new QPushButton(tr("Done as planned (F9)"), this))
    , m_own(new QPushButton(tr("Log a pass… (F4)"), this))
    , m_measure(new QPushButton(tr("Measure now (F8)"), this))
    , m_play(new QPushButton(tr("Hone it for me, simulated (F12)"), this))
    , m_refusal(makeRefusalLabel(this))
    , m_said(makePassingWord({}, this))
    , m_watch(new WatchPanel(context, this)) {
    m_sentence->setFont(scaledFont(m_sentence->font(), 1.1));
    keepLines(*m_sentence, sentenceLines);
    keepLines(*m_facts, factLines);
    m_sentence->setAccessibleName(tr("The next set-up of this bore"));
    m_facts->setAccessibleName(tr("What is expected of it"));
    m_refusal->setAccessibleName(tr("Why it was not done"));
    m_said->setAccessibleName(tr("What was done"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(6);
    column->addWidget(m_sentence);
    column->addWidget(m_facts);
    column->addWidget(buildSeconds());
    column->addWidget(buildButtons());
    column->addWidget(m_refusal);
    column->addWidget(m_said);
    column->addWidget(m_watch);
    column->addStretch(1);
    connect(&m_watch->watch(), &StrokeWatch::changed, this, &SetUpPanel::takeCounted);
}

QWidget* SetUpPanel::buildSeconds() {
    m_secondsRow = new QWidget(this);
    QSizePolicy kept = m_secondsRow->sizePolicy();
    kept.setRetainSizeWhenHidden(true);
    m_secondsRow->setSizePolicy(kept);
    auto* row = new QHBoxLayout(m_secondsRow);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(12);
    for (std::size_t i = 0; i < mostWindows; ++i) {
        m_seconds[i] = new NumberField(
            tr("Seconds really done in window %1").arg(i + 1),
            {0, mostSeconds, false, tr("seconds lie between 0 and 3600")}, m_secondsRow);
        m_secondsLabelled[i] = labelled(tr("Done in %1, s").arg(i + 1), m_seconds[i]);
        row->addWidget(m_secondsLabelled[i], 1, Qt::AlignTop);
    }
    return m_secondsRow;
}

QWidget* SetUpPanel::buildButtons() {
    auto* whole = new QWidget(this);
    auto* grid = new QGridLayout(whole);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setSpacing(6);
    grid->addWidget(m_next, 0, 0);
    grid->addWidget(m_done, 0, 1);
    grid->addWidget(m_own, 1, 0);
    grid->addWidget(m_measure, 1, 1);
    grid->addWidget(m_play, 2, 0, 1, 2);
    m_next->setToolTip(tr("Works it out anew; it is also done after each change"));
    m_done->setToolTip(tr("Logs this set-up with its windows; change the seconds first if they "
                          "were others"));
    m_measure->setToolTip(tr("A check of this bore alone that asks for the places the plan wants"));
    m_play->setToolTip(tr("Only where the workbook is invented: the set-up is done on a bore that "
                          "does not exist, and its readings are entered, said to be simulated"));
    connect(m_next, &QPushButton::clicked, &m_search, &HoneSearch::askNow);
    connect(m_done, &QPushButton::clicked, this, &SetUpPanel::doneAsPlanned);
    connect(m_own, &QPushButton::clicked, this, &SetUpPanel::logOwnAsked);
    connect(m_measure, &QPushButton::clicked, this, &SetUpPanel::measureNow);
    connect(m_play, &QPushButton::clicked, this, &SetUpPanel::playForMe);
    return whole;
}

const PlannedSetUp* SetUpPanel::doable() const {
    const int number = m_context.selection.bore();
    const BoreOutlook* outlook = m_search.bore(number);
    if (outlook == nullptr || !outlook->next || !m_search.isOfNow(number)) return nullptr;
    return outlook->outcome == HoneOutcome::next ? &*outlook->next : nullptr;
}

bool SetUpPanel::waitsForSurvey() const {
    const HoneLog log = honeLogOf(m_context.document.workbook(), m_context.document.results(),
                                  m_context.document.units());
    return std::ranges::any_of(log.bores, [this](const BoreHoneLog& bore) {
        return bore.bore == m_context.selection.bore() && bore.waitsForSurvey;
    });
}

QString SetUpPanel::factsOf(const BoreOutlook& outlook) const {
    QStringList lines;
    const DisplayUnits& units = m_context.document.units();
    if (outlook.next) {
        const auto small = [&](double um) {
            return qs(smallWithUnit(Length::nearest(um, Unit::micrometre), units));
        };
        lines << tr("Expected after it: %1 over the stations, %2 over every depth; %3. About %4 "
                    "minutes.")
                     .arg(small(outlook.next->spread_um), small(outlook.next->spreadAll_um),
                          qs(outlook.next->overWords))
                     .arg(std::round(outlook.next->minutes));
        if (outlook.modelOnly) lines << tr("Model, not measured: no pass of this stone is proven.");
    }
    for (const std::string& sentence : outlook.sentences)
        lines << qs(sentence);
    return lines.join(' ');
}

QString SetUpPanel::noSetUpWords() const {
    const QString missing =
        hone_words::missing(m_context.document.workbook(), m_context.selection.bore());
    return missing.isEmpty() ? m_search.waitingWords() : missing;
}

void SetUpPanel::forget() {
    m_toMeasure.clear();
    m_secondsOf.clear();
    m_watch->setUp({});
    tell({}, false);
}

void SetUpPanel::refresh() {
    const Workbook& workbook = m_context.document.workbook();
    const int number = m_context.selection.bore();
    const BoreOutlook* outlook = m_search.bore(number);
    const bool now = m_search.isOfNow(number);
    QString sentence = noSetUpWords(), facts;
    if (outlook != nullptr && hone_words::missing(workbook, number).isEmpty()) {
        sentence = qs(outlook->next && now ? outlook->next->sentence : outlook->headline);
        facts = factsOf(*outlook);
    }
    m_sentence->setText(sentence);
    m_sentence->setToolTip(sentence);
    m_sentence->setEnabled(now || outlook == nullptr);
    m_facts->setText(facts);
    m_facts->setToolTip(facts);
    const PlannedSetUp* planned = doable();
    showSeconds(planned);
    if (planned != nullptr || (now && !m_watch->watch().isRunning()))
        m_watch->setUp(planned != nullptr ? std::optional(*planned) : std::nullopt);
    m_next->setEnabled(hone_words::missing(workbook, number).isEmpty());
    m_done->setEnabled(planned != nullptr);
    m_play->setVisible(workbook.invented);
    m_play->setEnabled(planned != nullptr && workbook.invented);
    m_own->setEnabled(!workbook.hone.stones.empty() && findBore(workbook.block, number) != nullptr);
    m_measure->setEnabled(findBore(workbook.block, number) != nullptr);
}

// Filled anew only where another set-up is planned: what he typed stays.
void SetUpPanel::showSeconds(const PlannedSetUp* planned) {
    m_secondsRow->setVisible(planned != nullptr);
    if (planned == nullptr) return m_secondsOf.clear();
    const QString of =
        QStringLiteral("%1 %2").arg(m_context.selection.bore()).arg(qs(planned->sentence));
    for (std::size_t i = 0; i < mostWindows; ++i) {
        const bool here = i < planned->windows.size();
        m_secondsLabelled[i]->setVisible(here);
        if (here && of != m_secondsOf) m_seconds[i]->setValue(planned->windows[i].seconds);
    }
    m_secondsOf = of;
}

// Where he stopped in the middle of a window, what the watch counted is what was done.
void SetUpPanel::takeCounted() {
    const StrokeWatch& watch = m_watch->watch();
    if (watch.isRunning() || watch.seconds() <= 0 || watch.window() >= mostWindows) return;
    m_seconds[watch.window()]->setValue(std::round(watch.seconds()));
}

void SetUpPanel::tell(const QString& words, bool refused) {
    m_refusal->setText(refused ? words : QString());
    m_refusal->setVisible(refused);
    m_said->setText(refused ? QString() : words);
    m_said->setVisible(!refused && !words.isEmpty());
}

void SetUpPanel::followRefusal(const Result<void>& done, const QString& words) {
    if (!done) m_context.sounds.refused();
    tell(done ? words : qs(done.error().message()), !done);
}

void SetUpPanel::doneAsPlanned() {
    const PlannedSetUp* planned = doable();
    if (planned == nullptr)
        return tell(tr("There is no set-up to log yet: F5 works one out."), true);
    Document& document = m_context.document;
    const int bore = m_context.selection.bore();
    std::vector<std::optional<double>> seconds;
    for (std::size_t i = 0; i < std::min(mostWindows, planned->windows.size()); ++i) {
        if (!m_seconds[i]->commit()) return m_seconds[i]->edit()->setFocus();
        seconds.push_back(m_seconds[i]->value());
    }
    const std::vector<Station> measure = planned->measure;
    const Pass pass = passNow(document.workbook(), bore, planned->stone,
                              windowsOf(*planned, seconds), document.now());
    const auto done = changeHone(document, tr("pass in bore %1").arg(bore),
                                 [&](HoneRecord& record) { record.passes.push_back(pass); });
    if (done) m_toMeasure[bore] = measure;
    followRefusal(done, tr("Logged. Let it cool, then measure (F8)."));
}

SurveyHeader SetUpPanel::proposedHeader() const {
    Document& document = m_context.document;
    return proposeSurvey(document.workbook(), m_context.preferences.value(), document.units().small)
        .header;
}

void SetUpPanel::playForMe() {
    const PlannedSetUp* planned = doable();
    if (planned == nullptr) return tell(tr("There is no set-up to play: F5 works one out."), true);
    Document& document = m_context.document;
    const int bore = m_context.selection.bore();
    const auto round =
        playRound(document.workbook(), proposedHeader(), bore, *planned, document.now());
    if (!round) return followRefusal(tl::unexpected(round.error()), {});
    const auto done = document.edit(round->edit, tr("simulated pass in bore %1").arg(bore));
    if (done) m_context.selection.setSurvey(round->survey);
    followRefusal(done, tr("Simulated: a pass and its check were entered. Nothing was honed."));
}

// What the last set-up wanted read; else what the next would; else the bore's whole plan.
std::vector<Station> SetUpPanel::toMeasure() const {
    const int bore = m_context.selection.bore();
    const bool waits = waitsForSurvey();
    if (const auto known = m_toMeasure.find(bore); waits && known != m_toMeasure.end())
        return known->second;
    const BoreOutlook* outlook = m_search.bore(bore);
    if (waits && outlook != nullptr && outlook->next) return outlook->next->measure;
    return {};
}

void SetUpPanel::measureNow() {
    Document& document = m_context.document;
    const int bore = m_context.selection.bore();
    if (const Survey* waiting = waitingCheck(document.workbook(), bore)) {
        m_context.selection.setSurvey(waiting->header.id);
        tell({}, false);
        emit measureAsked();
        return;
    }
    const SurveyHeader header =
        nextCheck(document.workbook(), proposedHeader(), bore, toMeasure(), document.now());
    if (header.asked->empty())
        return tell(tr("Bore %1 has no levels to measure: give it some on the Block page (Ctrl+1).")
                        .arg(bore),
                    true);
    const auto done =
        document.edit(InsertSurvey{document.workbook().surveys.size(), Survey{header, {}}},
                      tr("check of bore %1").arg(bore));
    followRefusal(done, {});
    if (!done) return;
    m_context.selection.setSurvey(header.id);
    m_context.selection.setStation(header.asked->front());
    emit measureAsked();
}

} // namespace borewright
