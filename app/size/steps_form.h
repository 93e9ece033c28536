// SPDX-License-Identifier: GPL-3.0-or-later
// Fills the sizes on offer in by steps, and puts one pair of deviations about all of them. Enter
// goes on to the next box and, from the last, does it; what is refused stands beneath in one line.
#pragma once

#include "app/document/document.h"
#include "app/size/step_box.h"

#include <QLabel>
#include <QWidget>

#include <functional>
#include <optional>
#include <utility>
#include <vector>

namespace borewright {

class StepsForm : public QWidget {
    Q_OBJECT
public:
    explicit StepsForm(Document& document, QWidget* parent = nullptr);

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void showEvent(QShowEvent* event) override;

private:
    // Boxes beside each other and the button that they are for.
    QWidget* buildRow(const std::vector<std::pair<QString, StepBox*>>& boxes, const QString& verb,
                      const std::function<void()>& act);
    void follow(Change change);
    void followUnits();
    void fillIn();
    void setLimits();
    void left(StepBox& box);
    // Why what stands in a box cannot be; empty where it can.
    [[nodiscard]] QString whyNot(const StepBox& box) const;
    // The box's length; nothing, said with the cursor in it, where there is none or it cannot be.
    std::optional<TypedLength> need(StepBox& box);
    void refuseAt(StepBox& box, const QString& why);
    void goBackTo(StepBox& box, const QString& why); // the same, with the cursor in it
    void giveUpRefused();
    void say(const QString& sentence);

    Document& m_document;
    StepBox* m_from;
    StepBox* m_to;
    StepBox* m_step;
    StepBox* m_below;
    StepBox* m_above;
    QLabel* m_said;
};

} // namespace borewright
