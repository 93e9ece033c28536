// SPDX-License-Identifier: GPL-3.0-or-later
// What the engine maker allows a clearance or a gap: least, most, the aim between them, and how
// sure a verdict has to be. A field left is one undo step.
#pragma once

#include "app/document/document.h"
#include "app/fields/length_field.h"

#include <QLabel>
#include <QWidget>

#include <functional>
#include <vector>

namespace borewright {

class DecisionForm;
class FormGrid;

class FitLimitsForm : public QWidget {
    Q_OBJECT
public:
    using Part = FitLimits FitRecord::*;
    // `name`: "clearance", for undo steps and screen readers.
    FitLimitsForm(Document& document, Part part, const QString& name, QWidget* parent = nullptr);
    // Shows what the record holds now. `anew`: of another workbook, whatever was being typed.
    void refresh(bool anew = false);
    // Further fields of the same form, in its grid.
    [[nodiscard]] FormGrid* grid() const { return m_grid; }

private:
    using Given = std::optional<TypedLength> FitLimits::*;

    LengthField* addField(const QString& label, Given given);
    [[nodiscard]] QString whyNot(Given given, const std::optional<TypedLength>& value) const;
    Result<void> change(const QString& what, const std::function<void(FitLimits&)>& make);

    struct Field {
        LengthField* field;
        Given given;
    };
    Document& m_document;
    Part m_part;
    QString m_name;
    QLabel* m_unit;
    FormGrid* m_grid;
    std::vector<Field> m_fields;
    DecisionForm* m_rule;
};

} // namespace borewright
