// SPDX-License-Identifier: GPL-3.0-or-later
// The hone and how it is driven, and the crosshatch that follows from it.
#pragma once

#include "app/context/page_context.h"
#include "app/fields/committed_field.h"
#include "app/fields/labelled_choice.h"
#include "app/fields/length_field.h"
#include "app/fields/number_field.h"

#include <QLabel>
#include <QWidget>

namespace borewright {

class ToolTab : public QWidget {
    Q_OBJECT
public:
    explicit ToolTab(const PageContext& context, QWidget* parent = nullptr);
    void refresh(bool anew);

private:
    QWidget* buildHone();
    QWidget* buildCrosshatch();
    void reckon();
    [[nodiscard]] std::optional<double> usualTravel_mm() const;
    [[nodiscard]] std::optional<double> boreSize_mm() const;

    PageContext m_context;
    CommittedField* m_speed = nullptr;
    CommittedField* m_beat = nullptr;
    CommittedField* m_feed = nullptr;
    LabelledChoice* m_oil = nullptr;
    LengthField* m_travel = nullptr;
    NumberField* m_wanted = nullptr;
    QLabel* m_angle;
};

} // namespace borewright
