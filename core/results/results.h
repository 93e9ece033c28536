// SPDX-License-Identifier: GPL-3.0-or-later
// All that is computed for a workbook, as one value. Screens, sheet, command line and CSV show
// this and compute nothing themselves.
#pragma once

#include "core/form/shape.h"
#include "core/gauging/slips.h"
#include "core/results/fit_result.h"
#include "core/results/hone_log.h"
#include "core/results/reckoning.h"
#include "core/results/sizing_result.h"
#include "core/verdict/remedy.h"
#include "core/verdict/verdict.h"

#include <optional>
#include <string>
#include <vector>

namespace borewright {

struct StationResult {
    Station station;
    Zone zone = Zone::unmapped;
    bool judged = true;             // counts for the verdict
    bool asked = true;              // the survey asked for it
    bool wall = true;               // the gauge finds wall here
    std::optional<Length> diameter; // mean of repeats, at 20 °C where corrected
    int repeats = 0;
    std::optional<Length> toGo; // finish size less diameter, signed
    std::optional<Length> u;    // standard uncertainty of the diameter, where known
    std::vector<std::string> odd;
    std::optional<std::string> refused;
};

struct BoreResult {
    int bore = 1;
    std::vector<StationResult> stations; // by depth, then axis in the order of the block
    int asked = 0;                       // stations with wall that the survey asked for
    int measured = 0;                    // of those
    std::optional<BoreForm> form;        // of the judged zone
    std::vector<Judgement> judgements;
    Verdict verdict = Verdict::notJudged; // the weightiest
    std::optional<Length> straightness;   // over every depth read
    AimAnswer straight = AimAnswer::noAim;
    std::shared_ptr<const BoreDoubt> doubt; // null: not known
    std::optional<Length> uMean;            // of the mean diameter and of the lead, standard
    std::optional<Length> uLead;
    std::optional<BoreShape> shape; // of the judged zone; nothing where the doubt is not known
    std::string shapeWords;         // the shape as a sentence part, or why none is named
    std::optional<Length> finishSize;
    std::optional<Length> leastToGo; // over all stations read
    std::optional<Length> mostToGo;
    // One word for the plan: a verdict's name, "7 of 12 read", or "4.3–6.6 to go" while honing.
    std::string word;
    // What it is that is outside, too close or not yet: "largest size, taper"; may be empty.
    std::string why;
    // Where something is too close to call: what would settle it.
    std::string settles;
};

// What a survey says of its own doubt, in sentences where it can.
struct SurveyDoubts {
    Budget budget;                     // of one reading
    DecisionRule rule;                 // that the verdicts were made by
    std::vector<std::string> prospect; // what this gear can decide
    std::vector<Remedy> sizeRemedies;  // most helpful first
    std::vector<Remedy> differenceRemedies;
    std::vector<std::string> warnings; // warmth, zero that moved
    std::string settles;               // what would settle most that is too close to call
};

struct SurveyResult {
    std::string survey;   // id
    std::string judgedBy; // name of the limit set, or why nothing is judged
    bool hasLimits = false;
    bool temperatureCorrected = false;
    std::vector<BoreResult> bores; // those asked for or read, by number
    Verdict verdict = Verdict::notJudged;
    int asked = 0;
    int measured = 0;
    SurveyDoubts doubts;
    std::vector<Suspicion> suspicions; // readings that look like slips, with their stories
};

// What the customer reads: a bore's first survey as found against its last.
struct BoreStory {
    int bore = 1;
    std::optional<std::string> wasSurvey; // id of the first survey as found that read this bore
    std::optional<std::string> nowSurvey; // id of the last final (else check) that read it
    bool plateDiffers = false; // one was read with the plate on, the other not: no fair comparison
};

struct Results {
    std::vector<SurveyResult> surveys; // as in the workbook
    std::vector<BoreStory> stories;    // one a bore, by number
    SizingResult sizing;
    FitResult fit;
    HoneLog hone;
    std::vector<std::string> summary; // the customer's sentences, suggested from the data
};

// Computes everything. `units` is only for words (summary, word). Doubts come whole.
Results compute(const Workbook& workbook, const DisplayUnits& units);
// The same with doubts as `memory` has them, and what it lacks by `reckoning`.
Results compute(const Workbook& workbook, const DisplayUnits& units, DoubtMemory& memory,
                Reckoning reckoning);
// The same after nothing but readings of one survey changed: `before` is what was computed until
// then, with the same units; only that survey, the stories and the sentences are computed anew.
Results computeAgain(const Workbook& workbook, const DisplayUnits& units, Results before,
                     const std::string& survey, DoubtMemory& memory, Reckoning reckoning);

// The two halves of that: the survey alone, after which stories, size, fit and sentences are those
// of before; and these again from what the surveys say now.
Results computeSurvey(const Workbook& workbook, const DisplayUnits& units, Results before,
                      const std::string& survey, DoubtMemory& memory, Reckoning reckoning);
void conclude(const Workbook& workbook, const DisplayUnits& units, Results& results);

const SurveyResult* findResult(const Results& results, const std::string& survey);
const BoreResult* findBoreResult(const SurveyResult& survey, int bore);
const StationResult* findStation(const BoreResult& bore, Length depth, const std::string& axis);

// The customer's sentences (also inside compute()).
std::vector<std::string> suggestSummary(const Workbook& workbook, const Results& results,
                                        const DisplayUnits& units);

} // namespace borewright
