// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/fields/number_field.h"

#include "core/length/number_text.h"

#include <cmath>

namespace borewright {

NumberField::NumberField(const QString& name, Range range, QWidget* parent)
    : TypedField(name, parent)
    , m_range(std::move(range)) {}

QString NumberField::shown() const {
    return m_value ? QString::number(*m_value, 'g', 12) : QString();
}

void NumberField::setValue(std::optional<double> value) {
    m_value = value;
    showValue();
}

QString NumberField::take(const QString& text) {
    if (text.isEmpty()) {
        m_value.reset();
        return {};
    }
    const auto read = readDecimal(text.toStdString());
    if (!read) return QString::fromStdString(read.error().message());
    const double value = toDouble(*read);
    const bool whole = value == std::round(value);
    if (value < m_range.least || value > m_range.most || (m_range.whole && !whole))
        return m_range.words;
    m_value = value;
    return {};
}

QString TemperatureField::shown() const {
    if (!m_value) return {};
    return QString::fromStdString(m_value->text()) +
           (m_value->scale() == Scale::celsius ? QStringLiteral(" °C") : QStringLiteral(" °F"));
}

void TemperatureField::setValue(const std::optional<TypedTemperature>& value) {
    m_value = value;
    showValue();
}

QString TemperatureField::take(const QString& text) {
    if (text.isEmpty()) {
        m_value.reset();
        return {};
    }
    const auto read = readTemperature(text.toStdString(), Scale::celsius);
    if (!read) return QString::fromStdString(read.error().message());
    m_value = *read;
    return {};
}

} // namespace borewright
