// SPDX-License-Identifier: GPL-3.0-or-later
// A field for one length as typed.
#pragma once

#include "app/fields/typed_field.h"
#include "core/length/number_text.h"

#include <functional>
#include <optional>

namespace borewright {

class LengthField : public TypedField {
    Q_OBJECT
public:
    // A number without a unit is taken in `unit`.
    LengthField(const QString& name, Unit unit, QWidget* parent = nullptr);

    [[nodiscard]] const std::optional<TypedLength>& value() const { return m_value; }
    void setValue(const std::optional<TypedLength>& value);
    void setUnit(Unit unit);
    [[nodiscard]] Unit unit() const { return m_unit; }
    // What is refused beyond not being a number: returns why, or an empty text.
    void setCheck(std::function<QString(Length)> check) { m_check = std::move(check); }

protected:
    [[nodiscard]] QString shown() const override;
    QString take(const QString& text) override;

private:
    Unit m_unit;
    std::optional<TypedLength> m_value;
    std::function<QString(Length)> m_check;
};

} // namespace borewright
