// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/measure/cooling_form.h"

#include "app/fields/fold.h"
#include "app/fields/form_grid.h"
#include "app/fields/labelled.h"
#include "core/gauging/warmth.h"

namespace borewright {
namespace {

constexpr double mostMinutes = 31 * 24 * 60;
constexpr double leastMinutes = 0.1;

} // namespace

CoolingForm::CoolingForm(QWidget* parent)
    : QWidget(parent)
    , m_room(new TemperatureField(tr("Temperature of the room"), this))
    , m_earlier(new TemperatureField(tr("Block, first temperature"), this))
    , m_later(new TemperatureField(tr("Block, second temperature"), this))
    , m_minutes(new NumberField(
          tr("Minutes between the two"),
          {leastMinutes, mostMinutes, false, tr("must be more than zero, and within a month")},
          this))
    , m_wait(makePassingWord({}, this)) {
    m_wait->setAccessibleName(tr("How long to wait"));
    auto* grid = new FormGrid(4, this);
    grid->add(labelled(tr("Room at, °C"), m_room));
    grid->add(labelled(tr("Block at first, °C"), m_earlier));
    grid->add(labelled(tr("Block later, °C"), m_later));
    grid->add(labelled(tr("Minutes between"), m_minutes));
    grid->add(m_wait, 4);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(grid);
    for (TypedField* field : findChildren<TypedField*>())
        connect(field, &TypedField::edited, this, [this] {
            showWait();
            emit edited();
        });
    showWait();
}

void CoolingForm::setValue(const std::optional<Cooling>& cooling) {
    m_before = cooling.value_or(Cooling());
    using Typed = std::optional<TypedTemperature>;
    m_room->setValue(cooling ? Typed(cooling->room) : Typed());
    m_earlier->setValue(cooling ? Typed(cooling->earlier) : Typed());
    m_later->setValue(cooling ? Typed(cooling->later) : Typed());
    m_minutes->setValue(cooling ? std::optional(cooling->minutesApart) : std::nullopt);
    showWait();
}

std::optional<Cooling> CoolingForm::value() const {
    if (!m_room->value() || !m_earlier->value() || !m_later->value() || !m_minutes->value())
        return std::nullopt;
    Cooling cooling = m_before;
    cooling.room = *m_room->value();
    cooling.earlier = *m_earlier->value();
    cooling.later = *m_later->value();
    cooling.minutesApart = *m_minutes->value();
    return cooling;
}

void CoolingForm::showWait() {
    const auto cooling = value();
    if (!cooling)
        return m_wait->setText(tr("Take the block's temperature twice, some minutes apart, and the "
                                  "room's: what is left to wait follows from how fast it cools."));
    const auto down = coolDown(*cooling);
    QString words = QString::fromStdString(down ? coolDownWords(*down) : down.error().message());
    words[0] = words[0].toUpper();
    m_wait->setText(words + '.');
}

bool CoolingForm::commit() {
    bool good = true;
    bool any = false;
    for (TypedField* field : findChildren<TypedField*>()) {
        good = field->commit() && good;
        any = any || !field->edit()->text().trimmed().isEmpty();
    }
    if (!good || !any || value()) return good;
    for (TypedField* field : findChildren<TypedField*>())
        if (field->edit()->text().trimmed().isEmpty()) field->refuse(tr("this one is missing"));
    return false;
}

void CoolingForm::focusFirst() {
    m_room->setFocus();
}

} // namespace borewright
