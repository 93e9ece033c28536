// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/workbook/bring_back.h"

#include <algorithm>

namespace borewright {
namespace {

Result<void> fits(const Workbook& now, const Survey& survey) {
    const auto stands = [&](const Station& station) -> Result<void> {
        if (findBore(now.block, station.bore) == nullptr)
            return refuse("it reads bore " + std::to_string(station.bore) +
                          ", which the block has no more");
        if (findAxis(now.block, station.axis) == nullptr)
            return refuse("it reads axis " + station.axis + ", which the block has no more");
        return {};
    };
    for (const Reading& reading : survey.readings)
        if (auto good = stands(reading.station); !good) return good;
    if (survey.header.asked)
        for (const Station& station : *survey.header.asked)
            if (auto good = stands(station); !good) return good;
    if (survey.header.limitSet && findLimitSet(now, *survey.header.limitSet) == nullptr)
        return refuse("the limits that it was judged by are gone");
    return {};
}

} // namespace

Edit bringBack(const Workbook& now, const Workbook& earlier) {
    EditGroup group;
    // Passes hold on to the surveys before them, surveys to bores and axes of the block: they go
    // first and come last.
    group.edits.push_back(SetHone{HoneRecord(), true});
    for (const Survey& survey : now.surveys)
        group.edits.push_back(EraseSurvey{survey.header.id});
    group.edits.push_back(SetBlock{earlier.block});
    group.edits.push_back(SetLimitSets{earlier.limitSets});
    for (std::size_t i = 0; i < earlier.surveys.size(); ++i)
        group.edits.push_back(InsertSurvey{i, earlier.surveys[i]});
    group.edits.push_back(SetHone{earlier.hone, true});
    group.edits.push_back(SetStudies{earlier.studies});
    group.edits.push_back(SetSizing{earlier.sizing, true});
    group.edits.push_back(SetTargets{earlier.targets});
    group.edits.push_back(SetFit{earlier.fit, true});
    group.edits.push_back(SetStraightAim{earlier.straightAim});
    group.edits.push_back(SetSheetText{earlier.sheet});
    group.edits.push_back(SetJob{earlier.job});
    return group;
}

Result<Edit> bringBackSurvey(const Workbook& now, const Workbook& earlier, const std::string& id) {
    const Survey* before = findSurvey(earlier, id);
    if (before == nullptr) return refuse("there was no such survey");
    if (auto good = fits(now, *before); !good) return tl::unexpected(good.error());
    const Survey* current = findSurvey(now, id);
    if (current == nullptr) {
        const auto place = static_cast<std::size_t>(before - earlier.surveys.data());
        return InsertSurvey{std::min(place, now.surveys.size()), *before};
    }
    EditGroup group;
    group.edits.push_back(SetSurveyHeader{id, before->header});
    for (std::size_t i = current->readings.size(); i > 0; --i)
        group.edits.push_back(EraseReading{id, i - 1});
    for (std::size_t i = 0; i < before->readings.size(); ++i)
        group.edits.push_back(InsertReading{id, i, before->readings[i]});
    return group;
}

} // namespace borewright
