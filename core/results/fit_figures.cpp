// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/results/fit_figures.h"

namespace borewright {
namespace {

std::optional<Length> whole(const std::optional<Length>& u, double coverage) {
    if (!u) return std::nullopt;
    return Length::nearest(coverage * u->in(Unit::micrometre), Unit::micrometre);
}

} // namespace

std::optional<Length> wholeDoubt(const Clearance& clearance) {
    return whole(clearance.u, clearance.coverage);
}

std::optional<Length> wholeDoubt(const RingGap& gap) {
    return whole(gap.u, gap.coverage);
}

std::vector<HotFit> hotFits(const Workbook& workbook, const FitResult& fit, const Warmth& warmth) {
    std::vector<HotFit> fits;
    for (const BoreFit& bore : fit.bores) {
        if (!bore.clearance || !bore.piston) continue;
        const Survey* survey = findSurvey(workbook, bore.survey);
        const Piston& piston = workbook.fit.pistons.at(*bore.piston);
        const auto size = sizeOf(piston);
        if (survey == nullptr || !size) continue;
        const Length cold = bore.clearance->value;
        const double block = expansionPerCelsius(survey->header.gauge.blockExpansion);
        fits.push_back({bore.bore, *bore.piston, cold,
                        hotClearance(cold, size->at20 + cold, block, warmth.bore,
                                     expansionOf(piston), warmth.skirt)});
    }
    return fits;
}

} // namespace borewright
