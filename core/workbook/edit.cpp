// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/workbook/edit.h"

#include "core/workbook/check.h"
#include "core/workbook/edit_checks.h"
#include "core/workbook/renumber.h"
#include "core/workbook/text_checks.h"

#include <algorithm>

namespace borewright {
namespace {

tl::unexpected<Error> noSurvey(const std::string& id) {
    return refuse("there is no survey '" + id + "'");
}

// Applies one alternative of Edit to a workbook; each overload returns the inverse.
struct Applier {
    Workbook& workbook;

    Result<Edit> operator()(const SetJob& edit) const {
        return SetJob{std::exchange(workbook.job, edit.job)};
    }

    Result<Edit> operator()(const SetBlock& edit) const {
        if (auto good = checkBlock(edit.block); !good) return tl::unexpected(good.error());
        if (auto good = keepsStations(workbook, edit.block); !good)
            return tl::unexpected(good.error());
        return SetBlock{std::exchange(workbook.block, edit.block)};
    }

    Result<Edit> operator()(const Renumber& edit) const { return renumber(workbook, edit); }

    Result<Edit> operator()(const MoveLevel& edit) const;

    Result<Edit> operator()(const SetLimitSets& edit) const {
        for (const LimitSet& set : edit.sets) {
            if (auto good = checkLimits(set.limits); !good)
                return tl::unexpected(good.error().within(set.name));
            for (const auto& [number, limits] : set.perBore)
                if (auto good = checkLimits(limits); !good)
                    return tl::unexpected(
                        good.error().within(set.name + ", bore " + std::to_string(number)));
            if (auto good = checkDecision(set.decision); !good)
                return tl::unexpected(good.error().within(set.name));
        }
        return SetLimitSets{std::exchange(workbook.limitSets, edit.sets)};
    }

    Result<Edit> operator()(const SetStraightAim& edit) const {
        return SetStraightAim{std::exchange(workbook.straightAim, edit.aim)};
    }

    Result<Edit> operator()(const SetSheetText& edit) const {
        return SetSheetText{std::exchange(workbook.sheet, edit.text)};
    }

    Result<Edit> operator()(const InsertSurvey& edit) const {
        if (findSurvey(workbook, edit.survey.header.id) != nullptr)
            return refuse("there is a survey '" + edit.survey.header.id + "' already");
        if (edit.index > workbook.surveys.size()) return refuse("no such place for a survey");
        if (auto good = checkHeader(edit.survey.header); !good) return tl::unexpected(good.error());
        workbook.surveys.insert(workbook.surveys.begin() + static_cast<std::ptrdiff_t>(edit.index),
                                edit.survey);
        return EraseSurvey{edit.survey.header.id};
    }

    Result<Edit> operator()(const EraseSurvey& edit) const {
        for (std::size_t i = 0; i < workbook.surveys.size(); ++i) {
            if (workbook.surveys[i].header.id != edit.survey) continue;
            if (std::ranges::find(workbook.hone.passes, edit.survey, &Pass::after) !=
                workbook.hone.passes.end())
                return refuse("the hone was at work after this survey, so it stays");
            InsertSurvey inverse{i, std::move(workbook.surveys[i])};
            workbook.surveys.erase(workbook.surveys.begin() + static_cast<std::ptrdiff_t>(i));
            return inverse;
        }
        return noSurvey(edit.survey);
    }

    Result<Edit> operator()(const SetSurveyHeader& edit) const {
        Survey* survey = findSurvey(workbook, edit.survey);
        if (survey == nullptr) return noSurvey(edit.survey);
        if (edit.header.id != edit.survey) return refuse("a survey keeps its id");
        if (auto good = checkHeader(edit.header); !good) return tl::unexpected(good.error());
        return SetSurveyHeader{edit.survey, std::exchange(survey->header, edit.header)};
    }

