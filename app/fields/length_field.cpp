// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/fields/length_field.h"

namespace borewright {

LengthField::LengthField(const QString& name, Unit unit, QWidget* parent)
    : TypedField(name, parent)
    , m_unit(unit) {}

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
    showValue();
}

void LengthField::setUnit(Unit unit) {
    if (unit == m_unit) return;
    m_unit = unit;
    showValue();
}

QString LengthField::take(const QString& text) {
    std::optional<TypedLength> value;
    if (!text.isEmpty()) {
        const auto typed = readTyped(text.toStdString(), m_unit);
        if (!typed) return QString::fromStdString(typed.error().message());
        const QString why = m_check ? m_check(typed->value()) : QString();
        if (!why.isEmpty()) return why;
        value = *typed;
    }
    m_value = value;
    return {};
}

} // namespace borewright
