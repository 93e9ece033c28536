// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/size/wear_form.h"

#include "app/fields/committed_field.h"
#include "app/fields/form_grid.h"
#include "app/fields/labelled_choice.h"
#include "app/fields/length_text.h"
#include "app/size/damages_model.h"
#include "app/size/entry_table.h"
#include "app/size/sizing_change.h"

#include <QHeaderView>
#include <QVBoxLayout>

#include <algorithm>

namespace borewright {
namespace {

std::vector<int> numbersOf(const Block& block) {
    std::vector<int> numbers;
    for (const Bore& bore : block.bores)
        numbers.push_back(bore.number);
    std::ranges::sort(numbers);
    return numbers;
}

} // namespace

WearForm::WearForm(const PageContext& context, QWidget* parent)
    : QWidget(parent)
    , m_document(context.document)
    , m_selection(context.selection)
    , m_model(new DamagesModel(context.document, this)) {
    m_bore = new LabelledChoice(tr("Bore"), {}, [this](int row) {
        m_selection.setBore(
            numbersOf(m_document.workbook().block).at(static_cast<std::size_t>(row)));
    });
    m_side = new LabelledChoice(
        tr("Worn on"), {tr("not said"), tr("one side"), tr("both sides alike")}, [this](int side) {
            (void)change(tr("worn side"),
                         [&](BoreWear& wear) { wear.side = static_cast<WearSide>(side); });
        });
    m_madeTo = new CommittedField(tr("Made to"),
                                  [this](const QString& text) { return commitMadeTo(text); });
    auto* grid = new FormGrid(3, this);
    grid->add(m_bore);
    grid->add(m_side);
    grid->add(m_madeTo);
    auto* table = new EntryTable(*m_model, tr("Scores, pits and ring marks"), tr("damage"), this);
    table->view()->setToolTip(tr(
        "What the gauge cannot see: how deep it goes into the wall, "
        "beside the wall around it. Enter or Tab goes on along the row, the space bar turns axis "
        "and “felt”."));
    for (const int narrow :
         {DamagesModel::depth, DamagesModel::axis, DamagesModel::deep, DamagesModel::felt})
        table->view()->horizontalHeader()->setSectionResizeMode(narrow,
                                                                QHeaderView::ResizeToContents);
    m_madeTo->setToolTip(tr("What the bore was last bored to; empty = its standard size"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(8);
    column->addWidget(grid);
    column->addWidget(table);
    connect(&m_document, &Document::changed, this, [this](Change change) {
        if (change == Change::everything) m_model->forget();
        refresh(change == Change::everything);
    });
    connect(&m_selection, &Selection::changed, this, [this] {
        if (m_selection.bore() != m_boreShown) refresh(true);
    });
    refresh(true);
}

template<class Make>
Result<void> WearForm::change(const QString& what, Make make) {
    const int bore = m_selection.bore();
    if (findBore(m_document.workbook().block, bore) == nullptr)
        return refuse("describe the block first, on the Block page");
    return changeSizing(m_document, tr("%1, bore %2").arg(what).arg(bore), [&](SizingPlan& plan) {
        make(plan.bores[bore]);
        if (plan.bores[bore] == BoreWear()) plan.bores.erase(bore);
    });
}

Result<void> WearForm::commitMadeTo(const QString& text) {
    const Block& block = m_document.workbook().block;
    const auto wear = m_document.workbook().sizing.bores.find(m_selection.bore());
    const auto before =
        wear == m_document.workbook().sizing.bores.end() ? std::nullopt : wear->second.madeTo;
    const auto read = readField(text, before, block);
    if (!read) return tl::unexpected(read.error());
    if (const auto good = mustBePositive(*read, tr("A size")); !good) return good;
    const Bore* bore = findBore(block, m_selection.bore());
    if (bore != nullptr)
        if (const auto good = mustBeNear(*read, bore->standardSize); !good) return good;
    return change(tr("size made to"), [&](BoreWear& now) { now.madeTo = *read; });
}

void WearForm::refresh(bool anew) {
    const Workbook& workbook = m_document.workbook();
    const auto numbers = numbersOf(workbook.block);
    QStringList names;
    int row = -1;
    for (const int number : numbers) {
        if (number == m_selection.bore()) row = static_cast<int>(names.size());
        const auto wear = workbook.sizing.bores.find(number);
        const bool damaged = wear != workbook.sizing.bores.end() && !wear->second.damages.empty();
        names << (damaged ? tr("%1, damaged") : QStringLiteral("%1")).arg(number);
    }
    m_bore->setChoices(names, row);
    const auto wear = workbook.sizing.bores.find(m_selection.bore());
    const BoreWear shown = wear == workbook.sizing.bores.end() ? BoreWear() : wear->second;
    m_side->showData(static_cast<int>(shown.side));
    showChanged(*m_madeTo, m_madeToShown, shownLength(shown.madeTo),
                anew || m_boreShown != m_selection.bore());
    m_boreShown = m_selection.bore();
    const Bore* bore = findBore(workbook.block, m_selection.bore());
    m_madeTo->setHint(bore != nullptr && bore->standardSize ? shownLength(bore->standardSize)
                                                            : tr("standard size"));
    m_model->setBore(m_selection.bore());
    m_model->refresh();
}

} // namespace borewright
