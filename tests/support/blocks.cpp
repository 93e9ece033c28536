// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/blocks.h"

#include <cmath>

namespace borewright::test {

Workbook inchBlock(int bores, const std::vector<std::string>& depths) {
    Workbook workbook = emptyWorkbook();
    for (int number = 1; number <= bores; ++number) {
        Bore bore;
        bore.number = number;
        bore.standardSize = typedIn("3.5000");
        bore.depth = typedIn("4.00");
        bore.openEnd = "head face";
        for (const std::string& depth : depths)
            bore.levels.push_back({typedIn(depth), {}});
        workbook.block.bores.push_back(bore);
    }
    return workbook;
}

std::string addSurvey(Workbook& workbook, SurveyKind kind, const std::string& name) {
    Survey survey;
    survey.header.id = freshSurveyId(workbook);
    survey.header.name = name;
    survey.header.kind = kind;
    survey.header.time = {1'774'000'000, 60};
    survey.header.gauge.setSize = typedIn("3.5000");
    workbook.surveys.push_back(survey);
    return survey.header.id;
}

void type(Workbook& workbook, const std::string& survey, int bore, const std::string& depth,
          const std::string& axis, const std::string& thou) {
    Reading reading;
    reading.station = {bore, in(depth), axis};
    reading.typed = typedThou(thou);
    reading.time = {1'774'000'100, 60};
    findSurvey(workbook, survey)->readings.push_back(reading);
}

void typeShape(Workbook& workbook, const std::string& survey, int bore, const Shape& shape) {
    const Bore made = *findBore(workbook.block, bore);
    for (const Level& level : made.levels)
        for (const Axis& axis : workbook.block.axes) {
            const double thou = shape(level.depth.value().in(Unit::inch), axis.id);
            const Length tenths = Length::whole(std::lround(thou * 10), Unit::tenth);
            Reading reading;
            reading.station = {bore, level.depth.value(), axis.id};
            reading.typed = typedFrom(tenths, Unit::thou);
            reading.time = {1'774'000'100, 60};
            findSurvey(workbook, survey)->readings.push_back(reading);
        }
}

LimitSet& addWornLimits(Workbook& workbook, const std::string& size_in,
                        const std::string& round_thou, const std::string& taper_thou) {
    LimitSet set;
    set.id = freshLimitSetId(workbook);
    set.name = "worn";
    set.purpose = LimitPurpose::worn;
    if (!size_in.empty()) set.limits.sizeUpper = typedIn(size_in);
    if (!round_thou.empty()) set.limits.outOfRound = typedThou(round_thou);
    if (!taper_thou.empty()) set.limits.taper = typedThou(taper_thou);
    workbook.limitSets.push_back(set);
    return workbook.limitSets.back();
}

} // namespace borewright::test
