// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/sheet/summary_field.h"

#include <QKeyEvent>

namespace borewright {

SummaryField::SummaryField(QWidget* parent)
    : QPlainTextEdit(parent) {
    setTabChangesFocus(true);
    setAccessibleName(tr("Sentences for the customer"));
}

void SummaryField::showData(const QString& text) {
    const bool typing = hasFocus() && toPlainText() != m_shown;
    m_shown = text;
    if (!typing && toPlainText() != text) setPlainText(text);
}

void SummaryField::commitNow() {
    const QString text = toPlainText();
    if (text == m_shown) return;
    m_shown = text;
    emit committed(text);
}

void SummaryField::focusOutEvent(QFocusEvent* event) {
    QPlainTextEdit::focusOutEvent(event);
    if (event->reason() != Qt::PopupFocusReason) commitNow();
}

void SummaryField::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape && toPlainText() != m_shown) {
        setPlainText(m_shown);
        return;
    }
    QPlainTextEdit::keyPressEvent(event);
}

} // namespace borewright
