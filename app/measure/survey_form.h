// SPDX-License-Identifier: GPL-3.0-or-later
// A survey's heading as a form: kind, name, plate, limits, what is asked for, the gauge setting.
// The first lines are what most people need; at its end stands what the gear can decide.
#pragma once

#include "app/context/page_context.h"
#include "app/measure/gauge_form.h"
#include "app/measure/scope_picker.h"

#include <QPushButton>
#include <QScrollArea>
#include <QWidget>

namespace borewright {

class SurveyForm : public QWidget {
    Q_OBJECT
public:
    explicit SurveyForm(const PageContext& context, QWidget* parent = nullptr);
    // A new survey, with the gauge last used; or an existing one's heading.
    void openNew();
    void openFor(const std::string& survey);

signals:
    void closed(); // kept or left

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void build();
    QWidget* buildFoot();
    void fill(const SurveyHeader& header, bool usualGear);
    void followFigures();
    void say(const QString& refusal);
    void showRefused();
    void offerLimits(const SurveyHeader& header);
    void proposeName();
    void keep();
    [[nodiscard]] SurveyHeader value() const;

    PageContext m_context;
    bool m_new = true;
    SurveyHeader m_header;
    QString m_proposedName;
    QLabel* m_title;
    QComboBox* m_kind;
    QLineEdit* m_name;
    QComboBox* m_plate;
    QComboBox* m_limits;
    QLineEdit* m_notes;
    ScopePicker* m_scope;
    GaugeForm* m_gauge;
    QLabel* m_prospect;
    QLabel* m_refusal;
    QPushButton* m_keep;
    QScrollArea* m_scroll;
};

} // namespace borewright
