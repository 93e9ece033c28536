// SPDX-License-Identifier: GPL-3.0-or-later
// What a set-up's drawing says: its key, its captions, and the whole of it in words.
#include "app/pictures/hone_section_layout.h"
#include "app/pictures/reading_words.h"

#include <QCoreApplication>

#include <algorithm>

namespace borewright {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("HoneSection", text);
}

QString depthOf(double depth_mm, const DisplayUnits& units) {
    return qs(depthWithUnit(Length::nearest(depth_mm, Unit::millimetre), units));
}

// What is to go at a few depths, now and afterwards.
QString profileInWords(const HoneSectionData& data) {
    const auto toGo = [&](const HoneLine& line, double depth) {
        const double size = honeLineAt(data, line, depth);
        return qs(formatSmall(Length::nearest(-size, Unit::micrometre), data.units));
    };
    QStringList parts;
    for (const double share : {0.1, 0.3, 0.5, 0.7, 0.9}) {
        const double depth = share * data.depth_mm;
        QString part =
            depthOf(depth, data.units) + QStringLiteral(": ") + toGo(data.curves.now, depth);
        if (data.hasThen()) part += tr(", then %1").arg(toGo(data.curves.then, depth));
        parts << part;
    }
    return tr("To go in %1, from the %2 down: ").arg(unitSymbol(data.units.small), data.openEnd) +
           parts.join(QStringLiteral("; ")) + QStringLiteral(". ");
}

QString windowsInWords(const HoneSectionData& data) {
    QStringList parts;
    for (const HoneBar& bar : data.windows) {
        QString part =
            tr("%1 with the lower end of the abrasive at %2")
                .arg(bar.seconds.isEmpty() ? bar.strokes
                                           : bar.strokes + QStringLiteral(", ") + bar.seconds,
                     bar.depths);
        if (!bar.hold.isEmpty()) part += QStringLiteral(", ") + bar.hold + tr(" at the bottom");
        parts << part;
    }
    return parts.isEmpty() ? QString()
                           : parts.join(QStringLiteral("; then ")) + QStringLiteral(". ");
}

QString marksInWords(const HoneSectionData& data) {
    QStringList parts;
    for (const HoneStationMark& mark : data.measure)
        parts << mark.axis + QStringLiteral(" ") + tr("at") + QStringLiteral(" ") + mark.depth;
    return parts.isEmpty() ? QString()
                           : tr("Then measure %1.").arg(parts.join(QStringLiteral(", ")));
}

} // namespace

QStringList honeBarLines(const HoneBar& bar, int lines) {
    QStringList counts{bar.strokes};
    if (!bar.seconds.isEmpty()) counts << bar.seconds;
    if (!bar.hold.isEmpty()) counts << bar.hold;
    const QString comma = QStringLiteral(", ");
    if (lines == 1) return {counts.join(comma)};
    if (lines == 2) return {counts.join(comma), bar.depths};
    return counts + QStringList{bar.depths};
}

std::vector<HoneMarkRow> honeMarkRows(const HoneSectionData& data) {
    std::vector<HoneMarkRow> rows;
    for (const HoneStationMark& mark : data.measure) {
        auto row = std::ranges::find(rows, mark.depth_mm, &HoneMarkRow::depth_mm);
        if (row == rows.end()) {
            rows.push_back({mark.depth_mm, mark.depth, {}});
            row = rows.end() - 1;
        }
        row->marks.push_back(mark);
    }
    std::ranges::sort(rows, {}, &HoneMarkRow::depth_mm);
    for (HoneMarkRow& row : rows)
        std::ranges::sort(row.marks, {}, &HoneStationMark::axisIndex);
    return rows;
}

std::vector<KeyItem> honeSectionKey(const HoneSectionData& data, const PictureStyle& style) {
    std::vector<KeyItem> items;
    if (data.empty()) return items;
    using Kind = KeyItem::Sign;
    items.push_back({Kind::line, tr("now, 95 %"), 0, honeNowPen(style),
                     blended(style.ink, style.background, 0.16)});
    if (data.hasThen())
        items.push_back({Kind::line, tr("expected afterwards, 95 %"), 0, honeThenPen(style),
                         blended(style.accent, style.background, 0.28)});
    if (!data.finish.isEmpty()) items.push_back({Kind::finish, data.finish});
    if (data.lower_um || data.upper_um) items.push_back({Kind::band, tr("allowed")});
    if (data.aim_um) {
        const Length aim = Length::nearest(*data.aim_um, Unit::micrometre);
        items.push_back(
            {Kind::line,
             tr("aim, %1 wide").arg(qs(smallWithUnit(aim, data.units, Sign::negative, 1))), 0,
             QPen(style.finishLine, style.unit(), Qt::DotLine, Qt::FlatCap), QColor()});
    }
    if (!data.ports.empty()) items.push_back({Kind::ports, tr("ports")});
    return items;
}

std::vector<HoneCaption> honeCaptions(const HoneSectionData& data) {
    std::vector<HoneCaption> captions;
    if (!data.chance.isEmpty()) captions.push_back({data.chance, false, data.forbidden});
    if (data.modelOnly)
        captions.push_back(
            {tr("Model, not measured: no pass of this stone has been measured yet."), true, false});
    return captions;
}

QString describeHoneSection(const HoneSectionData& data) {
    if (data.bore == 0) return data.friendly;
    QString text = data.title;
    if (!data.word.isEmpty()) text += QStringLiteral(": ") + data.word;
    text += QStringLiteral(". ") + windowsInWords(data);
    if (data.empty())
        text += data.friendly + QStringLiteral(" ");
    else
        text += profileInWords(data);
    for (const HoneCaption& caption : honeCaptions(data))
        text += caption.text + QStringLiteral(" ");
    return (text + marksInWords(data)).trimmed();
}

} // namespace borewright