    Result<Edit> operator()(const InsertReading& edit) const {
        Survey* survey = findSurvey(workbook, edit.survey);
        if (survey == nullptr) return noSurvey(edit.survey);
        if (edit.index > survey->readings.size()) return refuse("no such place for a reading");
        survey->readings.insert(survey->readings.begin() + static_cast<std::ptrdiff_t>(edit.index),
                                edit.reading);
        return EraseReading{edit.survey, edit.index};
    }

    Result<Edit> operator()(const EraseReading& edit) const {
        Survey* survey = findSurvey(workbook, edit.survey);
        if (survey == nullptr) return noSurvey(edit.survey);
        if (edit.index >= survey->readings.size()) return refuse("there is no such reading");
        InsertReading inverse{edit.survey, edit.index, std::move(survey->readings[edit.index])};
        survey->readings.erase(survey->readings.begin() + static_cast<std::ptrdiff_t>(edit.index));
        return inverse;
    }

    Result<Edit> operator()(const SetStrike& edit) const {
        Survey* survey = findSurvey(workbook, edit.survey);
        if (survey == nullptr) return noSurvey(edit.survey);
        if (edit.index >= survey->readings.size()) return refuse("there is no such reading");
        return SetStrike{edit.survey, edit.index,
                         std::exchange(survey->readings[edit.index].struck, edit.strike)};
    }

    Result<Edit> operator()(const SetKept& edit) const {
        Survey* survey = findSurvey(workbook, edit.survey);
        if (survey == nullptr) return noSurvey(edit.survey);
        if (edit.index >= survey->readings.size()) return refuse("there is no such reading");
        return SetKept{edit.survey, edit.index,
                       std::exchange(survey->readings[edit.index].kept, edit.kept)};
    }

    Result<Edit> operator()(const SetStudies& edit) const {
        return SetStudies{std::exchange(workbook.studies, edit.studies)};
    }

    Result<Edit> operator()(const SetSizing& edit) const {
        const auto good =
            edit.restored ? checkSizing(edit.plan) : checkSizing(edit.plan, workbook.block);
        if (!good) return tl::unexpected(good.error());
        return SetSizing{std::exchange(workbook.sizing, edit.plan), true};
    }

    Result<Edit> operator()(const SetTargets& edit) const {
        if (auto good = checkTargets(edit.targets); !good) return tl::unexpected(good.error());
        return SetTargets{std::exchange(workbook.targets, edit.targets)};
    }

    Result<Edit> operator()(const SetFit& edit) const {
        const auto good = edit.restored ? checkFit(edit.fit) : checkFit(edit.fit, workbook.block);
        if (!good) return tl::unexpected(good.error());
        return SetFit{std::exchange(workbook.fit, edit.fit), true};
    }

    Result<Edit> operator()(const SetHone& edit) const {
        auto good = checkHone(edit.hone);
        if (good && !edit.restored) good = checkPasses(workbook, edit.hone);
        if (!good) return tl::unexpected(good.error());
        return SetHone{std::exchange(workbook.hone, edit.hone), true};
    }

