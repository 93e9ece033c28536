// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/hone/set_up_panel.h"

#include "app/fields/fold.h"
#include "app/fields/refusal_label.h"
#include "app/fields/scaled_font.h"
#include "app/hone/hone_verbs.h"
#include "app/hone/hone_words.h"
#include "app/pictures/reading_words.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QVBoxLayout>

#include <algorithm>
#include <cmath>

namespace borewright {
namespace {

constexpr int sentenceLines = 4, factLines = 3, saidLines = 2;
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
    , m_done(new QPushButton(tr("Done as planned (F9)"), this))
    , m_own(new QPushButton(tr("Log a pass… (F4)"), this))
    , m_measure(new QPushButton(tr("Measure now (F8)"), this))
    , m_play(new QPushButton(tr("Hone it for me, simulated (F12)"), this))
    , m_refusal(makeRefusalLabel(this))
    , m_said(makePassingWord({}, this))
    , m_words(new QStackedLayout)
    , m_watch(new WatchPanel(context, this)) {
    m_sentence->setFont(scaledFont(m_sentence->font(), 1.1));
    keepLines(*m_sentence, sentenceLines);
    keepLines(*m_facts, factLines);
    m_sentence->setAccessibleName(tr("The next set-up of this bore"));
    m_facts->setAccessibleName(tr("What is expected of it"));
    for (QLabel* label : {m_refusal, m_said})
        keepLines(*label, saidLines);
    m_refusal->setAccessibleName(tr("Why it was not done"));
    m_said->setAccessibleName(tr("What was done"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(6);
    column->addWidget(m_sentence);
    column->addWidget(m_facts);
    column->addWidget(buildSeconds());
    column->addWidget(buildButtons());
    m_words->addWidget(m_said);
    m_words->addWidget(m_refusal);
    column->addLayout(m_words);
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
    row->setSpacing(8);
    m_secondsName = new QLabel(tr("Really done, s"), m_secondsRow);
    row->addWidget(m_secondsName, 0);
    for (std::size_t i = 0; i < mostWindows; ++i) {
        m_seconds[i] = new NumberField(
            tr("Seconds really done in window %1").arg(i + 1),
            {0, mostSeconds, false, tr("seconds lie between 0 and 3600")}, m_secondsRow);
        row->addWidget(m_seconds[i], 1, Qt::AlignTop);
    }
    m_secondsName->setBuddy(m_seconds[0]->edit());
    return m_secondsRow;
}

QWidget* SetUpPanel::buildButtons() {
    auto* whole = new QWidget(this);
    auto* grid = new QGridLayout(whole);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setSpacing(6);
    grid->addWidget(m_done, 0, 0);
    grid->addWidget(m_measure, 0, 1);
    grid->addWidget(m_own, 1, 0);
    grid->addWidget(m_play, 1, 1);
    grid->setColumnStretch(1, 1);
    m_done->setToolTip(tr("Logs this set-up with its windows; change the seconds first if they "
                          "were others"));
    m_measure->setToolTip(tr("A check of this bore alone that asks for the places the plan wants"));
    m_play->setToolTip(tr("Only where the workbook is invented: the set-up is done on a bore that "
                          "does not exist, and its readings are entered, said to be simulated"));
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

QString SetUpPanel::factsOf(const BoreOutlook& outlook) const {
    QStringList lines;
    const DisplayUnits& units = m_context.document.units();
    if (outlook.next) {
        const auto small = [&](double um) {
            return qs(smallWithUnit(Length::nearest(um, Unit::micrometre), units));
        };
        if (outlook.modelOnly) lines << tr("Model, not measured.");
        lines << tr("Expected after it: %1 over the stations, %2 over every depth; %3. About %4 "
                    "minutes.")
                     .arg(small(outlook.next->spread_um), small(outlook.next->spreadAll_um),
                          qs(outlook.next->overWords))
                     .arg(std::round(outlook.next->minutes));
    } else
        lines = wholeSentences(outlook.sentences);
    return lines.join(' ');
}

// As many as there is room for, none cut; the plan beneath tells them all.
QStringList SetUpPanel::wholeSentences(const std::vector<std::string>& sentences) const {
    QStringList lines;
    for (const std::string& sentence : sentences) {
        const QString all = (lines + QStringList{qs(sentence)}).join(' ');
        const QRect room(0, 0, m_facts->width(),
                         m_facts->height() + m_facts->fontMetrics().height());
        if (m_facts->fontMetrics().boundingRect(room, Qt::TextWordWrap, all).height() >
            m_facts->height())
            break;
        lines << qs(sentence);
    }
    return lines;
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
    timeWhatIsDrawn();
    const bool old = m_toldOf != number || (m_toldLogged && !waitsForSurvey());
    if (old || (planned != nullptr && m_toldToWait)) tell({}, false);
    m_done->setEnabled(planned != nullptr && !m_ownDraft);
    m_play->setVisible(workbook.invented);
    m_play->setEnabled(planned != nullptr || (outlook != nullptr && now && outlook->waits));
    m_own->setEnabled(!workbook.hone.stones.empty() && findBore(workbook.block, number) != nullptr);
    m_measure->setEnabled(findBore(workbook.block, number) != nullptr);
}

void SetUpPanel::setOwn(const std::optional<HoneOwnDraft>& own) {
    m_ownDraft = own;
    m_done->setEnabled(doable() != nullptr && !own);
    timeWhatIsDrawn();
}

// The beat counts what the drawing shows; a window that is being timed is left alone.
void SetUpPanel::timeWhatIsDrawn() {
    const bool running = m_watch->watch().isRunning();
    if (m_ownDraft) {
        const Hone& hone = m_context.document.workbook().hone.hone;
        if (!running) m_watch->setUp(timed(m_ownDraft->stone, m_ownDraft->windows, hone));
        return;
    }
    const PlannedSetUp* planned = doable();
    const bool now = m_search.isOfNow(m_context.selection.bore());
    if (planned != nullptr || (now && !running))
        m_watch->setUp(planned != nullptr ? std::optional(*planned) : std::nullopt);
}

// Filled anew only where another set-up is planned: what he typed stays.
void SetUpPanel::showSeconds(const PlannedSetUp* planned) {
    m_secondsRow->setVisible(planned != nullptr);
    if (planned == nullptr) return m_secondsOf.clear();
    const QString of =
        QStringLiteral("%1 %2").arg(m_context.selection.bore()).arg(qs(planned->sentence));
    for (std::size_t i = 0; i < mostWindows; ++i) {
        const bool here = i < planned->windows.size();
        m_seconds[i]->setVisible(here);
        if (here && of != m_secondsOf) m_seconds[i]->setValue(planned->windows[i].seconds);
    }
    m_secondsOf = of;
}

// Where he stopped in the middle of a window, what the watch counted is what was done.
void SetUpPanel::takeCounted() {
    const StrokeWatch& watch = m_watch->watch();
    if (m_ownDraft) return; // the fields are the plan's
    if (watch.isRunning() || watch.seconds() <= 0 || watch.window() >= mostWindows) return;
    m_seconds[watch.window()]->setValue(std::round(watch.seconds()));
}

void SetUpPanel::refuseForNow(const QString& otherwise) {
    const int number = m_context.selection.bore();
    const BoreOutlook* outlook = m_search.bore(number);
    const bool ended = outlook != nullptr && m_search.isOfNow(number) && !outlook->waits &&
                       outlook->outcome != HoneOutcome::next;
    const bool comes = m_search.isSearching() && !ended;
    tell(comes   ? tr("The next set-up is still being worked out: wait a moment, then press again.")
         : ended ? tr("There is nothing to hone in bore %1 now: what is said of it stands above.")
                       .arg(number)
                 : otherwise,
         true);
    m_toldToWait = comes;
}

void SetUpPanel::ownLogged() {
    m_toMeasure.erase(m_context.selection.bore());
    sayLogged();
}

void SetUpPanel::sayLogged() {
    tell(tr("Logged. Let it cool, then measure (F8)."), false);
    m_toldLogged = true;
}

void SetUpPanel::tell(const QString& words, bool refused) {
    m_toldToWait = m_toldLogged = false;
    m_toldOf = m_context.selection.bore();
    m_refusal->setText(refused ? words : QString());
    m_said->setText(refused ? QString() : words);
    // By the layout: a label shown past it keeps the place of the sentence.
    m_words->setCurrentWidget(refused ? m_refusal : m_said);
}

} // namespace borewright
