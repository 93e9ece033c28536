// SPDX-License-Identifier: GPL-3.0-or-later
// One stone of the record, field by field; a field left is one undo step.
#pragma once

#include "app/document/document.h"
#include "app/fields/committed_field.h"
#include "app/fields/labelled_choice.h"

namespace borewright {

class StoneForm : public QWidget {
    Q_OBJECT
public:
    explicit StoneForm(Document& document, QWidget* parent = nullptr);
    // Empty = none. `anew`: another one, whatever was being typed.
    void show(const std::string& stone, bool anew);
    using QWidget::show;
    void focusName();

private:
    template<class Make>
    Result<void> change(const QString& what, Make make);
    CommittedField* addLength(const QString& label, const QString& hint,
                              std::optional<TypedLength> (*get)(const Stone&),
                              Result<void> (*set)(Stone&, const std::optional<TypedLength>&));
    void sayWhatIsWrong();
    Result<void> commitText(const QString& text, const QString& what, std::string Stone::*field);

    struct LengthOf {
        CommittedField* field;
        std::optional<TypedLength> (*get)(const Stone&);
    };
    Document& m_document;
    std::string m_stone;
    CommittedField* m_name;
    CommittedField* m_grit;
    LabelledChoice* m_kind;
    std::vector<LengthOf> m_lengths;
    QLabel* m_wrong; // over the whole width, since the fields are narrow
};

} // namespace borewright
