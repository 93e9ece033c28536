// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/hone/watch_panel.h"

#include "app/fields/fold.h"
#include "app/fields/scaled_font.h"
#include "app/pictures/reading_words.h"

#include <QHBoxLayout>
#include <QVBoxLayout>

#include <algorithm>

namespace borewright {
namespace {

constexpr double large = 2.4;
constexpr int secondsAMinute = 60;

bool alike(const PlannedSetUp& one, const PlannedSetUp& other) {
    return one.stone == other.stone &&
           std::ranges::equal(one.windows, other.windows, [](const auto& a, const auto& b) {
               return a.from.value() == b.from.value() && a.to.value() == b.to.value() &&
                      a.strokes == b.strokes && a.holdSeconds == b.holdSeconds;
           });
}

QString clockFace(double seconds) {
    const int whole = static_cast<int>(seconds);
    return QStringLiteral("%1:%2")
        .arg(whole / secondsAMinute)
        .arg(whole % secondsAMinute, 2, 10, QLatin1Char('0'));
}

} // namespace

WatchPanel::WatchPanel(const PageContext& context, QWidget* parent)
    : QWidget(parent)
    , m_document(context.document)
    , m_figures(new QLabel(this))
    , m_words(makePassingWord({}, this))
    , m_turn(new QPushButton(this))
    , m_reset(new QPushButton(tr("From the start"), this)) {
    QFont face = scaledFont(m_figures->font(), large);
    face.setWeight(QFont::DemiBold);
    m_figures->setFont(face);
    m_figures->setAccessibleName(tr("Seconds and strokes of this window"));
    m_words->setAccessibleName(tr("The window being timed"));
    m_words->setFixedHeight(2 * m_words->fontMetrics().lineSpacing());
    m_turn->setToolTip(tr("Starts and stops the beat and the stop-watch; it stands still by "
                          "itself when a window has had its share"));
    auto* buttons = new QVBoxLayout;
    buttons->setSpacing(2);
    buttons->addWidget(m_turn);
    buttons->addWidget(m_reset);
    auto* row = new QHBoxLayout;
    row->setSpacing(16);
    row->addWidget(m_figures, 1);
    row->addLayout(buttons);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addLayout(row);
    column->addWidget(m_words);
    Sounds& sounds = context.sounds;
    connect(&m_watch, &StrokeWatch::beat, this, [&sounds] { sounds.beat(); });
    connect(&m_watch, &StrokeWatch::enough, this, [&sounds] { sounds.enough(); });
    connect(&m_watch, &StrokeWatch::changed, this, &WatchPanel::refresh);
    connect(m_turn, &QPushButton::clicked, this, &WatchPanel::turn);
    connect(m_reset, &QPushButton::clicked, &m_watch, &StrokeWatch::reset);
    refresh();
}

void WatchPanel::setUp(const std::optional<PlannedSetUp>& planned) {
    const bool same = planned && m_planned && alike(*planned, *m_planned);
    if (same || (!planned && !m_planned)) return;
    m_planned = planned;
    m_watch.setUp(planned ? planned->windows : std::vector<PlannedWindow>{},
                  m_document.workbook().hone.hone.beatsPerMinute);
}

void WatchPanel::turn() {
    m_watch.turn();
}

QString WatchPanel::windowWords(const PlannedWindow& window) const {
    const DisplayUnits& units = m_document.units();
    const QString held = window.holdSeconds > 0
                             ? tr(", %1 s of them held at the stop").arg(window.holdSeconds)
                             : QString();
    return tr("Window %1 of %2: lower end of the abrasive from %3 to %4, %5 strokes%6.")
        .arg(m_watch.window() + 1)
        .arg(m_watch.windows())
        .arg(qs(formatDepth(window.from.value(), units)),
             qs(depthWithUnit(window.to.value(), units)))
        .arg(window.strokes)
        .arg(held);
}

void WatchPanel::refresh() {
    const PlannedWindow* window = m_watch.planned();
    const bool any = m_watch.windows() > 0;
    m_turn->setEnabled(any);
    m_reset->setEnabled(any && (m_watch.window() > 0 || m_watch.seconds() > 0));
    m_turn->setText(m_watch.isRunning() ? tr("Stop (F7)") : tr("Start the beat (F7)"));
    m_figures->setText(window != nullptr ? tr("%1   %2 / %3")
                                               .arg(clockFace(m_watch.seconds()))
                                               .arg(m_watch.strokes())
                                               .arg(window->strokes)
                       : any ? tr("enough")
                             : QStringLiteral("0:00"));
    m_words->setText(window != nullptr ? windowWords(*window)
                     : any             ? tr("All windows are done: stop, let it cool, measure.")
                                       : tr("Nothing to time yet."));
}

} // namespace borewright
