// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/fit/ring_model.h"

#include "app/fit/cell_text.h"
#include "app/fit/fit_verbs.h"
#include "app/pictures/reading_words.h"

namespace borewright {
namespace {

Result<void> readGroove(int& groove, const QString& text) {
    bool whole = false;
    const int number = text.toInt(&whole);
    if (!whole)
        return refuse(
            RingModel::tr("a groove is a whole number, counted from the crown").toStdString());
    groove = number;
    return {};
}

} // namespace

RingModel::RingModel(Document& document, QObject* parent)
    : RecordModel(document, parent) {
    refresh();
}

QString RingModel::called(const FitRecord& fit, std::size_t ring) {
    const std::string& label = fit.rings.at(ring).label;
    return label.empty() ? tr("ring in row %1").arg(ring + 1) : tr("ring %1").arg(qs(label));
}

int RingModel::countIn(const FitRecord& fit) const {
    return static_cast<int>(fit.rings.size());
}

std::string RingModel::idOf(int row) const {
    return record().rings.at(static_cast<std::size_t>(row)).id;
}

QString RingModel::nameOf(int row) const {
    return called(record(), static_cast<std::size_t>(row));
}

RecordModel::Column RingModel::column(int column) const {
    const QString large = QStringLiteral(", ") + unitSymbol(document().units().size);
    const QString small = QStringLiteral(", ") + unitSymbol(document().units().small);
    switch (column) {
    case label:
        return {tr("Ring"), tr("label"), tr("no label"), false};
    case groove:
        return {tr("Groove"), tr("groove"), {}};
    case measuredIn:
        return {tr("Measured in bore"), tr("bore it was measured in"), tr("not given")};
    case measuredAt:
        return {tr("At depth") + large, tr("depth it was measured at"), tr("not given")};
    case gap:
        return {tr("Gap") + small, tr("gap"), tr("not given")};
    case doubt:
        return {tr("±") + small, tr("doubt ±"), tr("not known")};
    default:
        return {tr("In bore"), tr("bore"), tr("free")};
    }
}

QString RingModel::textAt(int row, int column) const {
    const Ring& ring = record().rings.at(static_cast<std::size_t>(row));
    const DisplayUnits& units = document().units();
    switch (column) {
    case label:
        return qs(ring.label);
    case groove:
        return QString::number(ring.groove);
    case measuredIn:
        return cell_text::bore(ring.measuredIn);
    case measuredAt:
        return cell_text::length(ring.measuredAt, units.size);
    case gap:
        return cell_text::length(ring.gap, units.small);
    case doubt:
        return cell_text::length(ring.doubt, units.small);
    default:
        return cell_text::bore(ring.bore);
    }
}

QString RingModel::hintAt(int row, int where) const {
    if (where != bore || row >= pieces()) return RecordModel::hintAt(row, where);
    for (const BoreFit& fit : document().results().fit.bores)
        for (const BoreFit::RingHere& here : fit.rings)
            if (here.ring == static_cast<std::size_t>(row) && !here.decided)
                return tr("proposed: %1").arg(fit.bore);
    return RecordModel::hintAt(row, where);
}

Result<void> RingModel::put(FitRecord& fit, int row, int column, const QString& text) const {
    Ring& ring = fit.rings.at(static_cast<std::size_t>(row));
    const DisplayUnits& units = document().units();
    const Block& block = document().workbook().block;
    switch (column) {
    case label:
        ring.label = text.toStdString();
        return {};
    case groove:
        return readGroove(ring.groove, text);
    case measuredIn:
        return cell_text::readInto(ring.measuredIn, text, block);
    case measuredAt:
        return cell_text::readInto(ring.measuredAt, text, units.size);
    case gap:
        return cell_text::readAmountInto(ring.gap, text, units.small);
    case doubt:
        return cell_text::readInto(ring.doubt, text, units.small);
    default:
        return cell_text::readInto(ring.bore, text, block);
    }
}

void RingModel::append(FitRecord& fit) const {
    appendRing(fit);
}

void RingModel::erase(FitRecord& fit, int row) const {
    fit.rings.erase(fit.rings.begin() + row);
}

} // namespace borewright
