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
