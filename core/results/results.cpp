// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/results/results.h"

#include "core/results/survey_computer.h"

#include <algorithm>
#include <set>

namespace borewright {
namespace {

bool hasRead(const SurveyResult& survey, int bore) {
    const BoreResult* result = findBoreResult(survey, bore);
    return result != nullptr && result->measured > 0;
}

BoreStory storyOf(const Workbook& workbook, const Results& results, int bore) {
    BoreStory story;
    story.bore = bore;
    const SurveyHeader* was = nullptr;
    const SurveyHeader* now = nullptr;
    for (std::size_t i = 0; i < workbook.surveys.size(); ++i) {
        const SurveyHeader& header = workbook.surveys[i].header;
        if (!hasRead(results.surveys[i], bore)) continue;
        if (purposeOf(header.kind) == LimitPurpose::worn) {
            if (was == nullptr) was = &header;
        } else if (now == nullptr || header.kind == SurveyKind::final ||
                   now->kind == SurveyKind::check) {
            now = &header;
        }
    }
    if (was != nullptr) story.wasSurvey = was->id;
    if (now != nullptr) story.nowSurvey = now->id;
    story.plateDiffers = was != nullptr && now != nullptr && was->plate != now->plate;
    return story;
}

} // namespace

void conclude(const Workbook& workbook, const DisplayUnits& units, Results& results) {
    std::set<int> numbers;
    for (const Bore& bore : workbook.block.bores)
        numbers.insert(bore.number);
    results.stories.clear();
    for (const int number : numbers)
        results.stories.push_back(storyOf(workbook, results, number));
    results.sizing = sizingOf(workbook, results, units);
    results.fit = fitOf(workbook, results, units);
    results.hone = honeLogOf(workbook, results, units);
    results.summary = suggestSummary(workbook, results, units);
}

Results compute(const Workbook& workbook, const DisplayUnits& units) {
    DoubtMemory memory;
    return compute(workbook, units, memory, Reckoning::whole);
}

Results compute(const Workbook& workbook, const DisplayUnits& units, DoubtMemory& memory,
                Reckoning reckoning) {
    Results results;
    for (const Survey& survey : workbook.surveys)
        results.surveys.push_back(
            SurveyComputer(workbook, survey, units, memory, reckoning).compute());
    conclude(workbook, units, results);
    return results;
}

Results computeSurvey(const Workbook& workbook, const DisplayUnits& units, Results before,
                      const std::string& survey, DoubtMemory& memory, Reckoning reckoning) {
    if (before.surveys.size() != workbook.surveys.size())
        return compute(workbook, units, memory, reckoning);
    for (std::size_t i = 0; i < workbook.surveys.size(); ++i)
        if (workbook.surveys[i].header.id == survey)
            before.surveys[i] =
                SurveyComputer(workbook, workbook.surveys[i], units, memory, reckoning).compute();
    return before;
}

Results computeAgain(const Workbook& workbook, const DisplayUnits& units, Results before,
                     const std::string& survey, DoubtMemory& memory, Reckoning reckoning) {
    Results now = computeSurvey(workbook, units, std::move(before), survey, memory, reckoning);
    conclude(workbook, units, now);
    return now;
}

const SurveyResult* findResult(const Results& results, const std::string& survey) {
    const auto found = std::ranges::find(results.surveys, survey, &SurveyResult::survey);
    return found == results.surveys.end() ? nullptr : &*found;
}

const BoreResult* findBoreResult(const SurveyResult& survey, int bore) {
    const auto found = std::ranges::find(survey.bores, bore, &BoreResult::bore);
    return found == survey.bores.end() ? nullptr : &*found;
}

const StationResult* findStation(const BoreResult& bore, Length depth, const std::string& axis) {
    for (const StationResult& station : bore.stations)
        if (station.station.depth == depth && station.station.axis == axis) return &station;
    return nullptr;
}

} // namespace borewright
