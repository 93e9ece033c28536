// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/measure/study_page.h"

#include "app/fields/fold.h"
#include "app/fields/labelled.h"
#include "app/fields/refusal_label.h"
#include "app/fields/scaled_font.h"
#include "app/measure/study_words.h"

#include <QApplication>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QShortcut>
#include <QVBoxLayout>

namespace borewright {
namespace {

constexpr int entryPixels = 34;
constexpr int runRole = Qt::UserRole;
constexpr int readingRole = Qt::UserRole + 1;

QString utf8(const std::string& text) {
    return QString::fromStdString(text);
}

} // namespace

StudyPage::StudyPage(const PageContext& context, QWidget* parent)
    : QWidget(parent)
    , m_context(context)
    , m_walk(context)
    , m_gauge(makePassingWord({}, this))
    , m_person(new QLineEdit(this))
    , m_spot(new QLineEdit(this))
    , m_count(new QLabel(this))
    , m_entry(new QLineEdit(this))
    , m_unit(new QLabel(this))
    , m_refusal(makeRefusalLabel(this))
    , m_hint(makePassingWord({}, this))
    , m_list(new QListWidget(this))
    , m_result(new QLabel(this))
    , m_use(new QPushButton(tr("&Use for this gauge"), this))
    , m_another(new QPushButton(tr("&Another person or spot"), this))
    , m_strike(new QPushButton(tr("Strike &out"), this)) {
    build();
    addKeys();
    connect(&m_walk, &StudyWalk::changed, this, &StudyPage::showStudy);
    connect(&context.document, &Document::changed, this, [this](Change change) {
        if (change == Change::everything) m_walk.forget();
    });
    connect(m_person, &QLineEdit::textEdited, &m_walk, &StudyWalk::setPerson);
    connect(m_spot, &QLineEdit::textEdited, &m_walk, &StudyWalk::setSpot);
    connect(m_strike, &QPushButton::clicked, this, &StudyPage::strikeChosen);
    connect(m_another, &QPushButton::clicked, this, &StudyPage::another);
    connect(m_use, &QPushButton::clicked, this, &StudyPage::use);
    for (QWidget* widget :
         std::initializer_list<QWidget*>{m_entry, m_person, m_spot, m_list, m_use, m_another})
        widget->installEventFilter(this);
}

void StudyPage::build() {
    auto* title = new QLabel(tr("The same spot ten times"), this);
    title->setFont(scaledFont(font(), 1.4));
    auto* what = new QLabel(
        tr("One spot, ten readings; take the gauge out and put it in again each time."), this);
    what->setFont(scaledFont(font(), 1.15));
    what->setWordWrap(true);
    auto* columns = new QHBoxLayout;
    columns->setSpacing(40);
    columns->addWidget(buildEntry(), 3);
    columns->addWidget(buildReadings(), 2);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(24, 20, 24, 20);
    layout->setSpacing(10);
    layout->addWidget(title);
    layout->addWidget(what);
    layout->addWidget(m_gauge);
    layout->addSpacing(8);
    layout->addLayout(columns, 1);
}

QWidget* StudyPage::buildEntry() {
    m_person->setPlaceholderText(tr("if several take part"));
    m_person->setAccessibleName(tr("Who reads"));
    m_spot->setPlaceholderText(tr("bore, depth, axis, if several"));
    m_spot->setAccessibleName(tr("Which spot"));
    m_entry->setObjectName(QStringLiteral("studyEntry"));
    m_entry->setAccessibleName(tr("Reading"));
    m_entry->setMaxLength(40);
    m_entry->setAlignment(Qt::AlignRight);
    QFont large = m_entry->font();
    large.setPixelSize(entryPixels);
    large.setBold(true);
    m_entry->setFont(large);
    m_count->setFont(large);
    m_entry->setFixedWidth(QFontMetrics(large).horizontalAdvance(QStringLiteral("−00.0000")) + 24);
    m_result->setWordWrap(true);
    m_result->setFont(scaledFont(font(), 1.15));
    m_result->setAccessibleName(tr("What the readings tell"));
    auto* who = new QHBoxLayout;
    who->setSpacing(16);
    who->addWidget(labelled(tr("&Who reads"), m_person), 1);
    who->addWidget(labelled(tr("Which &spot"), m_spot), 1);
    auto* line = new QHBoxLayout;
    line->setSpacing(12);
    line->addWidget(m_count);
    line->addWidget(m_entry);
    line->addWidget(m_unit);
    line->addStretch();
    auto* leave = new QPushButton(tr("&Leave"), this);
    connect(leave, &QPushButton::clicked, this, [this] { emit closed({}); });
    auto* buttons = new QHBoxLayout;
    for (QPushButton* button : {m_use, m_another, leave})
        buttons->addWidget(button);
    buttons->addStretch();
    auto* whole = new QWidget(this);
    auto* column = new QVBoxLayout(whole);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(12);
    column->addLayout(who);
    column->addLayout(line);
    column->addWidget(m_refusal);
    column->addWidget(m_hint);
    column->addWidget(m_result);
    column->addLayout(buttons);
    column->addStretch();
    return whole;
}

QWidget* StudyPage::buildReadings() {
    m_list->setAccessibleName(tr("Readings so far"));
    auto* whole = new QWidget(this);
    auto* column = new QVBoxLayout(whole);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(m_list, 1);
    column->addWidget(m_strike, 0, Qt::AlignLeft);
    m_strike->setToolTip(tr("The chosen reading, or the last (Delete in the list)"));
    return whole;
}

void StudyPage::addKeys() {
    auto* escape = new QShortcut(Qt::Key_Escape, this);
    escape->setContext(Qt::WidgetWithChildrenShortcut);
    connect(escape, &QShortcut::activated, this, [this] { emit closed({}); });
    auto* strike = new QShortcut(Qt::Key_Delete, m_list);
    strike->setContext(Qt::WidgetShortcut);
    connect(strike, &QShortcut::activated, this, &StudyPage::strikeChosen);
}

void StudyPage::open() {
    m_walk.begin();
    say({});
    m_entry->clear();
    m_entry->setFocus();
}

void StudyPage::showStudy() {
    const RepeatStudy& study = m_walk.study();
    if (study.runs.empty()) return;
    m_gauge->setText(study.gauge.empty()
                         ? tr("For the gauge of this survey, which has no name yet.")
                         : tr("For “%1”.").arg(utf8(study.gauge)));
    const RepeatRun& run = study.runs.back();
    if (m_person->text().trimmed() != utf8(run.person)) m_person->setText(utf8(run.person));
    if (m_spot->text().trimmed() != utf8(run.spot)) m_spot->setText(utf8(run.spot));
    const int next = m_walk.readInRun() + 1;
    m_count->setText(next <= StudyWalk::wanted ? tr("%1 of %2").arg(next).arg(StudyWalk::wanted)
                                               : tr("%1").arg(next));
    m_unit->setText(unitWords(m_walk.unit()));
    m_hint->setText(next <= StudyWalk::wanted
                        ? tr("Enter keeps a reading, / takes the last back, Esc leaves; what was "
                             "read stays with the workbook.")
                        : tr("Ten are enough: Enter alone uses them for this gauge. More make it "
                             "surer."));
    const auto result = m_walk.result();
    showReadings(result);
    showResult(result);
}

void StudyPage::showReadings(const std::optional<StudyResult>& result) {
    m_list->clear();
    const auto& runs = m_walk.study().runs;
    for (std::size_t i = 0; i < runs.size(); ++i) {
        if (runs.size() > 1 || !runs[i].person.empty() || !runs[i].spot.empty()) {
            auto* heading = new QListWidgetItem(runWords(runs[i]), m_list);
            heading->setFlags(Qt::ItemIsEnabled);
            heading->setForeground(palette().placeholderText());
        }
        for (std::size_t n = 0; n < runs[i].typed.size(); ++n) {
            QString words = tr("%1:   %2").arg(n + 1).arg(asTyped(runs[i].typed[n]));
            if (result && result->outlier && result->outlier->run == i &&
                result->outlier->reading == n)
                words += tr("   ◄ far from the others");
            auto* item = new QListWidgetItem(words, m_list);
            item->setData(runRole, static_cast<int>(i));
            item->setData(readingRole, static_cast<int>(n));
        }
    }
    m_list->scrollToBottom();
    m_strike->setEnabled(!m_walk.isEmpty());
}

void StudyPage::showResult(const std::optional<StudyResult>& result) {
    m_use->setEnabled(result.has_value());
    if (!result)
        return m_result->setText(tr("From the third reading on, the scatter stands here."));
    m_result->setText(studySentences(*result, m_context.document.units()).join('\n'));
}

void StudyPage::say(const QString& refusal) {
    m_refusal->setText(refusal);
    m_refusal->setVisible(!refusal.isEmpty());
    m_entry->setAccessibleDescription(refusal);
    if (!refusal.isEmpty()) m_context.sounds.refused();
}

void StudyPage::enter() {
    const QString text = m_entry->text().trimmed();
    if (text.isEmpty()) {
        if (m_walk.readInRun() >= StudyWalk::wanted) use();
        return;
    }
    const QString why = m_walk.add(text);
    say(why);
    why.isEmpty() ? m_entry->clear() : m_entry->selectAll();
}

bool StudyPage::driveByKey(int key) {
    switch (key) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
        enter();
        return true;
    case Qt::Key_Slash:
        m_entry->clear();
        say({});
        m_walk.takeBack();
        return true;
    default:
        return false;
    }
}

