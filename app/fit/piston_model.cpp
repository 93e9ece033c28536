// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/fit/piston_model.h"

#include "app/fit/cell_text.h"
#include "app/fit/fit_verbs.h"
#include "app/pictures/reading_words.h"

namespace borewright {
namespace {

QString withUnit(const QString& head, Unit unit) {
    return head + QStringLiteral(", ") + unitSymbol(unit);
}

} // namespace

PistonModel::PistonModel(Document& document, QObject* parent)
    : RecordModel(document, parent) {
    refresh();
}

QString PistonModel::called(const FitRecord& fit, std::size_t piston) {
    const std::string& label = fit.pistons.at(piston).label;
    return label.empty() ? tr("piston in row %1").arg(piston + 1) : tr("piston %1").arg(qs(label));
}

int PistonModel::countIn(const FitRecord& fit) const {
    return static_cast<int>(fit.pistons.size());
}

std::string PistonModel::idOf(int row) const {
    return record().pistons.at(static_cast<std::size_t>(row)).id;
}

QString PistonModel::nameOf(int row) const {
    return called(record(), static_cast<std::size_t>(row));
}

RecordModel::Column PistonModel::column(int column) const {
    const DisplayUnits& units = document().units();
    switch (column) {
    case label:
        return {tr("Piston"), tr("label"), tr("no label"), false};
    case size:
        return {withUnit(tr("Size"), units.size), tr("size"), tr("not given")};
    case height:
        return {withUnit(tr("Measured at height"), units.size), tr("measuring height"),
                tr("not given")};
    case instrument:
        return {tr("Measured with"), tr("instrument"), tr("not said"), false};
    case temperature:
        return {tr("At"), tr("temperature"), tr("not given")};
    case doubt:
        return {withUnit(tr("±"), units.small), tr("doubt ±"), tr("not known")};
    default:
        return {tr("In bore"), tr("bore"), tr("free")};
    }
}

QString PistonModel::textAt(int row, int column) const {
    const Piston& piston = record().pistons.at(static_cast<std::size_t>(row));
    const DisplayUnits& units = document().units();
    switch (column) {
    case label:
        return qs(piston.label);
    case size:
        return cell_text::length(piston.size, units.size);
    case height:
        return cell_text::length(piston.height, units.size);
    case instrument:
        return qs(piston.measuredWith);
    case temperature:
        return cell_text::temperature(piston.temperature);
    case doubt:
        return cell_text::length(piston.doubt, units.small);
    default:
        return cell_text::bore(piston.bore);
    }
}

// A bore that is only proposed is shown as such.
QString PistonModel::hintAt(int row, int where) const {
    if (where != bore || row >= pieces()) return RecordModel::hintAt(row, where);
    for (const BoreFit& fit : document().results().fit.bores)
        if (fit.piston == static_cast<std::size_t>(row) && !fit.decided)
            return tr("proposed: %1").arg(fit.bore);
    return RecordModel::hintAt(row, where);
}

Result<void> PistonModel::put(FitRecord& fit, int row, int column, const QString& text) const {
    Piston& piston = fit.pistons.at(static_cast<std::size_t>(row));
    const DisplayUnits& units = document().units();
    switch (column) {
    case label:
        piston.label = text.toStdString();
        return {};
    case size:
        return cell_text::readInto(piston.size, text, units.size);
    case height:
        return cell_text::readInto(piston.height, text, units.size);
    case instrument:
        piston.measuredWith = text.toStdString();
        return {};
    case temperature:
        return cell_text::readInto(piston.temperature, text);
    case doubt:
        return cell_text::readInto(piston.doubt, text, units.small);
    default:
        return cell_text::readInto(piston.bore, text, document().workbook().block);
    }
}

void PistonModel::append(FitRecord& fit) const {
    appendPiston(fit);
}

void PistonModel::erase(FitRecord& fit, int row) const {
    fit.pistons.erase(fit.pistons.begin() + row);
}

} // namespace borewright
