// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/fit/fit_page_parts.h"

#include "app/fields/fold.h"
#include "app/fields/scaled_font.h"
#include "app/pictures/reading_words.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QScrollArea>
#include <QToolButton>
#include <QVBoxLayout>

#include <algorithm>

namespace borewright {
namespace {

constexpr int narrowest = 320, widest = 440;

} // namespace

QLabel* makeHeadline(const QString& name, QWidget* parent) {
    auto* label = new QLabel(parent);
    label->setFont(scaledFont(label->font(), 1.25));
    label->setWordWrap(true);
    label->setTextInteractionFlags(Qt::TextSelectableByMouse);
    label->setAccessibleName(name);
    return label;
}

QLabel* makeQuietLines(const QString& name, QWidget* parent) {
    QLabel* label = makePassingWord({}, parent);
    label->setTextInteractionFlags(Qt::TextSelectableByMouse);
    label->setAccessibleName(name);
    return label;
}

void sayLines(QLabel& label, const QString& text) {
    label.setText(text);
    label.setVisible(!text.isEmpty());
}

Sentences::Sentences(const QString& name, QWidget* parent)
    : QWidget(parent)
    , m_label(makeQuietLines(name, this))
    , m_more(new QToolButton(this)) {
    m_more->setCheckable(true);
    m_more->setAutoRaise(true);
    m_more->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
    m_more->setFocusPolicy(Qt::StrongFocus);
    QSizePolicy kept = m_more->sizePolicy();
    kept.setRetainSizeWhenHidden(true); // else its coming would break the lines elsewhere
    m_more->setSizePolicy(kept);
    m_label->setAlignment(Qt::AlignLeft | Qt::AlignTop);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(12);
    row->addWidget(m_label, 1);
    row->addWidget(m_more, 0, Qt::AlignTop);
    connect(m_more, &QToolButton::toggled, this, &Sentences::arrange);
}

void Sentences::say(const std::vector<std::string>& sentences) {
    m_sentences.clear();
    for (const std::string& sentence : sentences)
        m_sentences << qs(sentence);
    arrange();
}

int Sentences::twoLines() const {
    return 2 * m_label->fontMetrics().lineSpacing();
}

bool Sentences::fits(const QString& text) const {
    const QRect room(0, 0, std::max(1, m_label->width()), 10000);
    return m_label->fontMetrics().boundingRect(room, Qt::TextWordWrap, text).height() <= twoLines();
}

// One sentence too long for its room: its beginning, by whole words.
QString Sentences::cutToFit(const QString& sentence) const {
    if (fits(sentence)) return sentence;
    QStringList words = sentence.split(' ');
    while (words.size() > 1 && !fits(words.join(' ') + QStringLiteral(" …")))
        words.removeLast();
    return words.join(' ') + QStringLiteral(" …");
}

void Sentences::arrange() {
    const bool all = m_more->isChecked();
    qsizetype shown = all ? m_sentences.size() : std::min<qsizetype>(1, m_sentences.size());
    while (shown < m_sentences.size() && fits(m_sentences.mid(0, shown + 1).join(' ')))
        ++shown;
    const QString whole = m_sentences.mid(0, shown).join(' ');
    const QString text = all ? whole : cutToFit(whole);
    const qsizetype left = m_sentences.size() - shown + (text == whole ? 0 : 1);
    m_label->setText(text);
    m_label->setMinimumHeight(twoLines());
    m_label->setMaximumHeight(all ? QWIDGETSIZE_MAX : twoLines());
    m_more->setText(all ? tr("Less") : tr("%1 more").arg(left));
    m_more->setArrowType(all ? Qt::UpArrow : Qt::DownArrow);
    m_more->setAccessibleName(all ? tr("Fewer sentences") : tr("More sentences"));
    m_more->setMinimumWidth(m_more->fontMetrics().horizontalAdvance(tr("%1 more").arg(88)) + 30);
    m_more->setVisible(left > 0 || all);
}

void Sentences::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    arrange();
}

void Sentences::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::FontChange) arrange();
}

void buildScrolledTab(QWidget* tab, std::initializer_list<QWidget*> head, QWidget* content) {
    auto* scroll = new QScrollArea(tab);
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll->setFocusPolicy(Qt::NoFocus);
    scroll->setWidget(content);
    auto* column = new QVBoxLayout(tab);
    column->setContentsMargins(0, 12, 0, 0);
    column->setSpacing(8);
    for (QWidget* part : head)
        column->addWidget(part);
    column->addWidget(scroll, 1);
}

QWidget* besideEachOther(QWidget* left, QWidget* right, QWidget* parent) {
    auto* whole = new QWidget(parent);
    auto* row = new QHBoxLayout(whole);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(32);
    right->setMinimumWidth(narrowest);
    right->setMaximumWidth(widest);
    row->addWidget(left, 5);
    row->addWidget(right, 2, Qt::AlignTop);
    return whole;
}

} // namespace borewright
