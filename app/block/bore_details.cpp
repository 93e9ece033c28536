// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/block/bore_details.h"

#include "app/block/ports_form.h"
#include "app/fields/fold.h"
#include "app/fields/form_grid.h"
#include "app/fields/length_text.h"

#include <algorithm>
#include <utility>

namespace borewright {
namespace {

Result<void> insideBore(const std::optional<TypedLength>& length, const Bore& bore) {
    if (length && length->value() < Length())
        return refuse("A depth runs from the open end down, so it cannot be below zero.");
    if (length && bore.depth && length->value() > bore.depth->value())
        return refuse(QCoreApplication::translate("BoreDetails",
                                                  "That is below the bore, which is %1 "
                                                  "deep.")
                          .arg(shownLength(bore.depth))
                          .toStdString());
    return {};
}

Result<void> notBelowZero(const std::optional<TypedLength>& length, const Bore&) {
    if (length && length->value() < Length()) return refuse("This cannot be below zero.");
    return {};
}

} // namespace

QStringList surfaceNames() {
    return {QCoreApplication::translate("BoreDetails", "iron"),
            QCoreApplication::translate("BoreDetails", "iron sleeve in aluminium"),
            QCoreApplication::translate("BoreDetails", "plated"),
            QCoreApplication::translate("BoreDetails", "bare aluminium")};
}

BoreDetails::BoreDetails(BoreScope& scope, QWidget* parent)
    : QWidget(parent)
    , m_scope(scope)
    , m_which(new LabelledChoice(tr("These are"), {}, [this](int row) {
        m_scope.setBore(m_which->comboBox()->itemData(row).toInt());
    })) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(10);
    column->addWidget(makeMain());
    m_more = new Fold(tr("More about the bore"), makeMore(), this);
    m_map = new Fold(tr("Bore map"), makeMap(), this);
    column->addWidget(m_more);
    column->addWidget(m_map);
    connect(&scope, &BoreScope::changed, this, &BoreDetails::refresh);
    refresh();
}

QWidget* BoreDetails::makeMain() {
    auto* grid = new FormGrid(4);
    grid->add(m_which);
    addLength(
        *grid, tr("Standard size"), tr("3.5 in or 86 mm"),
        [](Bore & bore) -> auto& { return bore.standardSize; },
        [](const auto& size, const Bore&) { return mustBePositive(size, tr("A size")); });
    addLength(
        *grid, tr("Depth"), tr("open end to closed"),
        [](Bore & bore) -> auto& { return bore.depth; },
        [](const auto& depth, const Bore&) { return mustBePositive(depth, tr("A depth")); });
    m_openEnd = new CommittedField(tr("Open end"), [this](const QString& text) {
        return m_scope.change(tr("open end"),
                              [&](Bore& bore) { bore.openEnd = text.trimmed().toStdString(); });
    });
    grid->add(m_openEnd);
    return grid;
}

QWidget* BoreDetails::makeMore() {
    auto* grid = new FormGrid(4);
    m_combustion = new LabelledChoice(
        tr("Combustion at"), {tr("the open end"), tr("the closed end")}, [this](int row) {
            (void)m_scope.change(tr("combustion end"), [row](Bore& bore) {
                bore.combustionEnd = row == 0 ? End::open : End::closed;
            });
        });
    m_surface = new LabelledChoice(tr("Surface"), surfaceNames(), [this](int row) {
        (void)m_scope.change(tr("surface"),
                             [row](Bore& bore) { bore.surface = static_cast<Surface>(row); });
    });
    grid->add(m_combustion);
    grid->add(m_surface);
    addLength(
        *grid, tr("Room past the open end"), tr("for a stone"),
        [](Bore & bore) -> auto& { return bore.roomAtOpenEnd; }, notBelowZero);
    addLength(
        *grid, tr("Room past the closed end"), tr("0 = blind"),
        [](Bore & bore) -> auto& { return bore.roomAtClosedEnd; }, notBelowZero);
    return grid;
}

