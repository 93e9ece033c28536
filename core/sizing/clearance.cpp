// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sizing/clearance.h"

#include "core/constants.h"
#include "core/sizing/guarded.h"

namespace borewright {
namespace {

// P·(1 + α_steel·(T − 20))/(1 + α·(T − 20)); nothing where no such metal is.
std::optional<Length> broughtTo20(Length size, double expansion, double celsius) {
    const double warmer = celsius - constants::referenceCelsius;
    const double piston = 1 + expansion * warmer;
    const double micrometer = 1 + constants::expansionGaugeSteel * warmer;
    if (!(piston > 0.5 && piston < 2)) return std::nullopt;
    return Length::nearest(size.in(Unit::millimetre)*micrometer / piston, Unit::millimetre);
}

std::optional<Length> doubtOf(const std::optional<Length>& bore,
                              const std::optional<Length>& piston) {
    if (!bore || !piston) return bore;
    return together(*bore, *piston);
}

// Where the bore is smallest of what the piston and its rings run in; ties to the shallower.
const MeasuredAt* tightest(const MeasuredBore& bore) {
    const MeasuredAt* least = nullptr;
    for (const MeasuredAt& at : bore.at)
        if (at.zone != Zone::ridgeLand && (least == nullptr || at.diameter < least->diameter))
            least = &at;
    return least;
}

void addStations(Clearance& clearance, const MeasuredBore& bore, Length piston) {
    for (const MeasuredAt& at : bore.at)
        if (at.zone != Zone::ridgeLand)
            clearance.at.push_back({at.depth, at.axis, at.diameter - piston});
}

void judgeClearance(Clearance& clearance, const MeasuredBore& bore, const FitLimits& limits,
                    const DisplayUnits& units) {
    const Guard guard = guardOf(clearance.u, limits.decision);
    const Verdict least = judgeLeast(clearance.value, limits, guard, bore.complete);
    const Verdict most = judgeMost(clearance.value, limits, guard, bore.complete);
    clearance.verdict = worse(least, most);
    if (clearance.value < Length())
        clearance.why = "does not go in: larger than the bore by " +
                        smallWithUnit(clearance.value.magnitude(), units);
    else if (clearance.value == Length())
        clearance.why = "does not go in: as large as the bore";
    else if (least == Verdict::outside)
        clearance.why = "too tight";
    else if (most == Verdict::outside)
        clearance.why = "too loose";
    else if (clearance.verdict == Verdict::notMeasured)
        clearance.why = "not all of the bore was read: it may be tighter elsewhere";
}

} // namespace

double expansionOf(const Piston& piston) {
    return piston.expansion ? *piston.expansion * 1e-6 : constants::expansionCastAluminium;
}

Result<PistonSize> sizeOf(const Piston& piston) {
    if (!piston.size) return refuse(called(piston), "its size is not given");
    if (!piston.height)
        return refuse(called(piston), "the height it was measured at is not given: a skirt is not "
                                      "the same size all the way up");
    if (piston.size->value() <= Length())
        return refuse(called(piston), "its size must be more than nothing");
    PistonSize size{piston.size->value(), std::nullopt, false};
    if (piston.temperature) {
        const auto cold =
            broughtTo20(size.at20, expansionOf(piston), piston.temperature->celsius());
        if (!cold) return refuse(called(piston), "no metal expands as is given for it");
        size.at20 = *cold;
        size.corrected = true;
    }
    if (piston.doubt)
        size.u = Length::fromPicometres(divideHalfToEven(piston.doubt->value().picometres(), 2));
    return size;
}

Result<Clearance> clearanceOf(const MeasuredBore& bore, const Piston& piston,
                              const FitLimits& limits, const std::optional<DisplayUnits>& units) {
    const Result<PistonSize> size = sizeOf(piston);
    if (!size) return tl::unexpected(size.error());
    const MeasuredAt* least = tightest(bore);
    if (least == nullptr)
        return refuse("bore " + std::to_string(bore.bore),
                      "nothing was read where the piston runs");
    Clearance clearance;
    clearance.value = least->diameter - size->at20;
    clearance.depth = least->depth;
    clearance.axis = least->axis;
    addStations(clearance, bore, size->at20);
    clearance.u = doubtOf(least->u, size->u);
    clearance.pistonDoubtKnown = size->u.has_value();
    clearance.coverage = bore.coverage;
    judgeClearance(clearance, bore, limits, units.value_or(unitsOf(*piston.size)));
    return clearance;
}

Length hotClearance(Length cold, Length bore, double boreExpansion, double boreWarmer,
                    double pistonExpansion, double skirtWarmer) {
    const double opened = boreExpansion * boreWarmer - pistonExpansion * skirtWarmer;
    return cold + Length::nearest(bore.in(Unit::millimetre)*opened, Unit::millimetre);
}

} // namespace borewright
