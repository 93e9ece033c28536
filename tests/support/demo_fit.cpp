// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/demo_fit.h"

#include "tests/support/demo_survey_builder.h"

#include <string>
#include <vector>

namespace borewright::demo {
namespace {

SizeOnOffer offer(std::string_view oversize, Unit unit) {
    SizeOnOffer size;
    size.oversize = typed(oversize, unit);
    return size;
}

SizeOnOffer offer(std::string_view oversize, std::string_view lower, std::string_view upper,
                  Unit unit) {
    SizeOnOffer size = offer(oversize, unit);
    size.lower = typed(lower, unit);
    size.upper = typed(upper, unit);
    return size;
}

Piston piston(std::size_t number, std::string_view size, std::string_view height,
              std::string_view doubt, Unit sizeUnit, Unit doubtUnit) {
    Piston piston;
    piston.id = "p" + std::to_string(number);
    piston.label = std::to_string(number);
    piston.size = typed(size, sizeUnit);
    piston.height = typed(height, sizeUnit);
    piston.measuredWith = sizeUnit == Unit::inch ? "outside micrometer, 3 to 4 in"
                                                 : "outside micrometer, 50 to 75 mm";
    piston.temperature = *readTemperature("20", Scale::celsius);
    piston.doubt = typed(doubt, doubtUnit);
    return piston;
}

void addRings(FitRecord& fit, int groove, const std::string& name,
              const std::vector<std::string>& gaps, int bore, const TypedLength& depth, Unit unit) {
    for (std::size_t i = 0; i < gaps.size(); ++i) {
        Ring ring;
        ring.id = "g" + std::to_string(fit.rings.size() + 1);
        ring.label = name + " " + std::to_string(i + 1);
        ring.groove = groove;
        ring.measuredIn = bore;
        ring.measuredAt = depth;
        ring.gap = typed(gaps[i], unit);
        ring.doubt = typed(unit == Unit::thou ? "0.5" : "0.01", unit);
        fit.rings.push_back(std::move(ring));
    }
}

} // namespace

SizingPlan saltmarshSizes() {
    SizingPlan plan;
    plan.sizes = {offer("0", "3.4195", "3.4210", Unit::inch),
                  offer("0.010", "3.4295", "3.4310", Unit::inch),
                  offer("0.020", "3.4395", "3.4410", Unit::inch),
                  offer("0.030", "3.4495", "3.4510", Unit::inch)};
    plan.greatest = typed("0.030", Unit::inch);
    BoreWear four;
    four.side = WearSide::oneSide;
    Damage score;
    score.depth = typed("1.40", Unit::inch);
    score.axis = "B";
    score.deep = typed("6", Unit::thou);
    score.what = "score, exhaust side";
    four.damages = {score};
    plan.bores[4] = four;
    return plan;
}

FitRecord saltmarshFit() {
    FitRecord fit;
    std::size_t number = 0;
    for (const char* size : {"3.4358", "3.4362", "3.4360", "3.4359", "3.4361", "3.4360"})
        fit.pistons.push_back(piston(++number, size, "0.70", "0.2", Unit::inch, Unit::thou));
    fit.clearance.lower = typed("3.8", Unit::thou);
    fit.clearance.upper = typed("4.8", Unit::thou);
    fit.clearance.aim = typed("4.2", Unit::thou);
    fit.ringGap.lower = typed("12", Unit::thou);
    fit.ringGap.upper = typed("20", Unit::thou);
    fit.ringGap.aim = typed("14", Unit::thou);
    const TypedLength place = typed("1.20", Unit::inch);
    addRings(fit, 1, "top", {"14.5", "11.0", "14.0", "15.5", "9.5", "14.5"}, 1, place, Unit::thou);
    addRings(fit, 2, "second", {"16.0", "15.0", "15.5", "14.5", "16.5", "15.0"}, 1, place,
             Unit::thou);
    return fit;
}

SizingPlan rushmereSizes() {
    SizingPlan plan;
    plan.sizes = {offer("0.25", "73.445", "73.465", Unit::millimetre),
                  offer("0.50", "73.695", "73.715", Unit::millimetre)};
    plan.greatest = typed("0.50", Unit::millimetre);
    BoreWear two;
    two.side = WearSide::oneSide;
    Damage pit;
    pit.depth = typed("66", Unit::millimetre);
    pit.axis = "B";
    pit.deep = typed("0.12", Unit::millimetre);
    pit.what = "pit, exhaust side";
    two.damages = {pit};
    plan.bores[2] = two;
    return plan;
}

FitRecord rushmereFit() {
    FitRecord fit;
    std::size_t number = 0;
    for (const char* size : {"73.618", "73.621", "73.620"})
        fit.pistons.push_back(
            piston(++number, size, "14", "2", Unit::millimetre, Unit::micrometre));
    fit.clearance.lower = typed("0.075", Unit::millimetre);
    fit.clearance.upper = typed("0.095", Unit::millimetre);
    fit.clearance.aim = typed("0.085", Unit::millimetre);
    fit.ringGap.lower = typed("0.20", Unit::millimetre);
    fit.ringGap.upper = typed("0.40", Unit::millimetre);
    const TypedLength place = typed("70", Unit::millimetre);
    addRings(fit, 1, "top", {"0.30", "0.28", "0.18"}, 1, place, Unit::millimetre);
    return fit;
}

} // namespace borewright::demo