    Result<Edit> operator()(const EditGroup& group) const {
        EditGroup inverse;
        for (const Edit& edit : group.edits) {
            auto undone = apply(workbook, edit);
            if (!undone) {
                // Roll back what was applied; the inverses of applied edits always apply.
                for (const Edit& back : inverse.edits)
                    (void)apply(workbook, back);
                return tl::unexpected(undone.error());
            }
            inverse.edits.insert(inverse.edits.begin(), std::move(*undone));
        }
        return inverse;
    }
};

bool hasLevel(const Bore& bore, Length depth) {
    return std::ranges::any_of(bore.levels,
                               [&](const Level& level) { return level.depth.value() == depth; });
}

void sortLevels(Bore& bore) {
    std::ranges::stable_sort(bore.levels, {},
                             [](const Level& level) { return level.depth.value(); });
}

Result<Edit> Applier::operator()(const MoveLevel& edit) const {
    const Length to = edit.to.value();
    const auto moves = [&](int number) { return edit.bore == 0 || edit.bore == number; };
    std::optional<TypedLength> before;
    for (const Bore& bore : workbook.block.bores) {
        if (!moves(bore.number) || !hasLevel(bore, edit.from)) continue;
        if (to != edit.from && hasLevel(bore, to))
            return refuse("depth", "bore " + std::to_string(bore.number) +
                                       " has a level at that depth already");
        for (const Level& level : bore.levels)
            if (level.depth.value() == edit.from) before = level.depth;
    }
    if (!before) return refuse("depth", "there is no level at that depth");
    // Readings taken at the new depth off the plan would be mixed with those that move.
    for (const Survey& survey : workbook.surveys)
        for (const Reading& reading : survey.readings)
            if (to != edit.from && reading.station.depth == to && moves(reading.station.bore))
                return refuse("depth", "readings were taken at that depth already");

    for (Bore& bore : workbook.block.bores) {
        if (!moves(bore.number) || !hasLevel(bore, edit.from)) continue;
        for (Level& level : bore.levels)
            if (level.depth.value() == edit.from) level.depth = edit.to;
        for (WallMark& mark : bore.wallMarks)
            if (mark.depth == edit.from) mark.depth = to;
        sortLevels(bore);
    }
    const auto carry = [&](Station& station) {
        if (station.depth == edit.from && moves(station.bore)) station.depth = to;
    };
    for (Survey& survey : workbook.surveys) {
        if (survey.header.asked)
            for (Station& station : *survey.header.asked)
                carry(station);
        for (Reading& reading : survey.readings)
            carry(reading.station);
    }
    return MoveLevel{edit.bore, to, *before};
}

} // namespace

Result<Edit> apply(Workbook& workbook, const Edit& edit) {
    if (auto good = checkTexts(edit); !good) return tl::unexpected(good.error());
    return std::visit(Applier{workbook}, edit);
}

Edit recordReading(const Workbook& workbook, const std::string& survey, const Reading& reading,
                   const std::optional<std::string>& replaceReason) {
    EditGroup group;
    const Survey* found = findSurvey(workbook, survey);
    const std::size_t end = found == nullptr ? 0 : found->readings.size();
    if (replaceReason)
        if (auto strike =
                strikeStations(workbook, survey, {reading.station}, {*replaceReason, reading.time}))
            group.edits.push_back(std::move(*strike));
    group.edits.push_back(InsertReading{survey, end, reading});
    return group.edits.size() == 1 ? group.edits.front() : Edit(std::move(group));
}

Edit acceptInstead(const Workbook& workbook, const std::string& survey, std::size_t index,
                   const TypedLength& value, const std::string& story, Timestamp now) {
    EditGroup group;
    const Survey* found = findSurvey(workbook, survey);
    group.edits.push_back(SetStrike{survey, index, Strike{story, now}});
    if (found == nullptr || index >= found->readings.size()) return group;
    Reading reading = found->readings[index];
    reading.typed = value;
    reading.struck.reset();
    reading.accepted = story;
    reading.kept = false;
    group.edits.push_back(InsertReading{survey, found->readings.size(), std::move(reading)});
    return group;
}

std::optional<Edit> strikeStations(const Workbook& workbook, const std::string& survey,
                                   const std::vector<Station>& stations, const Strike& strike) {
    EditGroup group;
    const Survey* found = findSurvey(workbook, survey);
    if (found == nullptr) return std::nullopt;
    for (std::size_t i = 0; i < found->readings.size(); ++i) {
        const Reading& reading = found->readings[i];
        if (!reading.struck && std::ranges::find(stations, reading.station) != stations.end())
            group.edits.push_back(SetStrike{survey, i, strike});
    }
    if (group.edits.empty()) return std::nullopt;
    return group;
}

} // namespace borewright
