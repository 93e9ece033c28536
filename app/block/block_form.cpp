// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/block/block_form.h"

#include "app/block/block_verbs.h"
#include "app/fields/form_grid.h"

namespace borewright {

QStringList arrangementNames() {
    return {QCoreApplication::translate("BlockForm", "in line"),
            QCoreApplication::translate("BlockForm", "V, two banks"),
            QCoreApplication::translate("BlockForm", "opposed")};
}

BlockForm::BlockForm(Document& document, QWidget* parent)
    : QWidget(parent)
    , m_document(document)
    , m_arrangement(new LabelledChoice(
          tr("Arrangement"), arrangementNames(),
          [this](int row) {
              Block block = m_document.workbook().block;
              block.arrangement = static_cast<Arrangement>(row);
              (void)m_document.edit(SetBlock{std::move(block)}, tr("arrangement"));
          }))
    , m_count(new CommittedField(tr("Number of bores"),
                                 [this](const QString& text) { return commitCount(text); })) {
    auto* grid = new FormGrid(4, this);
    grid->add(m_count);
    grid->add(m_arrangement);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(grid);
    connect(&document, &Document::changed, this, &BlockForm::refresh);
    refresh();
}

Result<void> BlockForm::commitCount(const QString& text) {
    const auto count = readBoreCount(text);
    if (!count) return tl::unexpected(count.error());
    const auto block = withBoreCount(m_document.workbook(), *count);
    if (!block) return tl::unexpected(block.error());
    return m_document.edit(SetBlock{*block}, tr("number of bores"));
}

void BlockForm::refresh() {
    const Block& block = m_document.workbook().block;
    m_arrangement->showData(static_cast<int>(block.arrangement));
    m_count->showData(QString::number(block.bores.size()));
}

} // namespace borewright
