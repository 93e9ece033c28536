// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/fields/fold.h"

#include "app/fields/scaled_font.h"

#include <QLabel>
#include <QToolButton>
#include <QVBoxLayout>

namespace borewright {

QLabel* makePassingWord(const QString& text, QWidget* parent) {
    auto* label = new QLabel(text, parent);
    label->setWordWrap(true);
    label->setForegroundRole(QPalette::PlaceholderText);
    return label;
}

Part::Part(const QString& title, const QString& explanation, QWidget* parent)
    : QWidget(parent)
    , m_column(new QVBoxLayout(this)) {
    m_column->setContentsMargins(0, 0, 0, 0);
    m_column->setSpacing(8);
    auto* heading = new QLabel(title, this);
    QFont face = scaledFont(heading->font(), 1.25);
    face.setWeight(QFont::DemiBold);
    heading->setFont(face);
    m_column->addWidget(heading);
    if (!explanation.isEmpty()) m_column->addWidget(makePassingWord(explanation, this));
}

void Part::add(QWidget* content) {
    m_column->addWidget(content);
}

Fold::Fold(const QString& title, QWidget* content, QWidget* parent)
    : QWidget(parent)
    , m_title(title)
    , m_button(new QToolButton(this))
    , m_content(content) {
    m_button->setText(title);
    m_button->setAccessibleName(title);
    m_button->setCheckable(true);
    m_button->setAutoRaise(true);
    m_button->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
    m_button->setFocusPolicy(Qt::StrongFocus);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(8);
    column->addWidget(m_button, 0, Qt::AlignLeft);
    column->addWidget(content);
    connect(m_button, &QToolButton::toggled, this, &Fold::arrange);
    arrange();
}

void Fold::setOpen(bool open) {
    m_button->setChecked(open);
}

bool Fold::isOpen() const {
    return m_button->isChecked();
}

void Fold::setTitle(const QString& title) {
    m_title = title;
    m_button->setAccessibleName(title);
    arrange();
}

void Fold::setSummary(const QString& summary) {
    m_summary = summary;
    arrange();
}

void Fold::arrange() {
    m_content->setVisible(isOpen());
    m_button->setArrowType(isOpen() ? Qt::DownArrow : Qt::RightArrow);
    m_button->setText(isOpen() || m_summary.isEmpty() ? m_title : m_title + ": " + m_summary);
    m_button->setAccessibleDescription(isOpen() ? tr("unfolded") : tr("folded away"));
}

} // namespace borewright
