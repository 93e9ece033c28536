// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/measure/story_bar.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QVBoxLayout>

namespace borewright {
namespace {

QString utf8(const std::string& text) {
    return QString::fromStdString(text);
}

// "Bore 2, 1.20 in, A", at the head of a sentence.
QString placeOf(const Reading& reading, const Block& block) {
    QString place = utf8(describe(reading.station, block));
    if (!place.isEmpty()) place[0] = place[0].toUpper();
    return place;
}

QString asTyped(const TypedLength& typed) {
    const auto unit = symbol(typed.unit());
    return utf8(typed.text()).replace(QLatin1Char('-'), QChar(0x2212)) + QLatin1Char(' ') +
           QString::fromUtf8(unit.data(), static_cast<qsizetype>(unit.size()));
}

} // namespace

StoryBar::StoryBar(const PageContext& context, QWidget* parent)
    : QWidget(parent)
    , m_context(context)
    , m_line(new QLabel(this))
    , m_look(new QPushButton(tr("Look (F9)"), this))
    , m_choices(new QWidget(this))
    , m_again(new QPushButton(tr("&M  measure it again"), m_choices))
    , m_keep(new QPushButton(tr("&K  keep it as it is"), m_choices)) {
    setFocusPolicy(Qt::StrongFocus);
    setAccessibleName(tr("Readings that look like slips"));
    build();
    connect(&context.document, &Document::changed, this, &StoryBar::follow);
    connect(&context.selection, &Selection::changed, this, &StoryBar::follow);
    follow();
}

void StoryBar::build() {
    m_line->setWordWrap(true);
    m_look->setFocusPolicy(Qt::NoFocus);
    auto* head = new QHBoxLayout;
    head->addWidget(m_line, 1);
    head->addWidget(m_look, 0, Qt::AlignTop);
    auto* column = new QVBoxLayout(m_choices);
    column->setContentsMargins(0, 2, 0, 0);
    column->setSpacing(2);
    for (std::size_t i = 0; i < mostStories; ++i) {
        auto* button = new QPushButton(m_choices);
        button->setStyleSheet(QStringLiteral("text-align: left; padding: 3px 10px;"));
        button->setAccessibleName(tr("Story %1").arg(i + 1));
        connect(button, &QPushButton::clicked, this, [this, i] { accept(i); });
        m_stories.push_back(button);
        column->addWidget(button);
    }
    auto* other = new QHBoxLayout;
    other->addWidget(m_again);
    other->addWidget(m_keep);
    other->addWidget(
        new QLabel(tr("<b>Enter</b> takes the first &nbsp; <b>1</b>–<b>4</b> takes one "
                      "&nbsp; <b>F9</b> the next &nbsp; <b>Esc</b> back"),
                   m_choices));
    other->addStretch();
    column->addLayout(other);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(16, 4, 16, 4);
    layout->setSpacing(2);
    layout->addLayout(head);
    layout->addWidget(m_choices);
    connect(m_look, &QPushButton::clicked, this, &StoryBar::next);
    connect(m_again, &QPushButton::clicked, this, &StoryBar::readAgain);
    connect(m_keep, &QPushButton::clicked, this, &StoryBar::keepAsRead);
}

const SurveyResult* StoryBar::result() const {
    return findResult(m_context.document.surveyResults(), m_context.selection.survey());
}

const Suspicion* StoryBar::suspicion() const {
    const SurveyResult* survey = result();
    if (survey == nullptr || !m_open || *m_open >= survey->suspicions.size()) return nullptr;
    return &survey->suspicions[*m_open];
}

std::optional<Station> StoryBar::stationOf(const Suspicion& suspicion) const {
    const Survey* survey = findSurvey(m_context.document.workbook(), m_context.selection.survey());
    if (survey == nullptr || suspicion.readings.empty()) return std::nullopt;
    return survey->readings[suspicion.readings.front()].station;
}

std::optional<std::size_t> StoryBar::accusing(const Station& station) const {
    const SurveyResult* survey = result();
    const Survey* record = findSurvey(m_context.document.workbook(), m_context.selection.survey());
    if (survey == nullptr || record == nullptr) return std::nullopt;
    for (std::size_t i = 0; i < survey->suspicions.size(); ++i)
        for (const std::size_t reading : survey->suspicions[i].readings)
            if (record->readings[reading].station == station) return i;
    return std::nullopt;
}

// Stays with what is open while the user looks at it; otherwise follows the chosen station.
void StoryBar::follow() {
    const SurveyResult* survey = result();
    const bool any = survey != nullptr && !survey->suspicions.empty();
    setVisible(any);
    if (!any) {
        m_open.reset();
        return;
    }
    const auto& station = m_context.selection.station();
    m_open = station ? accusing(*station) : std::nullopt;
    m_open ? showOpen() : showLine();
}

void StoryBar::showLine() {
    const auto count = static_cast<int>(result()->suspicions.size());
    m_choices->hide();
    m_look->show();
    m_line->setText(count == 1 ? tr("One reading, or a group of them, looks like a slip.")
                               : tr("%1 readings, or groups of them, look like slips.").arg(count));
}

QString StoryBar::title(const Suspicion& suspicion) const {
    const Survey* survey = findSurvey(m_context.document.workbook(), m_context.selection.survey());
    const Reading& first = survey->readings[suspicion.readings.front()];
    const QString place = placeOf(first, m_context.document.workbook().block);
    if (suspicion.readings.size() > 1)
        return tr("<b>%1</b> and %2 more look like a slip:")
            .arg(place)
            .arg(suspicion.readings.size() - 1);
    return tr("<b>%1</b> reads %2, which looks like a slip:").arg(place, asTyped(first.typed));
}

void StoryBar::showOpen() {
    const Suspicion& open = *suspicion();
    m_line->setText(title(open));
    m_look->hide();
    m_choices->show();
    for (std::size_t i = 0; i < mostStories; ++i) {
        const bool told = i < open.stories.size() && !open.stories[i].fixes.empty();
        m_stories[i]->setVisible(told);
        if (!told) continue;
        const SlipStory& story = open.stories[i];
        m_stories[i]->setText(tr("&%1  %2  ·  %3")
                                  .arg(i + 1)
                                  .arg(utf8(story.words))
                                  .arg(story.weight > 0.9   ? tr("most likely")
                                       : story.weight > 0.5 ? tr("likely")
                                                            : tr("perhaps")));
        m_stories[i]->setAccessibleName(tr("Accept: %1").arg(utf8(story.words)));
    }
}

void StoryBar::next() {
    const SurveyResult* survey = result();
    if (survey == nullptr || survey->suspicions.empty()) return;
    const std::size_t to = m_open ? (*m_open + 1) % survey->suspicions.size() : 0;
    const auto station = stationOf(survey->suspicions[to]);
    if (!station) return;
    m_context.selection.setStation(*station);
    m_open = to; // two suspicions may share a station
    showOpen();
    setFocus();
}

void StoryBar::accept(std::size_t story) {
    const Suspicion* open = suspicion();
    if (open == nullptr || story >= open->stories.size() || open->stories[story].fixes.empty())
        return;
    Document& document = m_context.document;
    const SlipStory chosen = open->stories[story];
    const Edit edit =
        acceptStory(document.workbook(), m_context.selection.survey(), chosen, document.now());
    const auto kept = document.edit(edit, tr("accept “%1”").arg(utf8(chosen.reason)));
    if (!kept) return emit refused(utf8(kept.error().message()));
    if (!chosen.toRead.empty()) {
        emit done(tr("Accepted: %1. One station is left to read.").arg(utf8(chosen.words)));
        return emit measureAgain(chosen.toRead.front());
    }
    emit done(tr("Accepted: %1. What stood there is struck out with the reason.")
                  .arg(utf8(chosen.words)));
    emit left();
}

void StoryBar::keepAsRead() {
    const Suspicion* open = suspicion();
    if (open == nullptr) return;
    const Edit edit = keepReadings(m_context.selection.survey(), open->readings);
    const auto kept = m_context.document.edit(edit, tr("keep as read"));
    if (!kept) return emit refused(utf8(kept.error().message()));
    emit done(tr("Kept as it is; it is not asked about again."));
    emit left();
}

void StoryBar::readAgain() {
    const Suspicion* open = suspicion();
    const auto station = open != nullptr ? stationOf(*open) : std::nullopt;
    if (station) emit measureAgain(*station);
}

void StoryBar::close() {
    m_open.reset();
    showLine();
    emit left();
}

void StoryBar::keyPressEvent(QKeyEvent* event) {
    if (!isOpen()) return QWidget::keyPressEvent(event);
    switch (event->key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
        return accept(0);
    case Qt::Key_1:
    case Qt::Key_2:
    case Qt::Key_3:
    case Qt::Key_4:
        return accept(static_cast<std::size_t>(event->key() - Qt::Key_1));
    case Qt::Key_M:
        return readAgain();
    case Qt::Key_K:
        return keepAsRead();
    case Qt::Key_Escape:
        return close();
    default:
        QWidget::keyPressEvent(event);
    }
}

} // namespace borewright
