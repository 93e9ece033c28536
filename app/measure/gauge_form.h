// SPDX-License-Identifier: GPL-3.0-or-later
// The gauge setting of a survey: what the gauge was set to, on what, and its dial as it looks.
#pragma once

#include "app/fields/length_field.h"
#include "app/measure/dial_picture.h"
#include "core/workbook/survey.h"

#include <QComboBox>
#include <QFormLayout>
#include <QGroupBox>
#include <QWidget>

namespace borewright {

class GaugeForm : public QWidget {
    Q_OBJECT
public:
    explicit GaugeForm(QWidget* parent = nullptr);
    // `sizeUnit`: what a bare number in the size fields means.
    void setValue(const GaugeSetting& setting, Unit sizeUnit);
    [[nodiscard]] GaugeSetting value() const;
    // Reads every field; false, with the refusal at the field, where one cannot be kept.
    bool commit();
    [[nodiscard]] LengthField* setSize() const { return m_setSize; }

private:
    void buildMain(QFormLayout* form);
    void buildDial(QFormLayout* form);
    void buildWarmth(QFormLayout* form);
    void chooseDial(int preset);
    void showDial();
    [[nodiscard]] Dial dialValue() const;
    bool commitTemperatures();

    QLineEdit* m_gauge;
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
    QLineEdit* m_masterTemperature;
    QLineEdit* m_blockTemperature;
    QComboBox* m_blockExpansion;
    QLabel* m_warmthRefusal;
    std::optional<TypedTemperature> m_masterWarmth;
    std::optional<TypedTemperature> m_blockWarmth;
    GaugeSetting m_setting; // what no field shows stays as it was
};

} // namespace borewright
