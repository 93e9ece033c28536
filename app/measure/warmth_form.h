// SPDX-License-Identifier: GPL-3.0-or-later
// Warmth of a survey: block, master and gauge, how long since the last pass or wash, how long to
// wait. It asks where a block may still be warm and nobody took its temperature.
#pragma once

#include "app/fields/number_field.h"
#include "core/workbook/survey.h"

#include <QCheckBox>
#include <QComboBox>
#include <QPushButton>

namespace borewright {

struct DisplayUnits;
class CoolingForm;
class Fold;

class WarmthForm : public QWidget {
    Q_OBJECT
public:
    explicit WarmthForm(QWidget* parent = nullptr);
    void setValue(const SurveyHeader& header);
    // Puts what stands in the fields into `header`.
    void put(SurveyHeader& header) const;
    // Reads every field; false, with the refusal at the field, where one cannot be kept.
    bool commit();
    // Asks, where it must, with what 5 °C are worth on a bore of this size.
    void tell(const SurveyHeader& header, std::optional<Length> size, const DisplayUnits& units);

signals:
    void edited();

private:
    void build();
    QWidget* buildQuestion();
    void rest();

    QCheckBox* m_together;
    TemperatureField* m_openEnd;
    TemperatureField* m_closedEnd;
    TemperatureField* m_master;
    NumberField* m_gauge;
    NumberField* m_minutes;
    QComboBox* m_expansion;
    NumberField* m_differenceDoubt;
    NumberField* m_temperatureDoubt;
    Fold* m_doubts;
    CoolingForm* m_cooling;
    Fold* m_coolingFold;
    QWidget* m_question;
    QLabel* m_asked;
};

} // namespace borewright
