// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/workbook/workbook.h"

#include <algorithm>

namespace borewright {
namespace {

template<class Items, class IdOf>
std::string freshId(const Items& items, const std::string& prefix, IdOf idOf) {
    for (std::size_t n = items.size() + 1;; ++n) {
        const std::string id = prefix + std::to_string(n);
        if (std::ranges::none_of(items, [&](const auto& item) { return idOf(item) == id; }))
            return id;
    }
}

} // namespace

Workbook emptyWorkbook() {
    Workbook workbook;
    workbook.block.axes = usualAxes();
    workbook.straightAim = *readTyped("0.00025", Unit::inch);
    return workbook;
}

const Survey* findSurvey(const Workbook& workbook, const std::string& id) {
    for (const Survey& survey : workbook.surveys)
        if (survey.header.id == id) return &survey;
    return nullptr;
}

Survey* findSurvey(Workbook& workbook, const std::string& id) {
    for (Survey& survey : workbook.surveys)
        if (survey.header.id == id) return &survey;
    return nullptr;
}

const LimitSet* findLimitSet(const Workbook& workbook, const std::string& id) {
    const auto found = std::ranges::find(workbook.limitSets, id, &LimitSet::id);
    return found == workbook.limitSets.end() ? nullptr : &*found;
}

std::string freshSurveyId(const Workbook& workbook) {
    return freshId(workbook.surveys, "s", [](const Survey& survey) { return survey.header.id; });
}

std::string freshLimitSetId(const Workbook& workbook) {
    return freshId(workbook.limitSets, "l", [](const LimitSet& set) { return set.id; });
}

std::string freshStudyId(const Workbook& workbook) {
    return freshId(workbook.studies, "r", [](const RepeatStudy& study) { return study.id; });
}

LimitPurpose purposeOf(SurveyKind kind) {
    return kind == SurveyKind::asFound || kind == SurveyKind::beforeBoring ? LimitPurpose::worn
                                                                           : LimitPurpose::finish;
}

Result<const LimitSet*> judgingSet(const Workbook& workbook, const SurveyHeader& survey) {
    const LimitPurpose purpose = purposeOf(survey.kind);
    const char* word = purpose == LimitPurpose::worn ? "worn" : "finish";
    if (survey.limitSet) {
        const LimitSet* set = findLimitSet(workbook, *survey.limitSet);
        if (set == nullptr) return refuse("the limits chosen for this survey are gone");
        return set;
    }
    const LimitSet* only = nullptr;
    for (const LimitSet& set : workbook.limitSets) {
        if (set.purpose != purpose) continue;
        if (only != nullptr)
            return refuse(std::string("several sets of ") + word +
                          " limits are entered: choose the one that judges this survey");
        only = &set;
    }
    if (only == nullptr)
        return refuse(std::string("no ") + word + " limits are entered, so nothing is judged");
    return only;
}

std::vector<Station> askedStations(const Workbook& workbook, const SurveyHeader& survey) {
    if (!survey.asked) return plannedStations(workbook.block);
    return *survey.asked;
}

std::string describe(const Station& station, const Block& block) {
    const Bore* bore = findBore(block, station.bore);
    const bool metric = bore != nullptr && bore->depth && !isInchFamily(bore->depth->unit());
    const DisplayUnits units = metric ? DisplayUnits::metric() : DisplayUnits::inch();
    return "bore " + std::to_string(station.bore) + ", " + depthWithUnit(station.depth, units) +
           ", " + station.axis;
}

DisplayUnits naturalUnits(const Workbook& workbook) {
    for (const Bore& bore : workbook.block.bores)
        if (bore.standardSize)
            return isInchFamily(bore.standardSize->unit()) ? DisplayUnits::inch()
                                                           : DisplayUnits::metric();
    return DisplayUnits::inch();
}

std::optional<Length> finishSizeFor(const Workbook& workbook, const LimitSet& set,
                                    const Bore& bore) {
    const auto target = workbook.targets.find(bore.number);
    if (set.purpose == LimitPurpose::finish && target != workbook.targets.end())
        return target->second.size.value();
    return finishSizeFor(set, bore);
}

} // namespace borewright
