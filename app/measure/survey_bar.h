// SPDX-License-Identifier: GPL-3.0-or-later
// The line above the grid: which survey, what the gauge was set to, the zero check, the limits in
// use, what one reading is worth, and what the cells show; beneath it, quietly, what the survey
// warns of.
#pragma once

#include "app/fields/elided_label.h"
#include "app/measure/grid_model.h"

#include <QComboBox>
#include <QLabel>
#include <QPushButton>
#include <QWidget>

namespace borewright {

class SurveyBar : public QWidget {
    Q_OBJECT
public:
    SurveyBar(const PageContext& context, QWidget* parent = nullptr);

signals:
    void newSurvey();
    void editSurvey();
    void zeroCheck();
    void repeatability();
    void showingChosen(borewright::GridModel::Showing showing);

private:
    void build();
    void show();
    void showWarnings(const SurveyResult* result);
    [[nodiscard]] QString gaugeLine(const SurveyHeader& header) const;
    [[nodiscard]] QString zeroLine(const SurveyHeader& header) const;

    PageContext m_context;
    QComboBox* m_survey;
    QPushButton* m_new;
    QPushButton* m_heading;
    QPushButton* m_zero;
    QPushButton* m_repeat;
    QComboBox* m_showing;
    QComboBox* m_order;
    QLabel* m_gauge;
    ElidedLabel* m_warnings;
};

} // namespace borewright
