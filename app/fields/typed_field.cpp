// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/fields/typed_field.h"

#include "app/fields/refusal_label.h"

#include <QVBoxLayout>

namespace borewright {

TypedField::TypedField(const QString& name, QWidget* parent)
    : QWidget(parent)
    , m_edit(new QLineEdit(this))
    , m_refusal(makeRefusalLabel(this)) {
    m_edit->setAccessibleName(name);
    m_edit->setMaxLength(40);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(2);
    layout->addWidget(m_edit);
    layout->addWidget(m_refusal);
    setFocusProxy(m_edit);
    connect(m_edit, &QLineEdit::textEdited, this, [this](const QString& text) {
        m_why = take(text.trimmed());
        if (m_why.isEmpty()) emit edited();
    });
    connect(m_edit, &QLineEdit::editingFinished, this, &TypedField::commit);
}

void TypedField::showValue() {
    m_why.clear();
    m_settled = shown();
    m_edit->setText(m_settled);
    refuse({});
}

void TypedField::refuse(const QString& why) {
    m_refusal->setText(why);
    m_refusal->setVisible(!why.isEmpty());
    m_edit->setAccessibleDescription(why);
}

bool TypedField::commit() {
    const QString text = m_edit->text().trimmed();
    const bool same = text == m_settled;
    // Taken anew even where it is the same: on the way here it may have been another value.
    m_why = same && text == shown() ? QString() : take(text);
    refuse(m_why);
    if (!m_why.isEmpty()) return false;
    showValue();
    if (same) return true;
    emit edited();
    emit committed();
    return true;
}

} // namespace borewright
