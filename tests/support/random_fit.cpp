// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/random_maker.h"

#include <set>
#include <utility>

namespace borewright::test {

SizingPlan Maker::sizing(int bores) {
    SizingPlan made;
    for (int i = upTo(4), over = 0; i > 0; --i, over += 5 + upTo(20)) {
        SizeOnOffer size{
            typed(std::to_string(over) + (chance() ? "" : ",0"), Unit::thou), {}, {}, unknown()};
        size.lower = maybe([&] { return typed("3.4998", Unit::inch); });
        size.upper = maybe([&] { return typed("88,95", Unit::millimetre); });
        made.sizes.push_back(size);
    }
    made.greatest = maybe([&] { return typed("1", Unit::millimetre); });
    made.method = choice<CutMethod>(2);
    made.centring = maybe([&] { return choice<Centring>(2); });
    made.finishAllowance = maybe([&] { return length(1, false, Unit::thou); });
    made.honeStock = maybe([&] { return length(9, false, Unit::hundredth); });
    made.ownSizes = chance();
    for (int i = upTo(3); i > 0; --i)
        made.bores[1 + upTo(bores - 1)] = wear();
    made.unknown = unknown();
    return made;
}

BoreWear Maker::wear() {
    BoreWear made;
    made.side = choice<WearSide>(3);
    made.madeTo = maybe([&] { return size(); });
    for (int i = upTo(3); i > 0; --i)
        made.damages.push_back({length(4), chance() ? "B" : "",
                                typed("0.1" + std::to_string(upTo(99)), Unit::millimetre), chance(),
                                text(), unknown()});
    made.unknown = unknown();
    return made;
}

FinishTargets Maker::targets(int bores) {
    FinishTargets made;
    for (int i = upTo(5); i > 0; --i) {
        FinishTarget target{
            typed("3,5" + std::to_string(upTo(9)), Unit::inch), {}, {}, text(), unknown()};
        target.lower = maybe([&] { return typed("3.499", Unit::inch); });
        target.upper = maybe([&] { return typed("91.5", Unit::millimetre); });
        made[1 + upTo(bores - 1)] = target;
    }
    return made;
}

Piston Maker::piston(const std::string& id) {
    Piston made;
    made.id = id;
    made.label = text();
    made.size = maybe([&] { return size(); });
    made.height = maybe([&] { return length(2); });
    made.measuredWith = text();
    made.temperature = maybe([&] { return temperature(); });
    made.doubt = maybe([&] { return length(1, false, Unit::tenth); });
    made.expansion = maybe([&] { return 0.1 * (10 + upTo(390)); });
    for (int i = upTo(3); i > 0; --i)
        made.skirt.push_back(
            {typed(std::to_string(i) + ",5", Unit::millimetre), size(), unknown()});
    made.notes = text();
    made.unknown = unknown();
    return made;
}

Ring Maker::ring(const std::string& id) {
    Ring made;
    made.id = id;
    made.label = text();
    made.groove = 1 + upTo(8);
    made.measuredIn = maybe([&] { return 1 + upTo(15); });
    made.measuredAt = maybe([&] { return length(4); });
    made.gap = maybe([&] { return length(30, false, Unit::thou); });
    made.doubt = maybe([&] { return length(1, false, Unit::thou); });
    made.unknown = unknown();
    return made;
}

FitLimits Maker::fitLimits() {
    FitLimits made;
    made.lower = maybe([&] { return typed("0,09", Unit::millimetre); });
    made.upper = maybe([&] { return typed("4.8", Unit::thou); });
    made.aim = maybe([&] { return typed("4.2", Unit::thou); });
    made.decision.kind = choice<DecisionRule::Kind>(4);
    made.decision.unknown = unknown();
    made.unknown = unknown();
    return made;
}

FitRecord Maker::fit(int bores) {
    FitRecord made;
    std::set<int> taken;
    for (int i = upTo(5); i > 0; --i) {
        made.pistons.push_back(piston("p" + std::to_string(i)));
        const int bore = 1 + upTo(bores - 1);
        if (chance() && taken.insert(bore).second) made.pistons.back().bore = bore;
    }
    std::set<std::pair<int, int>> places;
    for (int i = upTo(5); i > 0; --i) {
        made.rings.push_back(ring("g" + std::to_string(i)));
        Ring& ring = made.rings.back();
        const int bore = 1 + upTo(bores - 1);
        if (chance() && places.insert({bore, ring.groove}).second) ring.bore = bore;
    }
    if (chance()) made.clearance = fitLimits();
    if (chance()) made.ringGap = fitLimits();
    made.fileStep = maybe([&] { return typed("2", Unit::thou); });
    made.unknown = unknown();
    return made;
}

} // namespace borewright::test
