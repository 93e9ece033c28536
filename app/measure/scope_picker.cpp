// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/measure/scope_picker.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QVBoxLayout>

#include <algorithm>
#include <set>

namespace borewright {

ScopePicker::ScopePicker(QWidget* parent)
    : QWidget(parent)
    , m_whole(new QRadioButton(tr("the &whole block"), this))
    , m_some(new QRadioButton(tr("onl&y these stations"), this))
    , m_choice(new QWidget(this))
    , m_boreRow(new QWidget(m_choice))
    , m_stations(new QTableWidget(m_choice)) {
    m_whole->setAccessibleName(tr("Measure the whole block"));
    m_some->setAccessibleName(tr("Measure only some stations"));
    m_stations->setAccessibleName(tr("Stations to measure, depth by axis"));
    m_stations->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_stations->setMaximumHeight(220);
    m_stations->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    auto* outer = new QVBoxLayout(this);
    outer->setContentsMargins(0, 0, 0, 0);
    auto* radios = new QHBoxLayout;
    radios->addWidget(m_whole);
    radios->addWidget(m_some);
    radios->addStretch();
    outer->addLayout(radios);
    auto* inner = new QVBoxLayout(m_choice);
    inner->setContentsMargins(0, 0, 0, 0);
    inner->addWidget(m_boreRow);
    inner->addWidget(m_stations);
    outer->addWidget(m_choice);
    (new QHBoxLayout(m_boreRow))->setContentsMargins(0, 0, 0, 0);
    connect(m_some, &QRadioButton::toggled, m_choice, &QWidget::setVisible);
}

void ScopePicker::setValue(const Workbook& workbook,
                           const std::optional<std::vector<Station>>& asked,
                           const DisplayUnits& units) {
    m_workbook = workbook;
    (asked ? m_some : m_whole)->setChecked(true);
    m_choice->setVisible(asked.has_value());
    fillBores(workbook, asked.value_or(std::vector<Station>{}));
    fillStations(workbook, asked.value_or(std::vector<Station>{}), units);
}

void ScopePicker::fillBores(const Workbook& workbook, const std::vector<Station>& asked) {
    qDeleteAll(m_bores);
    m_bores.clear();
    std::set<int> numbers;
    for (const Bore& bore : workbook.block.bores)
        numbers.insert(bore.number);
    auto* row = static_cast<QHBoxLayout*>(m_boreRow->layout());
    while (QLayoutItem* item = row->takeAt(0))
        delete item;
    for (const int number : numbers) {
        auto* box = new QCheckBox(tr("bore %1").arg(number), m_boreRow);
        box->setProperty("bore", number);
        box->setChecked(std::ranges::any_of(
            asked, [number](const Station& station) { return station.bore == number; }));
        m_bores.push_back(box);
        row->addWidget(box);
    }
    row->addStretch();
}

void ScopePicker::fillStations(const Workbook& workbook, const std::vector<Station>& asked,
                               const DisplayUnits& units) {
    std::set<Length> depths;
    for (const Bore& bore : workbook.block.bores)
        for (const Level& level : bore.levels)
            depths.insert(level.depth.value());
    for (const Station& station : asked)
        depths.insert(station.depth);
    m_depths.assign(depths.begin(), depths.end());
    m_axes.clear();
    QStringList axisNames;
    for (const Axis& axis : workbook.block.axes) {
        m_axes.push_back(axis.id);
        axisNames << QString::fromStdString(axis.id);
    }
    m_stations->setRowCount(static_cast<int>(m_depths.size()));
    m_stations->setColumnCount(static_cast<int>(m_axes.size()));
    m_stations->setHorizontalHeaderLabels(axisNames);
    QStringList depthNames;
    for (int row = 0; row < m_stations->rowCount(); ++row) {
        const Length depth = m_depths[static_cast<std::size_t>(row)];
        depthNames << QString::fromStdString(depthWithUnit(depth, units));
        for (int column = 0; column < m_stations->columnCount(); ++column) {
            const std::string& axis = m_axes[static_cast<std::size_t>(column)];
            const bool ticked = std::ranges::any_of(asked, [&](const Station& station) {
                return station.depth == depth && station.axis == axis;
            });
            auto* item = new QTableWidgetItem;
            item->setFlags(Qt::ItemIsUserCheckable | Qt::ItemIsEnabled | Qt::ItemIsSelectable);
            item->setCheckState(ticked ? Qt::Checked : Qt::Unchecked);
            m_stations->setItem(row, column, item);
        }
    }
    m_stations->setVerticalHeaderLabels(depthNames);
}

std::optional<std::vector<Station>> ScopePicker::value() const {
    if (m_whole->isChecked()) return std::nullopt;
    std::vector<Station> asked;
    for (const QCheckBox* box : m_bores) {
        if (!box->isChecked()) continue;
        const int number = box->property("bore").toInt();
        const Bore* bore = findBore(m_workbook.block, number);
        for (int row = 0; row < m_stations->rowCount(); ++row)
            for (int column = 0; column < m_stations->columnCount(); ++column) {
                const Length depth = m_depths[static_cast<std::size_t>(row)];
                const std::string& axis = m_axes[static_cast<std::size_t>(column)];
                if (m_stations->item(row, column)->checkState() == Qt::Checked &&
                    (bore == nullptr || hasWall(*bore, depth, axis)))
                    asked.push_back({number, depth, axis});
            }
    }
    return asked;
}

} // namespace borewright
