// SPDX-License-Identifier: GPL-3.0-or-later
// How sure a verdict has to be: the rule of a set of limits, with a sentence that explains it.
#pragma once

#include "app/fields/committed_field.h"
#include "app/fields/labelled_choice.h"
#include "core/workbook/limits.h"

#include <QLabel>
#include <QWidget>

#include <functional>

namespace borewright {

class DecisionForm : public QWidget {
    Q_OBJECT
public:
    // What becomes of a choice: kept, or refused in words.
    using Keep = std::function<Result<void>(const DecisionRule&)>;
    explicit DecisionForm(Keep keep, QWidget* parent = nullptr);

    void showData(const DecisionRule& rule);

private:
    void choose(DecisionRule::Kind kind);
    Result<void> commitOwn(const QString& text);

    Keep m_keep;
    DecisionRule m_shown;
    LabelledChoice* m_kind;
    CommittedField* m_own;
    QLabel* m_words;
};

} // namespace borewright
