// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/doubted_blocks.h"

#include "tests/support/blocks.h"

namespace borewright::test {
namespace {

LimitSet overTwenty() {
    LimitSet set;
    set.id = "finish";
    set.name = "0.020 over";
    set.purpose = LimitPurpose::finish;
    set.oversize = typedIn("0.020");
    set.limits.sizeLower = typedIn("3.5195");
    set.limits.sizeUpper = typedIn("3.5210");
    set.limits.outOfRound = typedThou("1.0");
    set.limits.taper = typedThou("1.0");
    return set;
}

GaugeSetting& gaugeOf(Workbook& workbook, const std::string& survey) {
    return findSurvey(workbook, survey)->header.gauge;
}

} // namespace

Workbook wellKnownBlock() {
    Workbook workbook = inchBlock(6);
    workbook.job.engine = "Made six";
    addWornLimits(workbook, "3.504", "3", "2");
    workbook.limitSets.push_back(overTwenty());
    const std::string found = addSurvey(workbook, SurveyKind::asFound, "as found");
    const std::string last = addSurvey(workbook, SurveyKind::final, "final");
    for (const auto& survey : {found, last}) {
        GaugeSetting& gauge = gaugeOf(workbook, survey);
        gauge.gauge = "bore gauge, tenth dial";
        gauge.setOn = "ring 3.5000";
        gauge.gear = tenthDialAndRing();
        gauge.stoodTogether = true;
    }
    gaugeOf(workbook, last).setSize = typedIn("3.5200");
    const std::vector<Shape> shapes{
        [](double, const std::string& axis) { return axis == "A" ? 4.8 : 5.2; },
        [](double depth, const std::string&) { return depth < 1 ? 3.0 : 1.2; },
        [](double depth, const std::string&) { return 2.0 - depth * 2 / 3.5; },
        [](double depth, const std::string&) { return depth < 3 ? 0.4 : 2.0; },
        [](double, const std::string&) { return 0.4; },
        [](double, const std::string& axis) { return axis == "A" ? 0.2 : 0.5; }};
    for (int bore = 1; bore <= 6; ++bore) {
        typeShape(workbook, found, bore, shapes[static_cast<std::size_t>(bore - 1)]);
        typeShape(workbook, last, bore, [bore](double depth, const std::string&) {
            return (bore == 5 ? 0.9 : 0.2) + (depth < 1 ? 0.1 : 0);
        });
    }
    return workbook;
}

Workbook warmBlock() {
    Workbook workbook = inchBlock(2);
    addWornLimits(workbook, "3.504", "3", "2");
    const std::string found = addSurvey(workbook, SurveyKind::asFound, "as found");
    Survey& survey = *findSurvey(workbook, found);
    survey.header.minutesSinceWarm = 5;
    GaugeSetting& gauge = survey.header.gauge;
    gauge.gauge = "bore gauge, half-thou dial";
    gauge.setOn = "0-4 micrometer";
    gauge.dial = halfThouDial();
    gauge.gear = halfThouDialAndMicrometer();
    gauge.blockTemperature = *readTemperature("29", Scale::celsius);
    gauge.masterTemperature = *readTemperature("20", Scale::celsius);
    typeShape(workbook, found, 1,
              [](double depth, const std::string&) { return depth < 1 ? 2.5 : 0.8; });
    typeShape(workbook, found, 2, [](double, const std::string&) { return 1.0; });
    return workbook;
}

} // namespace borewright::test
