// SPDX-License-Identifier: GPL-3.0-or-later
// What a model makes of the clearances in a warm engine. Two guessed temperatures, not kept.
#pragma once

#include "app/document/document.h"
#include "app/fields/number_field.h"

#include <QWidget>

namespace borewright {

class TextTable;

class HotForm : public QWidget {
    Q_OBJECT
public:
    explicit HotForm(const Document& document, QWidget* parent = nullptr);
    void refresh();

private:
    const Document& m_document;
    NumberField* m_skirt;
    NumberField* m_bore;
    TextTable* m_table;
};

} // namespace borewright