QWidget* BoreDetails::makeMap() {
    auto* box = new QWidget;
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(makePassingWord(
        tr("What lies where along the depth, from the open end down. With it the program proposes "
           "where to measure and knows where a port leaves no wall."),
        box));
    auto* grid = new FormGrid(4);
    addLength(
        *grid, tr("Top-ring line"), tr("at top dead centre"),
        [](Bore & bore) -> auto& { return bore.map.topRingLine; }, insideBore);
    addLength(
        *grid, tr("Lowest ring line"), tr("other end of travel"),
        [](Bore & bore) -> auto& { return bore.map.lowestRingLine; }, insideBore);
    addLength(
        *grid, tr("Gauge's foot"), tr("keeps off the bottom"),
        [](Bore & bore) -> auto& { return bore.map.gaugeFoot; }, insideBore);
    column->addWidget(grid);
    column->addWidget(new PortsForm(m_scope, box));
    return box;
}

void BoreDetails::addLength(FormGrid& grid, const QString& label, const QString& hint, Slot slot,
                            Check check) {
    auto* field = new CommittedField(label, [this, label, slot, check](const QString& text) {
        return commitLength(label.toLower(), text, slot, check);
    });
    m_lengths.push_back({field, std::move(slot), hint});
    grid.add(field);
}

Result<void> BoreDetails::commitLength(const QString& label, const QString& text, const Slot& slot,
                                       const Check& check) {
    const Bore* shown = m_scope.shown();
    if (shown == nullptr) return refuse("First say how many bores the block has.");
    Bore copy = *shown;
    const auto length = readField(text, slot(copy), m_scope.document().workbook().block);
    if (!length) return tl::unexpected(length.error());
    if (auto good = check(*length, *shown); !good) return good;
    return m_scope.change(label, [&](Bore& bore) { slot(bore) = *length; });
}

void BoreDetails::refresh() {
    const Block& block = m_scope.document().workbook().block;
    QStringList names{tr("all bores alike")};
    std::vector<int> numbers{0};
    for (const Bore& bore : block.bores)
        numbers.push_back(bore.number);
    std::ranges::sort(numbers);
    for (std::size_t i = 1; i < numbers.size(); ++i)
        names << tr("bore %1 alone").arg(numbers[i]);
    if (std::exchange(m_boreShown, m_scope.bore()) != m_scope.bore())
        for (CommittedField* field : findChildren<CommittedField*>())
            field->drop(); // it was typed for another bore
    const auto row = std::ranges::find(numbers, m_scope.bore()) - numbers.begin();
    m_which->setChoices(names, static_cast<int>(row));
    for (std::size_t i = 0; i < numbers.size(); ++i)
        m_which->comboBox()->setItemData(static_cast<int>(i), numbers[i]);

    const Bore* bore = m_scope.shown();
    setEnabled(bore != nullptr);
    if (bore == nullptr) return;
    for (const LengthField& length : m_lengths) {
        const auto valueOf = [&](Bore copy) { return length.slot(copy); };
        const bool agreed = m_scope.agree(valueOf);
        length.field->showData(agreed ? shownLength(valueOf(*bore)) : QString());
        length.field->setHint(agreed ? length.hint : tr("the bores differ"));
    }
    m_openEnd->setHint(tr("head face"));
    m_openEnd->showData(QString::fromStdString(bore->openEnd));
    m_combustion->showData(m_scope.agree([](const Bore& b) { return b.combustionEnd; })
                               ? (bore->combustionEnd == End::open ? 0 : 1)
                               : -1);
    m_surface->showData(m_scope.agree([](const Bore& b) { return b.surface; })
                            ? static_cast<int>(bore->surface)
                            : -1);
    refreshSummaries(*bore);
}

void BoreDetails::refreshSummaries(const Bore& bore) {
    QStringList more{surfaceNames().at(static_cast<int>(bore.surface))};
    if (bore.roomAtClosedEnd)
        more << (bore.roomAtClosedEnd->value() == Length()
                     ? tr("blind")
                     : tr("%1 past the closed end").arg(shownLength(bore.roomAtClosedEnd)));
    more << (bore.combustionEnd == End::open ? tr("combustion at the open end")
                                             : tr("combustion at the closed end"));
    m_more->setSummary(more.join(", "));
    QStringList map;
    if (bore.map.topRingLine) map << tr("top ring at %1").arg(shownLength(bore.map.topRingLine));
    if (!bore.map.ports.empty())
        map << (bore.map.ports.size() == 1 ? tr("one port band")
                                           : tr("%1 port bands").arg(bore.map.ports.size()));
    if (bore.map.gaugeFoot) map << tr("foot %1").arg(shownLength(bore.map.gaugeFoot));
    m_map->setSummary(map.isEmpty() ? tr("not entered; levels go by depth alone") : map.join(", "));
}

} // namespace borewright
