// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/fit/hot_form.h"

#include "app/fields/fold.h"
#include "app/fields/form_grid.h"
#include "app/fields/labelled.h"
#include "app/fit/fit_words.h"
#include "app/fit/text_table.h"
#include "app/pictures/reading_words.h"
#include "core/results/fit_figures.h"

#include <QVBoxLayout>

namespace borewright {
namespace {

NumberField* degrees(const QString& name) {
    auto* field = new NumberField(
        name, {-50, 400, false, HotForm::tr("degrees over 20 °C lie between −50 and 400")});
    field->setPlaceholder(HotForm::tr("°C"));
    return field;
}

} // namespace

HotForm::HotForm(const Document& document, QWidget* parent)
    : QWidget(parent)
    , m_document(document)
    , m_skirt(degrees(tr("Skirt warmer than 20 °C by")))
    , m_bore(degrees(tr("Bore warmer than 20 °C by")))
    , m_table(new TextTable(tr("Clearance at working temperature, by the model"), this)) {
    auto* grid = new FormGrid(2, this);
    grid->add(labelled(tr("Skirt warmer than 20 °C by, °C"), m_skirt));
    grid->add(labelled(tr("Bore warmer than 20 °C by, °C"), m_bore));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(8);
    column->addWidget(makePassingWord(
        tr("A model, not a measurement: nobody knows how warm a skirt runs, and a wrong guess can "
           "turn the sign of the answer. Never choose a clearance by it; take the engine "
           "maker's. Nothing of this is kept."),
        this));
    column->addWidget(grid);
    column->addWidget(m_table);
    for (NumberField* field : {m_skirt, m_bore})
        connect(field, &NumberField::edited, this, &HotForm::refresh);
    refresh();
}

void HotForm::refresh() {
    const Workbook& workbook = m_document.workbook();
    const DisplayUnits& units = m_document.units();
    TextModel::Content content;
    content.heads = {tr("Bore"), tr("Piston"), tr("At 20 °C, %1").arg(unitSymbol(units.small)),
                     tr("Warm, %1").arg(unitSymbol(units.small))};
    if (m_skirt->value() && m_bore->value())
        for (const HotFit& one :
             hotFits(workbook, m_document.results().fit, {*m_skirt->value(), *m_bore->value()}))
            content.rows.push_back({{QString::number(one.bore)},
                                    {fit_words::shortPiston(workbook.fit, one.piston)},
                                    {qs(formatSmall(one.cold, units))},
                                    {qs(formatSmall(one.hot, units))}});
    const bool any = !content.rows.empty();
    m_table->show(std::move(content));
    m_table->setVisible(any);
}

} // namespace borewright
