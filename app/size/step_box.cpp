// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/size/step_box.h"

#include "app/pictures/reading_words.h"

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
    if (const auto before = read(); before && *before) setText(qs((*before)->withUnit()));
    m_unit = unit;
}

void StepBox::write(const TypedLength& length) {
    setText(qs(length.unit() == m_unit ? length.text() : length.withUnit()));
}

} // namespace borewright
