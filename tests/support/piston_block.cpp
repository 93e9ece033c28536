// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/piston_block.h"

#include "tests/support/blocks.h"

#include <string>

namespace borewright::test {
namespace {

Length tenths(std::int64_t count) {
    return Length::whole(count, Unit::tenth);
}

SizingPlan planFor(int bores) {
    SizingPlan plan;
    for (const char* oversize : {"0", "0.010", "0.020", "0.030"})
        plan.sizes.push_back({typedIn(oversize), {}, {}});
    plan.greatest = typedIn("0.030");
    BoreWear wear;
    wear.side = WearSide::oneSide;
    Damage score;
    score.depth = typedIn("1.25");
    score.axis = "B";
    score.deep = typedThou("4.5");
    score.felt = true;
    score.what = "score from a broken ring land, exhaust side, with two lighter ones beside it";
    wear.damages = {score};
    plan.bores[bores] = wear;
    return plan;
}

FitRecord recordFor(int bores, int pistons) {
    FitRecord fit;
    for (int i = 0; i < pistons; ++i) {
        Piston piston;
        piston.id = "p" + std::to_string(i + 1);
        piston.label = i == 1 ? "spare, scribed K" : std::to_string(i + 1);
        piston.size = typedFrom(in("3.5164") - tenths((i * 2) % 7 - 3), Unit::inch);
        piston.height = typedIn("0.70");
        piston.measuredWith = "outside micrometer, 3 to 4 in";
        piston.temperature = *readTemperature(i % 2 == 0 ? "21.5" : "22", Scale::celsius);
        piston.doubt = typedThou("0.2");
        fit.pistons.push_back(piston);
    }
    if (pistons > 0) fit.pistons.front().bore = 1;
    for (int groove = 1; groove <= 2; ++groove)
        for (int i = 0; i < bores; ++i) {
            Ring ring;
            ring.id = freshRingId(fit);
            ring.label = (groove == 1 ? "top " : "second ") + std::to_string(i + 1);
            ring.groove = groove;
            ring.measuredIn = 1;
            ring.measuredAt = typedIn("2");
            ring.gap = typedFrom(thou("9") + tenths(i * 7 % 60), Unit::thou);
            ring.doubt = typedThou("0.5");
            fit.rings.push_back(ring);
        }
    fit.clearance.lower = typedThou("3.8");
    fit.clearance.upper = typedThou("4.8");
    fit.clearance.aim = typedThou("4.2");
    fit.ringGap.lower = typedThou("12");
    fit.ringGap.upper = typedThou("20");
    fit.ringGap.aim = typedThou("14");
    return fit;
}

Workbook named(int bores) {
    Workbook workbook = inchBlock(bores);
    workbook.job.customer = "The Society for the Keeping of Very Old Pumping Engines of the Lower "
                            "Estuary and its Neighbouring Parishes";
    workbook.job.engine = "A long engine with a name that no plate was ever wide enough to hold";
    for (Bore& bore : workbook.block.bores) {
        bore.map.topRingLine = typedIn("0.4");
        bore.map.ports.push_back({typedIn("2.1"), typedIn("2.6"), {"A", "B"}});
    }
    return workbook;
}

LimitSet finish() {
    LimitSet set;
    set.id = "finish";
    set.name = "0.020 over";
    set.purpose = LimitPurpose::finish;
    set.oversize = typedIn("0.020");
    set.limits.sizeLower = typedIn("3.5195");
    set.limits.sizeUpper = typedIn("3.5215");
    return set;
}

void addRead(Workbook& workbook, SurveyKind kind, const std::string& name, const Shape& shape,
             int bores) {
    const std::string id = addSurvey(workbook, kind, name);
    findSurvey(workbook, id)->header.gauge.gear = tenthDialAndRing();
    findSurvey(workbook, id)->header.gauge.stoodTogether = true;
    for (int bore = 1; bore <= bores; ++bore)
        typeShape(workbook, id, bore, [&](double depth, const std::string& axis) {
            return shape(depth, axis) + 0.1 * (bore % 4);
        });
}

} // namespace

Workbook pistonBlockAsFound(int bores, int pistons) {
    Workbook workbook = named(bores);
    addWornLimits(workbook, "3.504", "3", "2");
    workbook.limitSets.push_back(finish());
    addRead(
        workbook, SurveyKind::asFound, "as found",
        [](double depth, const std::string& axis) { return 4.5 - depth + (axis == "B" ? 0.7 : 0); },
        bores);
    workbook.sizing = planFor(bores);
    workbook.fit = recordFor(bores, pistons);
    return workbook;
}

Workbook pistonBlock(int bores, int pistons) {
    Workbook workbook = pistonBlockAsFound(bores, pistons);
    addRead(
        workbook, SurveyKind::final, "final",
        [](double depth, const std::string&) { return 20.1 + (depth > 3 ? 0.5 : 0); }, bores);
    return workbook;
}

} // namespace borewright::test
