// SPDX-License-Identifier: GPL-3.0-or-later
// Fields for what is no length: a plain number within its range, a temperature.
#pragma once

#include "app/fields/typed_field.h"
#include "core/length/temperature.h"

#include <optional>

namespace borewright {

// A number such as minutes, °C of a difference, a count of readings.
class NumberField : public TypedField {
    Q_OBJECT
public:
    struct Range {
        double least = 0;
        double most = 0;
        bool whole = false; // no part behind the point
        QString words;      // what is said where a number lies outside: "minutes lie between …"
    };
    NumberField(const QString& name, Range range, QWidget* parent = nullptr);

    [[nodiscard]] std::optional<double> value() const { return m_value; }
    void setValue(std::optional<double> value);

protected:
    [[nodiscard]] QString shown() const override;
    QString take(const QString& text) override;

private:
    Range m_range;
    std::optional<double> m_value;
};

// A temperature as typed; without a scale behind it, °C.
class TemperatureField : public TypedField {
    Q_OBJECT
public:
    using TypedField::TypedField;

    [[nodiscard]] const std::optional<TypedTemperature>& value() const { return m_value; }
    void setValue(const std::optional<TypedTemperature>& value);

protected:
    [[nodiscard]] QString shown() const override;
    QString take(const QString& text) override;

private:
    std::optional<TypedTemperature> m_value;
};

} // namespace borewright
