// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/fit/skirt_model.h"

#include "app/fit/cell_text.h"
#include "app/fit/piston_model.h"
#include "app/pictures/reading_words.h"

namespace borewright {

SkirtModel::SkirtModel(Document& document, QObject* parent)
    : RecordModel(document, parent) {
    refresh();
}

void SkirtModel::setPiston(int piston) {
    if (piston == m_piston) return;
    m_piston = piston;
    m_begun = {};
    forget();
    refresh();
}

bool SkirtModel::has(const FitRecord& fit) const {
    return m_piston >= 0 && static_cast<std::size_t>(m_piston) < fit.pistons.size();
}

int SkirtModel::countIn(const FitRecord& fit) const {
    return has(fit) ? static_cast<int>(fit.pistons[static_cast<std::size_t>(m_piston)].skirt.size())
                    : 0;
}

std::string SkirtModel::idOf(int row) const {
    return std::to_string(row);
}

QString SkirtModel::nameOf(int row) const {
    return tr("skirt height %1, %2")
        .arg(row + 1)
        .arg(PistonModel::called(record(), static_cast<std::size_t>(m_piston)));
}

RecordModel::Column SkirtModel::column(int column) const {
    const QString unit = QStringLiteral(", ") + unitSymbol(document().units().size);
    if (column == height) return {tr("Height from the skirt's end") + unit, tr("height"), {}};
    return {tr("Size") + unit, tr("size"), {}};
}

QString SkirtModel::textAt(int row, int column) const {
    const auto& skirt = record().pistons.at(static_cast<std::size_t>(m_piston)).skirt;
    const SkirtPoint& point = skirt.at(static_cast<std::size_t>(row));
    return cell_text::length(column == height ? point.height : point.size, document().units().size);
}

QString SkirtModel::textOfNew(int column) const {
    return cell_text::length(m_begun.at(static_cast<std::size_t>(column)), document().units().size);
}

bool SkirtModel::setData(const QModelIndex& index, const QVariant& value, int role) {
    if (role == Qt::EditRole && index.isValid() && index.row() == pieces()) {
        const auto here = static_cast<std::size_t>(index.column());
        std::optional<TypedLength> typed;
        if (cell_text::readInto(typed, value.toString().trimmed(), document().units().size)) {
            m_begun.at(here) = typed;
            if (!typed || !m_begun.at(1 - here)) {
                // Also takes away what stood refused here.
                RecordModel::setData(index, QString(), role);
                return true;
            }
        }
    }
    const bool done = RecordModel::setData(index, value, role);
    if (done) m_begun = {};
    return done;
}

Result<void> SkirtModel::put(FitRecord& fit, int row, int column, const QString& text) const {
    if (!has(fit)) return refuse(tr("choose a piston first").toStdString());
    auto& skirt = fit.pistons[static_cast<std::size_t>(m_piston)].skirt;
    if (text.isEmpty())
        return refuse(tr("a height and its size go together; take the row off").toStdString());
    std::optional<TypedLength> typed;
    if (auto done = cell_text::readInto(typed, text, document().units().size); !done) return done;
    SkirtPoint& point = skirt.at(static_cast<std::size_t>(row));
    (column == height ? point.height : point.size) = *typed;
    return {};
}

void SkirtModel::append(FitRecord& fit) const {
    if (!has(fit)) return;
    SkirtPoint point;
    if (m_begun[height]) point.height = *m_begun[height];
    if (m_begun[size]) point.size = *m_begun[size];
    fit.pistons[static_cast<std::size_t>(m_piston)].skirt.push_back(std::move(point));
}

void SkirtModel::erase(FitRecord& fit, int row) const {
    if (!has(fit)) return;
    auto& skirt = fit.pistons[static_cast<std::size_t>(m_piston)].skirt;
    skirt.erase(skirt.begin() + row);
}

} // namespace borewright
