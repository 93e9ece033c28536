// SPDX-License-Identifier: GPL-3.0-or-later
// Where each stone stops: his to change, common practice where he says nothing.
#pragma once

#include "app/document/document.h"
#include "app/fields/committed_field.h"

#include <QWidget>

#include <vector>

namespace borewright {

class StagesTab : public QWidget {
    Q_OBJECT
public:
    explicit StagesTab(Document& document, QWidget* parent = nullptr);
    void refresh(bool anew);

private:
    using Given = std::optional<TypedLength> HoneStages::*;
    Result<void> commit(const QString& text, const QString& what, Given given);

    struct Field {
        CommittedField* field;
        Given given;
        Length (*inForce)(const HoneStages&);
    };
    Document& m_document;
    std::vector<Field> m_fields;
};

} // namespace borewright
