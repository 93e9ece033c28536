// SPDX-License-Identifier: GPL-3.0-or-later
// What the gear is worth: one choice and one line for most people, the single figures behind a
// fold for who has his own.
#pragma once

#include "app/fields/length_field.h"
#include "app/fields/number_field.h"
#include "app/measure/gear_words.h"

#include <QComboBox>

namespace borewright {

class Fold;
class FormGrid;

class GearForm : public QWidget {
    Q_OBJECT
public:
    explicit GearForm(QWidget* parent = nullptr);
    // `proposed`: the figures are the program's, and follow the dial until he touches them.
    void setValue(const Gear& gear, Unit small, bool proposed);
    [[nodiscard]] Gear value() const;
    // Reads every field; false, with the refusal at the field, where one cannot be kept.
    bool commit();
    // Another dial was chosen.
    void followDial(const Dial& dial);
    // The line that says what it comes to.
    void tell(const Budget& budget, const DisplayUnits& units);

signals:
    void edited();

private:
    void buildFigures(FormGrid* grid);
    void choose(GearChoice choice);
    void showGear();
    void followFields();

    Gear m_gear;
    Unit m_small = Unit::thou;
    bool m_proposed = false;
    QComboBox* m_choice;
    QLabel* m_worth;
    LengthField* m_repeatability;
    NumberField* m_readings;
    LengthField* m_step;
    LengthField* m_nearError;
    LengthField* m_dialError;
    LengthField* m_master;
    QComboBox* m_meant;
    LengthField* m_scatter;
    LengthField* m_drift;
    LengthField* m_driftLimit;
    LengthField* m_rocking;
    QLineEdit* m_checked;
    Fold* m_fold;
};

} // namespace borewright
