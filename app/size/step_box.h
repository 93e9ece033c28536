// SPDX-License-Identifier: GPL-3.0-or-later
// A narrow box for a length as typed. What is refused is said by the form around it, where there is
// room for a sentence.
#pragma once

#include "core/length/number_text.h"

#include <QLineEdit>

#include <optional>

namespace borewright {

class StepBox final : public QLineEdit {
public:
    // `name` is what a screen reader, and a refusal, calls it.
    StepBox(const QString& name, Unit unit, QWidget* parent);

    // Nothing where it is empty; a number without a unit is taken in the box's.
    [[nodiscard]] Result<std::optional<TypedLength>> read() const;
    // What stands there keeps its meaning: its unit is written behind it.
    void setUnit(Unit unit);
    void write(const TypedLength& length);

private:
    Unit m_unit;
};

} // namespace borewright
