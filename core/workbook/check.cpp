// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/workbook/check.h"

#include <algorithm>
#include <set>

namespace borewright {
namespace {

constexpr std::size_t mostAxes = 32;
constexpr std::size_t mostLevels = 500;
const Length largestSize = Length::whole(3000, Unit::millimetre);
const Length largestBore = Length::whole(1000, Unit::millimetre);

// Keeps the first refusal.
class Checker {
public:
    void require(bool good, const std::string& where, const std::string& what) {
        if (!good && m_result) m_result = refuse(where, what);
    }
    void size(const std::optional<TypedLength>& length, const std::string& where) {
        if (!length) return;
        require(length->value() > Length(), where, "must be more than zero");
        require(length->value() <= largestSize, where, "is over three metres");
    }
    void depth(const std::optional<TypedLength>& length, const std::string& where) {
        if (length) depth(length->value(), where);
    }
    void depth(Length length, const std::string& where) {
        require(length >= Length(), where, "must not be below zero");
        require(length <= largestSize, where, "is over three metres");
    }
    [[nodiscard]] Result<void> result() const { return m_result; }

private:
    Result<void> m_result;
};

bool hasAxis(std::span<const Axis> axes, const std::string& id) {
    return std::ranges::find(axes, id, &Axis::id) != axes.end();
}

void checkMap(const BoreMap& map, std::span<const Axis> axes, Checker& check) {
    check.depth(map.topRingLine, "top-ring line");
    check.depth(map.lowestRingLine, "lowest ring line");
    check.depth(map.gaugeFoot, "gauge's foot");
    for (const PortBand& band : map.ports) {
        check.depth(band.from.value(), "ports");
        check.depth(band.to.value(), "ports");
        for (const std::string& axis : band.axes)
            check.require(hasAxis(axes, axis), "ports", "there is no axis '" + axis + "'");
    }
}

} // namespace

Result<void> checkBore(const Bore& bore, std::span<const Axis> axes) {
    Checker check;
    check.require(bore.number >= 1 && bore.number <= 999, "number",
                  std::to_string(bore.number) + " is no number of a bore");
    check.size(bore.standardSize, "standard size");
    check.require(!bore.standardSize || bore.standardSize->value() <= largestBore, "standard size",
                  "is over a metre: is the unit right?");
    check.size(bore.depth, "depth");
    check.depth(bore.roomAtOpenEnd, "room at the open end");
    check.depth(bore.roomAtClosedEnd, "room at the closed end");
    checkMap(bore.map, axes, check);
    check.require(bore.levels.size() <= mostLevels, "levels", "there are more than 500");
    std::set<Length> depths;
    for (const Level& level : bore.levels) {
        check.depth(level.depth.value(), "levels");
        check.require(depths.insert(level.depth.value()).second, "levels",
                      level.depth.withUnit() + " is given twice");
    }
    for (const WallMark& mark : bore.wallMarks) {
        check.depth(mark.depth, "wall marks");
        check.require(hasAxis(axes, mark.axis), "wall marks",
                      "there is no axis '" + mark.axis + "'");
    }
    return check.result();
}

Result<void> checkBlock(const Block& block) {
    Checker check;
    check.require(static_cast<int>(block.bores.size()) <= mostBores, "bores",
                  "more than 64 are no block");
    check.require(block.axes.size() <= mostAxes, "axes", "there are more than 32");
    std::set<std::string> ids;
    for (const Axis& axis : block.axes) {
        check.require(!axis.id.empty() && axis.id.size() <= 40, "axes",
                      "an axis needs a short name of its own");
        check.require(ids.insert(axis.id).second, "axes",
                      "two axes cannot both be '" + axis.id + "'");
    }
    std::set<int> numbers;
    for (const Bore& bore : block.bores) {
        check.require(numbers.insert(bore.number).second, "bores",
                      "two bores cannot both be number " + std::to_string(bore.number));
        if (auto good = checkBore(bore, block.axes); !good)
            check.require(false, good.error().within("bore " + std::to_string(bore.number)).where,
                          good.error().what);
    }
    return check.result();
}

} // namespace borewright
