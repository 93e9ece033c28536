// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/workbook/block.h"

#include <algorithm>

namespace borewright {

std::vector<Axis> usualAxes() {
    return {{"A", "along the crankshaft", 0}, {"B", "across, exhaust side", 90}};
}

const Bore* findBore(const Block& block, int number) {
    const auto found = std::ranges::find(block.bores, number, &Bore::number);
    return found == block.bores.end() ? nullptr : &*found;
}

Bore* findBore(Block& block, int number) {
    const auto found = std::ranges::find(block.bores, number, &Bore::number);
    return found == block.bores.end() ? nullptr : &*found;
}

const Axis* findAxis(const Block& block, const std::string& id) {
    const auto found = std::ranges::find(block.axes, id, &Axis::id);
    return found == block.axes.end() ? nullptr : &*found;
}

PlanPlace planPlace(Arrangement arrangement, int index) {
    if (arrangement == Arrangement::inLine) return {index, 0};
    return {index / 2, index % 2};
}

} // namespace borewright
