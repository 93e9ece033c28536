// SPDX-License-Identifier: GPL-3.0-or-later
// The same bore planned otherwise, with its price.
#include "core/results/hone_scene.h"
#include "core/results/hone_words.h"
#include "core/results/words.h"

#include <cmath>
#include <cstdlib>

namespace borewright {
namespace {

std::string stopsWords(int more) {
    if (more == 0) return "as many stops";
    const int count = std::abs(more);
    return numberWord(count) + (count == 1 ? " stop " : " stops ") + (more > 0 ? "more" : "fewer");
}

std::string straightWords(double worse_um, const DisplayUnits& units) {
    constexpr double worthNaming_um = 0.5;
    if (std::abs(worse_um) < worthNaming_um) return "as straight";
    return amountWords(std::abs(worse_um), units, 1) +
           (worse_um > 0 ? " less straight" : " straighter");
}

HoneAlternative price(const HoneScene& scene, const PlannedBore& bore, const HonePlan& plan,
                      std::string name) {
    HoneAlternative result;
    result.name = std::move(name);
    const HonePlan& best = bore.plan;
    result.possible = plan.outcome == HoneOutcome::next || plan.outcome == best.outcome;
    if (plan.outcome != HoneOutcome::next || best.outcome != HoneOutcome::next) {
        result.sentence = plan.outcome == best.outcome ? "makes no difference now"
                                                       : "does not bring this bore any further";
        return result;
    }
    const double worse = plan.foreseen.back().spreadAll_um - best.foreseen.back().spreadAll_um;
    result.sentence =
        stopsWords(plan.setUpsLeft - best.setUpsLeft) + ", " + straightWords(worse, scene.units);
    return result;
}

} // namespace

std::vector<HoneAlternative> alternativesOf(const HoneScene& scene, const PlannedBore& bore,
                                            const HoneWishes& wishes, HonePlanner& planner) {
    std::vector<HoneAlternative> result;
    if (!bore.canBePlanned() || bore.learned->passSince || bore.outcome != HoneOutcome::next)
        return result;
    const auto add = [&](bool HoneWishes::*wish, const char* name) {
        if (wishes.*wish) return;
        HoneWishes other = wishes;
        other.*wish = true;
        result.push_back(price(scene, bore, planner.planAs(bore, other), name));
    };
    add(&HoneWishes::oneStone, "one stone only");
    add(&HoneWishes::noShort, "no short stone");
    add(&HoneWishes::fewerStops, "fewer stops, less straight");
    return result;
}

} // namespace borewright
