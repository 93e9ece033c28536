// SPDX-License-Identifier: GPL-3.0-or-later
// What few need of one piston: its material, its skirt at other heights, notes.
#pragma once

#include "app/fields/number_field.h"
#include "app/fit/skirt_model.h"

#include <QLineEdit>
#include <QWidget>

#include <functional>

namespace borewright {

class RecordForm;

class SkirtForm : public QWidget {
    Q_OBJECT
public:
    explicit SkirtForm(Document& document, QWidget* parent = nullptr);
    // Place of the piston in the record; beyond the last or −1 = none.
    void setPiston(int piston);
    void refresh(bool anew = false);

private:
    void keep(const QString& what, const std::function<void(Piston&)>& make);
    [[nodiscard]] const Piston* shown() const;

    Document& m_document;
    int m_piston = -1;
    SkirtModel* m_model;
    NumberField* m_expansion;
    QLineEdit* m_notes;
    RecordForm* m_skirt;
};

} // namespace borewright
