// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/start_field.h"

#include "app/shell/theme.h"

#include <QVBoxLayout>

namespace borewright {

StartField::StartField(const QString& label, const QString& hint, QWidget* parent)
    : QWidget(parent)
    , m_edit(new QLineEdit(this))
    , m_note(new QLabel(QStringLiteral(" "), this)) {
    auto* title = new QLabel(label, this);
    title->setBuddy(m_edit);
    m_edit->setAccessibleName(label);
    m_edit->setPlaceholderText(hint);
    m_edit->setMaxLength(80);
    m_note->setWordWrap(true);
    m_note->setTextFormat(Qt::PlainText);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(3);
    column->addWidget(title);
    column->addWidget(m_edit);
    column->addWidget(m_note);
    setFocusProxy(m_edit);
}

void StartField::tell(const QString& note) {
    show(note, faintInk(palette()));
}

void StartField::refuse(const QString& why) {
    show(why, warningColour(palette()));
}

// An empty note keeps its line, so that nothing jumps while he types.
void StartField::show(const QString& note, const QColor& ink) {
    QPalette colours = palette();
    colours.setColor(QPalette::WindowText, ink);
    m_note->setPalette(colours);
    m_note->setText(note.isEmpty() ? QStringLiteral(" ") : note);
    m_edit->setAccessibleDescription(note);
}

} // namespace borewright
