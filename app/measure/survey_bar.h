// SPDX-License-Identifier: GPL-3.0-or-later
// The line above the grid: which survey, what the gauge was set to, the zero check, the limits in
// use, and what the cells show.
#pragma once

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
    void showingChosen(borewright::GridModel::Showing showing);

private:
    void build();
    void show();
    [[nodiscard]] QString gaugeLine(const SurveyHeader& header) const;
    [[nodiscard]] QString zeroLine(const SurveyHeader& header) const;

    PageContext m_context;
    QComboBox* m_survey;
    QPushButton* m_new;
    QPushButton* m_heading;
    QPushButton* m_zero;
    QComboBox* m_showing;
    QComboBox* m_order;
    QLabel* m_gauge;
};

} // namespace borewright
