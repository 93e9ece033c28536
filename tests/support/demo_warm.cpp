// SPDX-License-Identifier: GPL-3.0-or-later
// "Saltmarsh V6, measured warm": the same invented block after its last pass, read with a half-thou
// dial while it was still warm. What can be said of it, and what cannot?
#include "tests/support/demo_scenarios.h"
#include "tests/support/demo_survey_builder.h"

namespace borewright::demo {
namespace {

SurveyHeader warmHeader(const SurveyHeader& cold) {
    SurveyHeader header;
    header.id = "s1";
    header.name = "final, still warm";
    header.kind = SurveyKind::final;
    header.time = *readIso("2026-03-13T11:05:00Z");
    header.gauge = cold.gauge;
    header.gauge.gauge = "old half-thou bore gauge (invented)";
    header.gauge.setOn = "outside micrometer, 3 to 4 in";
    header.gauge.dial = halfThouDial();
    header.gauge.gear = halfThouDialAndMicrometer();
    header.gauge.stoodTogether = false;
    header.gauge.masterTemperature = *readTemperature("20.0", Scale::celsius);
    header.gauge.blockTemperature = *readTemperature("29.1", Scale::celsius);
    header.gauge.blockExpansion = Expansion::sleeveInAluminium;
    header.minutesSinceWarm = 12;
    header.cooling = Cooling{*readTemperature("20", Scale::celsius),
                             *readTemperature("31.0", Scale::celsius),
                             *readTemperature("29.1", Scale::celsius),
                             7,
                             {}};
    header.plate = false;
    return header;
}

} // namespace

Workbook saltmarshWarm() {
    Workbook workbook = saltmarsh();
    const SurveyHeader cold = workbook.surveys.back().header;
    workbook.job.notes =
        "Everything in this workbook is invented: no maker, engine or measured data "
        "stand behind it. The block was read 12 minutes after its last pass, with "
        "a coarse dial.";
    workbook.job.serial = "SALT-0007";
    workbook.sizing = {}; // this one is about the doubt of readings
    workbook.fit = {};
    // At 29.1 °C these sleeves read half a thou large.
    workbook.surveys = {
        SurveyBuilder(workbook.block, warmHeader(cold), Unit::thou)
            .bore(1, "0.75 0.75 0.75 0.75 0.75 0.75", "0.75 0.75 0.75 0.75 0.75 0.75")
            .bore(2, "0.75 0.75 0.75 1.0 1.25 1.25", "0.75 0.75 1.0 1.0 1.25 1.25")
            .bore(3, "0.5 0.25 0.25 0.25 0.25 0.5", "0.5 0.5 0.25 0.25 0.25 0.5")
            .bore(4, "0.75 0.75 1.0 1.25 1.75 2.25", "0.75 0.75 1.0 1.5 1.75 2.25")
            .bore(5, "0.25 0.25 0.5 0.75 1.0 1.5", "0.25 0.25 0.5 0.75 1.25 1.5")
            .bore(6, "0.75 0.75 0.75 0.75 0.75 0.75", "0.75 0.75 0.75 0.75 0.75 0.75")
            .take()};
    return workbook;
}

} // namespace borewright::demo