void StudyPage::strikeChosen() {
    const QListWidgetItem* item = m_list->currentItem();
    say({});
    if (item != nullptr && item->data(runRole).isValid())
        m_walk.strike(item->data(runRole).toUInt(), item->data(readingRole).toUInt());
    else
        m_walk.takeBack();
    m_entry->setFocus();
}

void StudyPage::another() {
    const QString why = m_walk.another();
    say(why);
    if (!why.isEmpty()) return m_entry->setFocus();
    m_person->setFocus();
    m_person->selectAll();
}

void StudyPage::use() {
    const auto result = m_walk.result();
    const QString why = m_walk.use();
    say(why);
    if (!why.isEmpty() || !result) return;
    emit closed(tr("The gauge now has a %1. Undo takes it back.")
                    .arg(utf8(studyWords(*result, m_context.document.units()))));
}

// Keeps what was read wherever the hand leaves the page: another page, a menu, the window's end.
bool StudyPage::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::FocusOut) {
        const auto reason = static_cast<QFocusEvent*>(event)->reason();
        const QWidget* now = QApplication::focusWidget();
        const bool leaves = now == nullptr || (now != this && !isAncestorOf(now)) ||
                            reason == Qt::ActiveWindowFocusReason ||
                            reason == Qt::MenuBarFocusReason || reason == Qt::PopupFocusReason;
        if (leaves) m_walk.keep();
    }
    if (watched == m_entry && event->type() == QEvent::KeyPress) {
        const auto* key = static_cast<QKeyEvent*>(event);
        if (!(key->modifiers() & (Qt::ControlModifier | Qt::AltModifier)) && driveByKey(key->key()))
            return true;
    }
    return QWidget::eventFilter(watched, event);
}

void StudyPage::hideEvent(QHideEvent* event) {
    if (!event->spontaneous()) m_walk.keep();
    QWidget::hideEvent(event);
}

} // namespace borewright
