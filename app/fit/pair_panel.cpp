// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/fit/pair_panel.h"

#include "app/fields/fold.h"
#include "app/fit/fit_words.h"
#include "app/fit/match_model.h"
#include "app/fit/text_table.h"
#include "app/pictures/reading_words.h"

#include <QVBoxLayout>

#include <algorithm>
#include <map>

namespace borewright {

PairPanel::PairPanel(const Document& document, const MatchModel& model, QWidget* parent)
    : QWidget(parent)
    , m_document(document)
    , m_model(model)
    , m_title(new QLabel(this))
    , m_cost(new QLabel(this))
    , m_words(makePassingWord({}, this))
    , m_depths(new TextTable(tr("Clearance by depth of the chosen pair"), this)) {
    QFont bold = font();
    bold.setBold(true);
    m_title->setFont(bold);
    m_title->setAccessibleName(tr("The chosen pair"));
    m_cost->setAccessibleName(tr("What this pair would cost"));
    m_words->setAccessibleName(tr("Clearance of the chosen pair"));
    for (QLabel* label : {m_title, m_cost, m_words}) {
        label->setWordWrap(true);
        label->setTextInteractionFlags(Qt::TextSelectableByMouse);
    }
    m_depths->setMostRows(12);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(6);
    for (QWidget* part : std::initializer_list<QWidget*>{m_title, m_cost, m_words, m_depths})
        column->addWidget(part);
    column->addStretch(1);
}

void PairPanel::show(const QModelIndex& index) {
    const QStringList words = fit_words::pair(m_model, m_document, index);
    m_title->setText(words.value(0).chopped(words.isEmpty() ? 0 : 1));
    m_words->setText(words.value(1));
    m_cost->setText(words.value(2));
    m_cost->setVisible(!words.value(2).isEmpty());
    const MatchCell* cell = m_model.cellAt(index);
    showDepths(cell != nullptr && cell->clearance ? &*cell->clearance : nullptr);
    setVisible(cell != nullptr);
}

void PairPanel::showDepths(const Clearance* clearance) {
    const DisplayUnits& units = m_document.units();
    TextModel::Content content;
    m_depths->setVisible(clearance != nullptr);
    if (clearance == nullptr) return;
    std::vector<std::string> axes;
    std::map<Length, std::map<std::string, Length>> byDepth;
    for (const ClearanceAt& at : clearance->at) {
        if (std::ranges::find(axes, at.axis) == axes.end()) axes.push_back(at.axis);
        byDepth[at.depth][at.axis] = at.value;
    }
    std::ranges::sort(axes);
    content.heads << tr("Depth, %1").arg(unitSymbol(units.size));
    for (const std::string& axis : axes)
        content.heads << tr("%1, %2").arg(qs(axis), unitSymbol(units.small));
    for (const auto& [depth, values] : byDepth) {
        std::vector<TextModel::Cell> row{{qs(formatDepth(depth, units))}};
        for (const std::string& axis : axes) {
            const auto value = values.find(axis);
            TextModel::Cell cell;
            if (value != values.end()) cell.text = qs(formatSmall(value->second, units));
            cell.bold = depth == clearance->depth && axis == clearance->axis;
            row.push_back(std::move(cell));
        }
        content.rows.push_back(std::move(row));
    }
    m_depths->show(std::move(content));
}

} // namespace borewright
