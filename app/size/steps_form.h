// SPDX-License-Identifier: GPL-3.0-or-later
// Fills the sizes on offer in by steps, and puts one pair of deviations about all of them.
#pragma once

#include "app/document/document.h"
#include "app/fields/length_field.h"

#include <QLabel>
#include <QWidget>

namespace borewright {

class StepsForm : public QWidget {
    Q_OBJECT
public:
    explicit StepsForm(Document& document, QWidget* parent = nullptr);

private:
    QWidget* buildSteps();
    QWidget* buildLimits();
    void followUnits();
    void fillIn();
    void setLimits();
    // Reads a field that must not be empty.
    bool needs(LengthField& field);
    void say(const QString& sentence);

    Document& m_document;
    LengthField* m_from;
    LengthField* m_to;
    LengthField* m_step;
    LengthField* m_below;
    LengthField* m_above;
    QLabel* m_said;
};

} // namespace borewright
