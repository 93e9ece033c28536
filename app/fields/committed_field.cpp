// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/fields/committed_field.h"

#include "app/fields/refusal_label.h"

#include <QEvent>
#include <QKeyEvent>
#include <QScrollArea>
#include <QVBoxLayout>

namespace borewright {

CommittedField::CommittedField(const QString& label, Commit commit, QWidget* parent)
    : QWidget(parent)
    , m_commit(std::move(commit))
    , m_label(new QLabel(this))
    , m_edit(new QLineEdit(this))
    , m_refusal(makeRefusalLabel(this)) {
    m_label->setBuddy(m_edit);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(3);
    column->addWidget(m_label);
    column->addWidget(m_edit);
    column->addWidget(m_refusal);
    column->addStretch();
    setFocusProxy(m_edit);
    setLabel(label);
    m_edit->installEventFilter(this);
    connect(m_edit, &QLineEdit::editingFinished, this, &CommittedField::commitNow);
}

void CommittedField::showData(const QString& text) {
    const bool differs = m_edit->text() != m_shown;
    const bool refused = differs && text == m_shown && !refusal().isEmpty();
    const bool busy = differs && m_edit->hasFocus();
    m_shown = text;
    if (busy || refused || m_edit->text() == text) return;
    m_edit->setText(text);
    m_edit->setCursorPosition(0);
    refuse({});
}

void CommittedField::drop() {
    m_edit->setText(m_shown);
    m_edit->setCursorPosition(0);
    refuse({});
}

void CommittedField::setHint(const QString& hint) {
    m_edit->setPlaceholderText(hint);
}

void CommittedField::setLabel(const QString& label) {
    m_label->setText(label);
    m_label->setVisible(!label.isEmpty());
    m_edit->setAccessibleName(label);
}

void CommittedField::setSpokenName(const QString& name) {
    m_edit->setAccessibleName(name);
}

void CommittedField::refuse(const QString& sentence) {
    m_refusal->setText(sentence);
    m_refusal->setVisible(!sentence.isEmpty() && !m_say);
    m_edit->setAccessibleDescription(sentence);
    if (m_say) m_say();
}

bool CommittedField::commitNow() {
    if (m_edit->text() == m_shown) {
        refuse({});
        return true;
    }
    const auto done = m_commit(m_edit->text());
    refuse(done ? QString() : QString::fromStdString(done.error().what));
    // Where the change made no difference, the data's own wording comes back.
    if (done) m_edit->setText(m_shown);
    return done.has_value();
}

bool CommittedField::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::KeyPress) {
        const auto* key = static_cast<QKeyEvent*>(event);
        if (key->key() == Qt::Key_Escape && m_edit->text() != m_shown) {
            m_edit->setText(m_shown);
            refuse({});
            return true;
        }
        if (key->key() == Qt::Key_Return || key->key() == Qt::Key_Enter) {
            // With Ctrl it belongs to the page.
            if ((key->modifiers() & ~Qt::KeypadModifier) != Qt::NoModifier) return false;
            if (commitNow())
                goOn();
            else
                m_edit->selectAll(); // typed anew, it takes the place of what was refused
            return true;
        }
    }
    return QWidget::eventFilter(watched, event);
}

// To the next field in the order of the tab key; from the last one nowhere, so that nothing is
// typed over at the top of the page.
void CommittedField::goOn() {
    for (QWidget* next = m_edit->nextInFocusChain(); next != nullptr && next != window();
         next = next->nextInFocusChain()) {
        if (next == m_edit) return;
        if (qobject_cast<QLineEdit*>(next) == nullptr || !next->isVisible() || !next->isEnabled() ||
            qobject_cast<CommittedField*>(next->parentWidget()) == nullptr)
            continue;
        next->setFocus(Qt::TabFocusReason);
        for (QWidget* around = next; around != nullptr; around = around->parentWidget())
            if (auto* scroll = qobject_cast<QScrollArea*>(around))
                scroll->ensureWidgetVisible(next);
        return;
    }
}

} // namespace borewright
