// SPDX-License-Identifier: GPL-3.0-or-later
// A set-up of the user's own, foreseen.
#include "core/results/hone_memory.h"
#include "core/results/hone_scene.h"
#include "core/results/hone_words.h"

#include <algorithm>

namespace borewright {
namespace {

// The pass that it would be: refused for what a logged pass would be refused for.
Pass passOf(int bore, const std::string& stone, const std::vector<StrokeWindow>& windows) {
    Pass pass;
    pass.id = "own";
    pass.bore = bore;
    pass.stone = stone;
    pass.windows = windows;
    return pass;
}

Result<OwnSetUp> foreseen(const HoneScene& scene, const PlannedBore& bore, const Pass& pass) {
    const auto found = std::ranges::find(scene.workbook.hone.stones, pass.stone, &Stone::id);
    const auto stone = bore.group->group.stoneAt(
        static_cast<std::size_t>(found - scene.workbook.hone.stones.begin()));
    if (!stone) return refuse("'" + found->name + "' cannot be stroked in this bore");
    const HoneLearner& learner = bore.group->learner;
    const HoneAim& aim = bore.aim->aim;
    const Foreseen now = asItStands(learner, bore.place, aim);
    const Foreseen then =
        foresee(learner, bore.place, aim, setUpOf(pass, scene.workbook.hone.hone, *stone));
    OwnSetUp own;
    own.curves = curvesOf(bore, now, &then);
    own.chanceOver = then.chanceOver;
    own.forbidden = then.chanceOver > aim.chance;
    own.sentences.push_back("Expected afterwards: straight within " +
                            claimWords(then.spread_um, scene.units) + " over the stations, " +
                            claimWords(then.spreadAll_um, scene.units) + " over every depth.");
    own.sentences.push_back(own.forbidden ? "Do not: " + overWords(then.chanceOver) + "."
                                          : overWords(then.chanceOver) + ".");
    if (learner.passes(*stone) == 0 && !bore.group->group.bench.stones[*stone].proven)
        own.sentences.emplace_back("Model, not measured: no pass of this stone has been measured.");
    if (bore.learned->passSince)
        own.sentences.emplace_back("Reckoned on from the pass before, which has not been measured "
                                   "yet.");
    return own;
}

} // namespace

Result<OwnSetUp> foreseeOwn(const Workbook& workbook, const Results& results,
                            const DisplayUnits& units, int bore, const std::string& stone,
                            const std::vector<StrokeWindow>& windows,
                            const std::shared_ptr<HoneMemory>& memory) {
    const Pass pass = passOf(bore, stone, windows);
    if (const auto good = checkPass(pass, workbook.hone, workbook.block); !good) {
        Error error = good.error();
        error.where.clear(); // it has no name yet
        return tl::unexpected(error);
    }
    const HonePlanner planner(workbook, results, {}, memory.get(), {});
    const PlannedBore start = planner.start(bore);
    if (!start.canBePlanned()) return refuse(start.refused);
    return foreseen({workbook, results, units}, start, pass);
}

} // namespace borewright
