// SPDX-License-Identifier: GPL-3.0-or-later
// The gauge setting of a survey: what the gauge was set to, on what, its dial as it looks, what the
// gear is worth, and the warmth.
#pragma once

#include "app/fields/length_field.h"
#include "app/measure/dial_picture.h"
#include "core/length/format.h"
#include "core/workbook/survey.h"

#include <QComboBox>
#include <QFormLayout>
#include <QWidget>

#include <vector>

namespace borewright {

class GearForm;
class WarmthForm;

class GaugeForm : public QWidget {
    Q_OBJECT
public:
    explicit GaugeForm(QWidget* parent = nullptr);
    // The gauges to choose from, as kept.
    void offer(const std::vector<GaugeSetting>& kept);
    // `units`: what a bare number in a field of sizes or of small amounts means. `proposedGear`:
    // the gear's figures are the program's, and follow the dial until he touches them.
    void setValue(const SurveyHeader& header, const DisplayUnits& units, bool proposedGear);
    // Puts what stands in the fields into `header`.
    void put(SurveyHeader& header) const;
    // Reads every field; false, with the refusal at the field, where one cannot be kept.
    bool commit();
    // What the gear comes to for a bore of this size, and whether the block is still warm.
    void tell(const SurveyHeader& header, std::optional<Length> size, const DisplayUnits& units);
    [[nodiscard]] LengthField* setSize() const { return m_setSize; }

signals:
    void edited();

private:
    void build();
    void buildMain(QFormLayout* form);
    void buildDial(QFormLayout* form);
    void followFields();
    void chooseGauge(int row);
    void chooseDial(int preset);
    void dialChosen();
    void showDial(const Dial& dial);
    bool commitDial();
    [[nodiscard]] Dial dialValue() const;

    QComboBox* m_gauge;
    QLineEdit* m_setOn;
    LengthField* m_setSize;
    QComboBox* m_entry;
    QComboBox* m_preset;
    LengthField* m_graduation;
    LengthField* m_oneTurn;
    LengthField* m_travel;
    QComboBox* m_face;
    QComboBox* m_larger;
    DialPicture* m_picture;
    GearForm* m_gear;
    WarmthForm* m_warmth;
    std::vector<GaugeSetting> m_kept;
    Unit m_small = Unit::thou;
    Dial m_dial; // what no field shows stays as it was
};

} // namespace borewright
