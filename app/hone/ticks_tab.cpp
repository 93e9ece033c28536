// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/hone/ticks_tab.h"

#include "app/fields/fold.h"
#include "app/hone/hone_verbs.h"

#include <QLabel>
#include <QVBoxLayout>

#include <algorithm>

namespace borewright {
namespace {

// Side by side, as many as a short page holds.
constexpr int boresAcross = 6;

} // namespace

TicksTab::TicksTab(Document& document, QWidget* parent)
    : QWidget(parent)
    , m_document(document) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 8, 0, 8);
    column->setSpacing(8);
    column->addWidget(makePassingWord(
        tr("Port edges chamfered before the last thou, every bore washed with hot water and soap "
           "until a white cloth stays white, then oiled. The sheet warns until both are ticked."),
        this));
    column->addStretch(1);
    refresh();
}

QCheckBox* TicksTab::addBox(int bore, const QString& what, bool BoreTicks::*tick) {
    auto* box = new QCheckBox(what, m_grid);
    box->setAccessibleName(tr("Bore %1, %2").arg(bore).arg(what));
    m_boxes.push_back({box, bore, tick});
    connect(box, &QCheckBox::clicked, this, [this, bore, what, tick](bool on) {
        (void)changeHone(m_document, tr("bore %1, %2").arg(bore).arg(what),
                         [&](HoneRecord& record) { record.ticks[bore].*tick = on; });
        refresh();
    });
    return box;
}

void TicksTab::build(const std::vector<int>& bores) {
    m_bores = bores;
    m_boxes.clear();
    delete m_grid;
    m_grid = new QWidget(this);
    auto* grid = new QGridLayout(m_grid);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(20);
    constexpr int rowsOfOne = 3;
    for (std::size_t i = 0; i < bores.size(); ++i) {
        const int row = static_cast<int>(i) / boresAcross * rowsOfOne;
        const int column = static_cast<int>(i) % boresAcross;
        grid->addWidget(new QLabel(tr("Bore %1").arg(bores[i]), m_grid), row, column);
        grid->addWidget(addBox(bores[i], tr("ports chamfered"), &BoreTicks::portsChamfered),
                        row + 1, column);
        grid->addWidget(addBox(bores[i], tr("washed"), &BoreTicks::washed), row + 2, column);
    }
    grid->setColumnStretch(boresAcross, 1);
    static_cast<QVBoxLayout*>(layout())->insertWidget(1, m_grid);
}

void TicksTab::refresh() {
    std::vector<int> bores;
    for (const Bore& bore : m_document.workbook().block.bores)
        bores.push_back(bore.number);
    std::ranges::sort(bores);
    if (bores != m_bores || m_grid == nullptr) build(bores);
    const auto& ticks = m_document.workbook().hone.ticks;
    for (const Box& box : m_boxes) {
        const auto known = ticks.find(box.bore);
        box.box->setChecked(known != ticks.end() && known->second.*box.tick);
    }
}

} // namespace borewright
