// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/block/block_verbs.h"

#include <QCoreApplication>

#include <algorithm>
#include <set>

namespace borewright {
namespace {

tl::unexpected<Error> refuseWith(const QString& sentence) {
    return refuse(sentence.toStdString());
}

bool hasReadings(const Workbook& workbook, int bore) {
    return std::ranges::any_of(workbook.surveys, [&](const Survey& survey) {
        return std::ranges::any_of(survey.readings, [&](const Reading& reading) {
            return reading.station.bore == bore;
        });
    });
}

int freeNumber(const Block& block) {
    for (int number = 1;; ++number)
        if (findBore(block, number) == nullptr) return number;
}

} // namespace

Result<int> readBoreCount(const QString& text) {
    const auto number = readDecimal(text.toStdString());
    if (!number) return tl::unexpected(number.error());
    if (number->decimals != 0 || number->digits < 1 || number->digits > mostBores)
        return refuseWith(
            QCoreApplication::translate("BlockVerbs", "A block has from 1 to %1 bores.")
                .arg(mostBores));
    return static_cast<int>(number->digits);
}

Result<Block> withBoreCount(const Workbook& workbook, int count) {
    Block block = workbook.block;
    while (static_cast<int>(block.bores.size()) > count) {
        const int last = block.bores.back().number;
        if (hasReadings(workbook, last))
            return refuseWith(QCoreApplication::translate(
                                  "BlockVerbs", "Bore %1 has readings, so it stays in the block.")
                                  .arg(last));
        block.bores.pop_back();
    }
    while (static_cast<int>(block.bores.size()) < count) {
        Bore bore = block.bores.empty() ? Bore() : block.bores.back();
        bore.number = freeNumber(block);
        block.bores.push_back(std::move(bore));
    }
    return block;
}

Renumber numbered(const Block& block, const std::vector<int>& tapped) {
    Renumber edit;
    int next = 1;
    for (const int bore : tapped)
        edit.numbers.emplace_back(bore, next++);
    std::vector<int> rest;
    for (const Bore& bore : block.bores)
        if (std::ranges::find(tapped, bore.number) == tapped.end()) rest.push_back(bore.number);
    std::ranges::sort(rest);
    for (const int bore : rest)
        edit.numbers.emplace_back(bore, next++);
    return edit;
}

Axis nextAxis(const std::vector<Axis>& axes) {
    Axis axis;
    for (char letter = 'A'; letter <= 'Z'; ++letter) {
        axis.id = std::string(1, letter);
        if (std::ranges::find(axes, axis.id, &Axis::id) == axes.end()) break;
    }
    for (const double angle : {45.0, 135.0, 22.5, 67.5, 112.5, 157.5}) {
        axis.angleDegrees = angle;
        if (std::ranges::find(axes, angle, &Axis::angleDegrees) == axes.end()) break;
    }
    axis.label = QCoreApplication::translate("BlockVerbs", "at %1 degrees")
                     .arg(axis.angleDegrees)
                     .toStdString();
    return axis;
}

Result<void> insertLevel(Bore& bore, const Level& level) {
    const Length depth = level.depth.value();
    if (depth <= Length())
        return refuse("a level lies below the open end, so its depth is more than zero");
    if (bore.depth && depth > bore.depth->value()) return refuse("that is below the bore");
    const auto place = std::ranges::find_if(
        bore.levels, [&](const Level& other) { return other.depth.value() >= depth; });
    if (place != bore.levels.end() && place->depth.value() == depth)
        return refuse("there is a level at this depth already");
    bore.levels.insert(place, level);
    return {};
}

} // namespace borewright
