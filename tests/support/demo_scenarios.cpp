// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/demo_scenarios.h"

#include "core/workbook/edit.h"

namespace borewright::demo {

void correct(Workbook& workbook, const std::string& survey, const Station& station,
             const std::string& text) {
    const Survey& here = *findSurvey(workbook, survey);
    Reading reading = here.readings.back();
    for (const Reading& old : here.readings)
        if (old.station == station) reading = old;
    reading.station = station;
    reading.typed = *readTyped(text, reading.typed.unit());
    reading.struck.reset();
    (void)borewright::apply(workbook, recordReading(workbook, survey, reading, "typed wrongly"));
}

Workbook correctedSaltmarsh() {
    Workbook workbook = demo::saltmarsh();
    correct(workbook, "s1", at(2, "1.20", "A"), "1.6");
    correct(workbook, "s1", at(6, "0.60", "B"), "3.8");
    correct(workbook, "s3", at(3, "1.80", "B"), "-2.9");
    correct(workbook, "s3", at(3, "3.05", "B"), "-2.2");
    correct(workbook, "s3", at(3, "3.75", "B"), "-1.9");
    return workbook;
}

Workbook withoutDoubt(Workbook workbook) {
    for (Survey& survey : workbook.surveys)
        survey.header.gauge.gear = {};
    workbook.studies.clear();
    return workbook;
}

Station at(int bore, const std::string& depth, const std::string& axis) {
    return {bore, *readLength(depth, Unit::inch), axis};
}

} // namespace borewright::demo
