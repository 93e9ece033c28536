// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/size/step_box.h"

#include "app/block/length_text.h"

namespace borewright {

StepBox::StepBox(const QString& name, Unit unit, QWidget* parent)
    : QLineEdit(parent)
    , m_unit(unit) {
    setAccessibleName(name);
    setMaxLength(40);
}

Result<std::optional<TypedLength>> StepBox::read() const {
    const QString typed = text().trimmed();
    if (typed.isEmpty()) return std::optional<TypedLength>();
    return readTyped(typed.toStdString(), m_unit).map([](TypedLength length) {
        return std::optional(std::move(length));
    });
}

void StepBox::setUnit(Unit unit) {
    if (unit == m_unit) return;
    if (const auto before = read(); before && *before) setText(shownLength(*before));
    m_unit = unit;
}

void StepBox::write(const TypedLength& length) {
    setText(length.unit() == m_unit ? QString::fromStdString(length.text()) : shownLength(length));
}

} // namespace borewright
