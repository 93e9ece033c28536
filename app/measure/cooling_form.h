// SPDX-License-Identifier: GPL-3.0-or-later
// How long a warm block has to wait: the room's temperature and two of the block's, some minutes
// apart.
#pragma once

#include "app/fields/number_field.h"
#include "core/workbook/survey.h"

#include <array>

namespace borewright {

class CoolingForm : public QWidget {
    Q_OBJECT
public:
    explicit CoolingForm(QWidget* parent = nullptr);
    void setValue(const std::optional<Cooling>& cooling);
    // Nothing where a figure is missing.
    [[nodiscard]] std::optional<Cooling> value() const;
    // Reads every field; all of them or none.
    bool commit();
    void focusFirst();

signals:
    void edited();

private:
    void showWait();

    TemperatureField* m_room;
    TemperatureField* m_earlier;
    TemperatureField* m_later;
    NumberField* m_minutes;
    QLabel* m_wait;
    Cooling m_before; // what no field shows stays as it was
};

} // namespace borewright
