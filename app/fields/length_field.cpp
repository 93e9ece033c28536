// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/fields/length_field.h"

#include <QVBoxLayout>

namespace borewright {

LengthField::LengthField(const QString& name, Unit unit, QWidget* parent)
    : QWidget(parent)
    , m_edit(new QLineEdit(this))
    , m_refusal(new QLabel(this))
    , m_unit(unit) {
    m_edit->setAccessibleName(name);
    m_edit->setMaxLength(40);
    m_refusal->setWordWrap(true);
    m_refusal->setObjectName(QStringLiteral("refusal"));
    m_refusal->hide();
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(2);
    layout->addWidget(m_edit);
    layout->addWidget(m_refusal);
    setFocusProxy(m_edit);
    connect(m_edit, &QLineEdit::editingFinished, this, &LengthField::commit);
}

// A value typed in the field's own unit needs no unit behind it.
QString LengthField::shown() const {
    if (!m_value) return {};
    const QString text = QString::fromStdString(m_value->text());
    if (m_value->unit() == m_unit) return text;
    const auto unit = symbol(m_value->unit());
    return text + QLatin1Char(' ') +
           QString::fromUtf8(unit.data(), static_cast<qsizetype>(unit.size()));
}

void LengthField::setValue(const std::optional<TypedLength>& value) {
    m_value = value;
    m_edit->setText(shown());
    refuse({});
}

void LengthField::setUnit(Unit unit) {
    if (unit == m_unit) return;
    m_unit = unit;
    m_edit->setText(shown());
}

void LengthField::refuse(const QString& why) {
    m_refusal->setText(why);
    m_refusal->setVisible(!why.isEmpty());
    m_edit->setAccessibleDescription(why);
}

bool LengthField::commit() {
    const QString text = m_edit->text().trimmed();
    if (text == shown()) {
        refuse({});
        return true;
    }
    std::optional<TypedLength> value;
    if (!text.isEmpty()) {
        const auto typed = readTyped(text.toStdString(), m_unit);
        if (!typed) {
            refuse(QString::fromStdString(typed.error().message()));
            return false;
        }
        if (m_check) {
            const QString why = m_check(typed->value());
            if (!why.isEmpty()) {
                refuse(why);
                return false;
            }
        }
        value = *typed;
    }
    refuse({});
    m_value = value;
    m_edit->setText(shown());
    emit committed();
    return true;
}

} // namespace borewright
