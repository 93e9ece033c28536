// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pictures/reading_words.h"

#include <QCoreApplication>

namespace borewright {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Pictures", text);
}

} // namespace

QString qs(const std::string& text) {
    return QString::fromStdString(text);
}

QString unitSymbol(Unit unit) {
    const auto text = symbol(unit);
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

QString zoneWord(Zone zone) {
    switch (zone) {
    case Zone::unmapped:
        return {};
    case Zone::ridgeLand:
        return tr("ridge land");
    case Zone::ringTravel:
        return tr("ring travel");
    case Zone::portBand:
        return tr("ports");
    case Zone::skirtOnly:
        return tr("skirt only");
    }
    return {};
}

QString readingInWords(const StationResult& station, const Block& block,
                       const DisplayUnits& units) {
    const Axis* axis = findAxis(block, station.station.axis);
    const std::string& label =
        axis == nullptr || axis->label.empty() ? station.station.axis : axis->label;
    QString text = tr("Bore %1, %2 down, %3: ")
                       .arg(station.station.bore)
                       .arg(qs(depthWithUnit(station.station.depth, units)), qs(label));
    if (!station.wall && !station.diameter) return text + tr("no wall here.");
    if (station.refused) return text + qs(*station.refused) + QStringLiteral(".");
    if (!station.diameter) return text + tr("not measured.");
    text += qs(sizeWithUnit(*station.diameter, units));
    if (station.repeats > 1) text += tr(", mean of %1 readings").arg(station.repeats);
    if (station.toGo) text += tr(", %1 to go").arg(qs(smallWithUnit(*station.toGo, units)));
    if (!station.judged) text += tr(", not judged");
    text += QStringLiteral(".");
    for (const std::string& reason : station.odd)
        text += tr(" Looks odd: %1.").arg(qs(reason));
    return text;
}

} // namespace borewright
