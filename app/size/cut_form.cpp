// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/size/cut_form.h"

#include "app/fields/committed_field.h"
#include "app/fields/labelled_choice.h"
#include "app/fields/length_text.h"
#include "app/fields/form_grid.h"
#include "app/pictures/reading_words.h"
#include "app/size/sizing_change.h"
#include "core/sizing/clean_up.h"

#include <QSignalBlocker>
#include <QVBoxLayout>

namespace borewright {

CutForm::CutForm(Document& document, QWidget* parent)
    : QWidget(parent)
    , m_document(document)
    , m_own(new QCheckBox(tr("Each bore may ha&ve its own size"), this)) {
    m_method = new LabelledChoice(
        tr("Method"), {tr("hone only"), tr("bore, then hone")}, [this](int method) {
            (void)changeSizing(m_document, tr("method"), [&](SizingPlan& plan) {
                plan.method = static_cast<CutMethod>(method);
            });
        });
    m_centring = new LabelledChoice(tr("Cut centred on"), {}, [this](int row) {
        (void)changeSizing(m_document, tr("centring"), [&](SizingPlan& plan) {
            plan.centring.reset();
            if (row > 0) plan.centring = static_cast<Centring>(row - 1);
        });
    });
    const auto amount = [this](const QString& label, const QString& name, Slot slot) {
        return new CommittedField(label, [this, name, slot](const QString& text) {
            return commitAmount(name, text, slot);
        });
    };
    m_allowance = amount(
        tr("Off below the deepest mark"), tr("finish allowance"),
        [](SizingPlan & plan) -> auto& { return plan.finishAllowance; });
    m_stock = amount(
        tr("Left for the hone"), tr("stock for the hone"),
        [](SizingPlan & plan) -> auto& { return plan.honeStock; });
    m_centring->setToolTip(tr("Usual: a hone follows the worn bore, a boring bar is set on the "
                              "original axis."));
    auto* grid = new FormGrid(2, this);
    grid->add(m_method);
    grid->add(m_centring);
    grid->add(m_allowance);
    grid->add(m_stock);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(8);
    column->addWidget(grid);
    column->addWidget(m_own);
    connect(m_own, &QCheckBox::clicked, this, [this](bool own) {
        (void)changeSizing(m_document, tr("sizes of each bore"),
                           [own](SizingPlan& plan) { plan.ownSizes = own; });
    });
    connect(&document, &Document::changed, this,
            [this](Change change) { refresh(change == Change::everything); });
    refresh(true);
}

Result<void> CutForm::commitAmount(const QString& name, const QString& text, const Slot& slot) {
    SizingPlan plan = m_document.workbook().sizing;
    const auto read = readField(text, slot(plan), m_document.workbook().block);
    if (!read) return tl::unexpected(read.error());
    if (const auto small = mustBeSmall(*read); !small) return small;
    return changeSizing(m_document, name, [&](SizingPlan& now) { slot(now) = *read; });
}

void CutForm::refresh(bool anew) {
    const SizingPlan& plan = m_document.workbook().sizing;
    const DisplayUnits& units = m_document.units();
    const bool inches = isInchFamily(units.size);
    m_method->showData(static_cast<int>(plan.method));
    const QString usually =
        plan.method == CutMethod::honeOnly ? tr("worn bore (usual)") : tr("original axis (usual)");
    m_centring->setChoices({usually, tr("worn bore"), tr("original axis")},
                           plan.centring ? static_cast<int>(*plan.centring) + 1 : 0);
    showChanged(*m_allowance, m_allowanceShown, shownLength(plan.finishAllowance), anew);
    showChanged(*m_stock, m_stockShown, shownLength(plan.honeStock), anew);
    SizingPlan usual;
    m_allowance->setHint(
        tr("usual: %1").arg(qs(smallWithUnit(finishAllowanceOf(usual, inches), units))));
    m_stock->setHint(tr("usual: %1").arg(qs(smallWithUnit(honeStockOf(usual, inches), units))));
    m_stock->setEnabled(plan.method == CutMethod::boreAndHone);
    const QSignalBlocker quiet(m_own);
    m_own->setChecked(plan.ownSizes);
}

} // namespace borewright
