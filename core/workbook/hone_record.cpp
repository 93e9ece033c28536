// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/workbook/hone_record.h"

#include "core/workbook/hone_names.h"

#include <algorithm>

namespace borewright {
namespace {

std::string freshId(const char* prefix, const auto& list) {
    for (std::size_t n = list.size() + 1;; ++n) {
        const std::string id = prefix + std::to_string(n);
        if (std::ranges::none_of(list, [&](const auto& item) { return item.id == id; })) return id;
    }
}

// How far the abrasive may stand out of an end that has `room`.
Length outOf(const std::optional<TypedLength>& own, Length length,
             const std::optional<Length>& room) {
    const Length may =
        own ? own->value() : Length::fromPicometres(divideHalfToEven(length.picometres(), 3));
    return room ? std::min(may, *room) : may;
}

} // namespace

const Stone* findStone(const HoneRecord& record, const std::string& id) {
    const auto found = std::ranges::find(record.stones, id, &Stone::id);
    return found == record.stones.end() ? nullptr : &*found;
}

const Stone* stoneCalled(const HoneRecord& record, const std::string& nameOrId) {
    if (const Stone* byId = findStone(record, nameOrId)) return byId;
    const std::string wanted = foldedName(nameOrId);
    const auto found = std::ranges::find_if(
        record.stones, [&](const Stone& stone) { return foldedName(stone.name) == wanted; });
    return found == record.stones.end() ? nullptr : &*found;
}

std::string freshStoneId(const HoneRecord& record) {
    return freshId("k", record.stones);
}

std::string freshPassId(const HoneRecord& record) {
    return freshId("h", record.passes);
}

std::string freshCareId(const HoneRecord& record) {
    return freshId("c", record.care);
}

double strokesOf(const StrokeWindow& window, const Hone& hone) {
    constexpr double secondsAMinute = 60;
    if (window.strokes) return *window.strokes;
    return window.seconds ? *window.seconds * hone.beatsPerMinute / secondsAMinute : 0;
}

Result<StoneReach> reachOf(const Stone& stone, const Bore& bore) {
    const std::string where = "bore " + std::to_string(bore.number);
    if (!bore.depth || bore.depth->value() <= Length())
        return refuse(where, "its depth is not entered, so nobody can say how far a stone may go");
    const Length depth = bore.depth->value();
    const Length length = stone.ends.value() - stone.begins.value();
    if (length <= Length()) return refuse(called(stone), "it ends above where it begins");
    const Unit unit = bore.depth->unit();
    if (length > depth)
        return refuse(where, called(stone) + " is " + inUnit(length, unit) +
                                 " long, and the bore only " + bore.depth->withUnit() +
                                 " deep: it cannot be stroked in it");
    const auto valueOf = [](const std::optional<TypedLength>& typed) {
        return typed ? std::optional(typed->value()) : std::nullopt;
    };
    StoneReach reach;
    reach.highest = length - outOf(stone.outOfOpenEnd, length, valueOf(bore.roomAtOpenEnd));
    // Where nothing is said of the closed end it is closed: the section draws it so.
    const Length room = valueOf(bore.roomAtClosedEnd).value_or(Length());
    reach.lowest = std::min(depth + outOf(stone.outOfClosedEnd, length, room),
                            depth + room - stone.begins.value());
    if (reach.highest > reach.lowest)
        return refuse(where, called(stone) + " with " + inUnit(stone.begins.value(), unit) +
                                 " below its abrasive is too long to be stroked in it");
    return reach;
}

} // namespace borewright
