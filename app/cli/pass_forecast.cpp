// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/pass_forecast.h"

#include "app/cli/common.h"
#include "core/results/hone_outlook.h"

#include <fmt/format.h>

namespace borewright {
namespace {

// Ten minutes at a beat of 60, without a look at the gauge: common practice, no source.
constexpr double mostInOneSetUp = 600;

// The forecast starts from what was measured last: of a pass logged afterwards it knows nothing.
bool isLatest(const Workbook& workbook, const Pass& pass) {
    return workbook.surveys.empty() || pass.after == workbook.surveys.back().header.id;
}

} // namespace

std::vector<std::string> doubtsOfPass(const Workbook& before, const Pass& pass, bool foresee) {
    std::vector<std::string> doubts;
    if (pass.simulated) return doubts;
    double strokes = 0;
    for (const StrokeWindow& window : pass.windows)
        strokes += strokesOf(window, before.hone.hone);
    if (strokes > mostInOneSetUp)
        doubts.push_back(fmt::format("{:.0f} strokes are more than anyone makes in one set-up: is "
                                     "that what was done?",
                                     strokes));
    if (!foresee || !isLatest(before, pass)) return doubts;
    const DisplayUnits units = naturalUnits(before);
    const auto own =
        foreseeOwn(before, compute(before, units), units, pass.bore, pass.stone, pass.windows);
    constexpr double percent = 100;
    if (!own || !own->forbidden) return doubts;
    const double chance = percent * own->chanceOver;
    doubts.push_back(
        fmt::format("such a pass is never proposed: {} % chance that some depth goes "
                    "over size. Measure before any more is honed.",
                    chance < 10 ? fmt::format("{:.2g}", chance) : fmt::format("{:.0f}", chance)));
    return doubts;
}

} // namespace borewright
