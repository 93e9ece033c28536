// SPDX-License-Identifier: GPL-3.0-or-later
// What was recorded about one job. A plain value: everything that can be computed from it lives in
// results/, everything that changes it is an Edit (edit.h).
#pragma once

#include "core/length/format.h"
#include "core/workbook/block.h"
#include "core/workbook/fit_record.h"
#include "core/workbook/history.h"
#include "core/workbook/hone_record.h"
#include "core/workbook/limits.h"
#include "core/workbook/sizing_plan.h"
#include "core/workbook/survey.h"

#include <optional>
#include <string>
#include <vector>

namespace borewright {

struct Job {
    std::string customer;
    std::string engine;
    std::string serial;
    std::string reason; // why it came
    std::string measuredBy;
    std::string notes;
    UnknownFields unknown;
    friend bool operator==(const Job&, const Job&) = default;
};

// What the user changed on the sheet.
struct SheetText {
    std::optional<std::string> summary; // the customer's sentences; nothing = as suggested
    UnknownFields unknown{};
    friend bool operator==(const SheetText&, const SheetText&) = default;
};

struct Workbook {
    Job job;
    Block block;
    std::vector<LimitSet> limitSets;
    // Tighter than any limit, answered "met" or "not yet", never a verdict: largest less smallest
    // along an axis over every depth read. Nothing = no aim.
    std::optional<TypedLength> straightAim;
    std::vector<Survey> surveys;      // in the order made
    std::vector<RepeatStudy> studies; // of the gauge's repeatability
    SizingPlan sizing;
    FinishTargets targets; // what the hone aims at, by bore; else the finish set's size
    FitRecord fit;
    HoneRecord hone; // stones, and what was honed with them
    SheetText sheet;
    bool invented = false; // a demonstration: said on every sheet
    History history;       // who changed what and when; sheets that were printed
    UnknownFields unknown;
    friend bool operator==(const Workbook&, const Workbook&) = default;
};

// An empty workbook with the usual axes and an aim of 0.00025 in.
Workbook emptyWorkbook();

const Survey* findSurvey(const Workbook& workbook, const std::string& id);
Survey* findSurvey(Workbook& workbook, const std::string& id);
const LimitSet* findLimitSet(const Workbook& workbook, const std::string& id);

// The next free id with this prefix: "s3".
std::string freshSurveyId(const Workbook& workbook);
std::string freshLimitSetId(const Workbook& workbook);
std::string freshStudyId(const Workbook& workbook);

// Which limits judge a survey: the set it names; else the only set of its kind's purpose. Refuses,
// saying why, where there is none or where several wait for a choice.
Result<const LimitSet*> judgingSet(const Workbook& workbook, const SurveyHeader& survey);
LimitPurpose purposeOf(SurveyKind kind);

// The size the hone aims at in a bore under a finish set: its target, else the set's finish size,
// else standard size + oversize.
std::optional<Length> finishSizeFor(const Workbook& workbook, const LimitSet& set,
                                    const Bore& bore);

// The stations a survey asks for: its own list, or the whole plan.
std::vector<Station> askedStations(const Workbook& workbook, const SurveyHeader& survey);

// "bore 3, 1.75 in, B": a station in a sentence, for undo texts and messages.
std::string describe(const Station& station, const Block& block);

// The units a workbook is naturally shown in: those its standard size was typed in.
DisplayUnits naturalUnits(const Workbook& workbook);

} // namespace borewright
