// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/size/sizes_form.h"

#include "app/fields/committed_field.h"
#include "app/fields/fold.h"
#include "app/fields/length_text.h"
#include "app/size/entry_table.h"
#include "app/size/sizes_model.h"
#include "app/size/sizing_change.h"
#include "app/size/steps_form.h"

#include <QVBoxLayout>

namespace borewright {

SizesForm::SizesForm(Document& document, QWidget* parent)
    : QWidget(parent)
    , m_document(document)
    , m_model(new SizesModel(document, this))
    , m_greatest(new CommittedField(tr("Engine maker's greatest oversize"),
                                    [this](const QString& text) { return commitGreatest(text); })) {
    auto* table = new EntryTable(*m_model, tr("Sizes on offer"), tr("size"), this);
    table->view()->setToolTip(tr("Type an oversize and the finished sizes allowed; Enter or Tab "
                                 "goes on along the row, Delete empties a limit."));
    auto* steps = new Fold(tr("Fill in by steps, limits for all…"), new StepsForm(document), this);
    steps->setOpen(document.workbook().sizing.sizes.empty());
    m_greatest->setHint(tr("not given"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(10);
    column->addWidget(table);
    column->addWidget(steps);
    column->addWidget(m_greatest);
    connect(&document, &Document::changed, this, [this](Change change) {
        if (change == Change::everything) m_model->forget();
        refresh(change == Change::everything);
    });
    refresh(true);
}

Result<void> SizesForm::commitGreatest(const QString& text) {
    const auto read =
        readField(text, m_document.workbook().sizing.greatest, m_document.workbook().block);
    if (!read) return tl::unexpected(read.error());
    if (const auto good = mustBeOversize(*read, m_document.workbook().block); !good) return good;
    return changeSizing(m_document, tr("greatest oversize"),
                        [&](SizingPlan& plan) { plan.greatest = *read; });
}

void SizesForm::refresh(bool anew) {
    m_model->refresh();
    showChanged(*m_greatest, m_greatestShown, shownLength(m_document.workbook().sizing.greatest),
                anew);
}

} // namespace borewright
