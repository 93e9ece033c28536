// SPDX-License-Identifier: GPL-3.0-or-later
// How the cut is made: method, centring, what comes off below the deepest mark, what the bar leaves
// for the hone, and whether each bore may have a size of its own.
#pragma once

#include "app/document/document.h"

#include <QCheckBox>
#include <QWidget>

#include <functional>
#include <optional>

namespace borewright {

class CommittedField;
class LabelledChoice;

class CutForm : public QWidget {
    Q_OBJECT
public:
    explicit CutForm(Document& document, QWidget* parent = nullptr);

private:
    using Slot = std::function<std::optional<TypedLength>&(SizingPlan&)>;
    Result<void> commitAmount(const QString& name, const QString& text, const Slot& slot);
    void refresh(bool anew);

    Document& m_document;
    LabelledChoice* m_method;
    LabelledChoice* m_centring;
    CommittedField* m_allowance;
    CommittedField* m_stock;
    QString m_allowanceShown;
    QString m_stockShown;
    QCheckBox* m_own;
};

} // namespace borewright
