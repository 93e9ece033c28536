// SPDX-License-Identifier: GPL-3.0-or-later
// Every change of a workbook is an Edit. Applying one returns its inverse, so undo is tested
// without a window: apply(apply(edit)) leaves the workbook equal to what it was.
#pragma once

#include "core/workbook/workbook.h"

#include <cstddef>
#include <memory>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace borewright {

struct SetJob {
    Job job;
};
// Replaces arrangement, bores, axes. Readings at a depth that is no longer on the plan stay.
struct SetBlock {
    Block block;
};
// Gives bores other engine numbers: (from, to), applied together, in the block, in every reading,
// asked station and limit. The new numbers must be as distinct as the old.
struct Renumber {
    std::vector<std::pair<int, int>> numbers;
};
// Corrects the depth of a level of one bore, or of every bore having it (bore = 0), and carries
// wall marks, readings and asked stations along. Refused where the new depth is taken.
struct MoveLevel {
    int bore = 0;
    Length from;
    TypedLength to;
};
struct SetLimitSets {
    std::vector<LimitSet> sets;
};
struct SetStraightAim {
    std::optional<TypedLength> aim;
};
struct SetSheetText {
    SheetText text;
};
struct InsertSurvey {
    std::size_t index = 0;
    Survey survey;
};
// Refused by the document for a survey with readings; the inverse of InsertSurvey needs it. Refused
// where a pass of the hone was logged after it, which it places.
struct EraseSurvey {
    std::string survey;
};
struct SetSurveyHeader {
    std::string survey;  // id
    SurveyHeader header; // its id must be the same
};
struct InsertReading {
    std::string survey;
    std::size_t index = 0;
    Reading reading;
};
// Only to undo an InsertReading: the user strikes out.
struct EraseReading {
    std::string survey;
    std::size_t index = 0;
};
struct SetStrike {
    std::string survey;
    std::size_t index = 0;
    std::optional<Strike> strike;
};
// "I looked again; it stays as it is", or takes that back.
struct SetKept {
    std::string survey;
    std::size_t index = 0;
    bool kept = true;
};
struct SetStudies {
    std::vector<RepeatStudy> studies;
};
struct SetSizing {
    SizingPlan plan;
    // Of an inverse: what stood before stands again, though it may not fit the block, as a file's
    // may not.
    bool restored = false;
};
struct SetTargets {
    FinishTargets targets;
};
struct SetFit {
    FitRecord fit;
    bool restored = false; // as of SetSizing
};
// Refused for a pass after a survey that is not there, or one that does not fit its bore; one whose
// work and stone are as they were stands though its bore was changed since.
struct SetHone {
    HoneRecord hone;
    bool restored = false; // as of SetSizing
};
struct EditGroup;

using Edit =
    std::variant<SetJob, SetBlock, Renumber, MoveLevel, SetLimitSets, SetStraightAim, SetSheetText,
                 InsertSurvey, EraseSurvey, SetSurveyHeader, InsertReading, EraseReading, SetStrike,
                 SetKept, SetStudies, SetSizing, SetTargets, SetFit, SetHone, EditGroup>;

// Several edits that are one step to the user: all are applied, or none.
struct EditGroup {
    std::vector<Edit> edits;
};

// Applies `edit` and returns its inverse. Refuses, leaving the workbook as it was, what names a
// survey, reading or bore that is not there.
Result<Edit> apply(Workbook& workbook, const Edit& edit);

// What a typed reading at a station becomes as edits: appended to the survey; where `replaceReason`
// is given, unstruck readings already at the station are struck out with it first.
Edit recordReading(const Workbook& workbook, const std::string& survey, const Reading& reading,
                   const std::optional<std::string>& replaceReason);
// Takes `value` in place of the reading `index`, which is struck out with `story` as its reason.
// The new reading keeps the station and the time of the old: it is what the dial showed then.
Edit acceptInstead(const Workbook& workbook, const std::string& survey, std::size_t index,
                   const TypedLength& value, const std::string& story, Timestamp now);
// Strikes out every unstruck reading at the stations; nothing where there is none.
std::optional<Edit> strikeStations(const Workbook& workbook, const std::string& survey,
                                   const std::vector<Station>& stations, const Strike& strike);

} // namespace borewright
