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

namespace borewright {
namespace {

constexpr int narrowest = 320, widest = 440;
// Letters of sentences in passing that are shown unasked: about two lines.
constexpr qsizetype unasked = 260;

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
    m_more->setFocusPolicy(Qt::StrongFocus);
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

void Sentences::arrange() {
    qsizetype shown = 0, letters = 0;
    while (shown < m_sentences.size() &&
           (shown == 0 || m_more->isChecked() || letters + m_sentences[shown].size() <= unasked))
        letters += m_sentences[shown++].size() + 1;
    const bool more = shown < m_sentences.size();
    m_label->setText(m_sentences.mid(0, shown).join(' '));
    m_more->setText(m_more->isChecked() ? tr("Less")
                                        : tr("%1 more").arg(m_sentences.size() - shown));
    m_more->setAccessibleName(m_more->isChecked() ? tr("Fewer sentences") : tr("More sentences"));
    m_more->setVisible(more || m_more->isChecked());
    setVisible(!m_sentences.isEmpty());
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
