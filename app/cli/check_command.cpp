// SPDX-License-Identifier: GPL-3.0-or-later
// borewright check: a row a bore, and an exit status that a script can act on.
#include "app/cli/commands.h"
#include "app/cli/common.h"
#include "core/results/doubt_words.h"

#include <ostream>

namespace borewright {
namespace {

using Cells = std::vector<std::string>;

std::string shown(const std::optional<Length>& length, Unit unit) {
    return length ? format(*length, unit, usualDecimals(unit), Sign::plain) : "-";
}

// Behind a value: " ±0.3" in the small unit, or nothing where the doubt is not known.
std::string doubted(const std::string& value, const std::optional<Around>& around,
                    const DisplayUnits& units) {
    return around && value != "-" ? value + " " + aroundText(*around, units) : value;
}

std::string shownLead(const std::optional<Length>& lead, Unit unit) {
    const std::string text = shown(lead, unit);
    const bool shownAsZero = text.find_first_of("123456789") == std::string::npos;
    return lead && *lead > Length() && !shownAsZero ? "+" + text : text;
}

std::string toGo(const BoreResult& bore, Unit unit) {
    if (!bore.leastToGo) return "-";
    const std::string least = shown(bore.leastToGo, unit);
    const std::string most = shown(bore.mostToGo, unit);
    return least == most ? least : least + " to " + most;
}

Cells heads(const DisplayUnits& units, bool finish, bool known) {
    const std::string size = ", " + std::string(symbol(units.size)) +
                             (known ? " ± " + std::string(symbol(units.small)) : "");
    const std::string small = ", " + std::string(symbol(units.small));
    Cells cells{"bore",          "largest" + size, "smallest" + size, "out-of-round" + small,
                "taper" + small, "lead" + small,   "straight" + small};
    if (finish) cells.push_back("to go" + small);
    if (known) cells.push_back("shape");
    cells.insert(cells.end(), {"read", "verdict"});
    return cells;
}

Cells row(const BoreResult& bore, const DisplayUnits& units, bool finish, const Budget& budget) {
    std::optional<Length> largest, smallest, outOfRound, taper, lead;
    if (bore.form) {
        largest = bore.form->largest.value;
        smallest = bore.form->smallest.value;
        if (bore.form->outOfRound) outOfRound = bore.form->outOfRound->value;
        if (bore.form->worstTaper) taper = bore.form->worstTaper->taper;
        lead = bore.form->lead;
    }
    Cells cells{std::to_string(bore.bore),
                doubted(shown(largest, units.size), around(bore, Quality::largestSize), units),
                doubted(shown(smallest, units.size), around(bore, Quality::smallestSize), units),
                doubted(shown(outOfRound, units.small), around(bore, Quality::outOfRound), units),
                doubted(shown(taper, units.small), around(bore, Quality::taper), units),
                doubted(shownLead(lead, units.small), aroundLead(bore, budget), units),
                doubted(shown(bore.straightness, units.small), aroundStraightness(bore), units)};
    if (finish) cells.push_back(toGo(bore, units.small));
    if (budget.known()) cells.push_back(bore.shape ? shapeWord(*bore.shape) : "-");
    cells.push_back(std::to_string(bore.measured) + " of " + std::to_string(bore.asked));
    std::string verdict(nameOf(bore.verdict));
    if (!bore.why.empty()) verdict += ": " + bore.why;
    cells.push_back(verdict);
    return cells;
}

// The limits that all bores share, as the last row; empty where they share none.
Cells limitsRow(const SurveyResult& survey, const DisplayUnits& units, bool finish) {
    Cells cells{"limit", "", "", "", "", "", ""};
    if (finish) cells.push_back("");
    if (survey.doubts.budget.known()) cells.push_back("");
    cells.insert(cells.end(), {"", ""});
    bool any = false;
    for (const std::size_t i : {0U, 1U, 2U, 3U}) {
        std::optional<Length> limit = survey.bores.front().judgements[i].limit;
        for (const BoreResult& bore : survey.bores)
            if (bore.judgements[i].limit != limit) limit.reset();
        if (!limit) continue;
        cells[i + 1] = shown(limit, i < 2 ? units.size : units.small);
        any = true;
    }
    return any ? cells : Cells();
}

std::vector<Cells> tableOf(const SurveyResult& result, const DisplayUnits& units, bool finish) {
    const Budget& budget = result.doubts.budget;
    std::vector<Cells> rows{heads(units, finish, budget.known())};
    for (const BoreResult& bore : result.bores)
        rows.push_back(row(bore, units, finish, budget));
    if (result.bores.empty()) return rows;
    const Cells limits = limitsRow(result, units, finish);
    if (!limits.empty()) rows.push_back(limits);
    return rows;
}

// What the figures are worth, what the verdicts were called by, and what would settle the rest.
std::string doubtSentences(const SurveyResult& survey, const DisplayUnits& units) {
    std::string text = trustWords(survey.doubts.budget, units) + "\n";
    for (const std::string& warning : survey.doubts.warnings)
        text += warning + "\n";
    if (const std::string called = calledWords(survey, units); !called.empty())
        text += called + "\n";
    for (const BoreResult& bore : survey.bores)
        if (bore.verdict == Verdict::tooCloseToCall && !bore.settles.empty())
            text += "Bore " + std::to_string(bore.bore) + ", too close to call: " + bore.settles +
                    ".\n";
    return text;
}

int statusOf(const SurveyResult& survey) {
    bool undecided = survey.bores.empty() || survey.measured < survey.asked;
    for (const BoreResult& bore : survey.bores) {
        for (const Judgement& judgement : bore.judgements)
            if (judgement.verdict == Verdict::outside || judgement.verdict == Verdict::notYet)
                return exitOutside;
        undecided = undecided || bore.verdict != Verdict::within;
    }
    return undecided ? exitUndecided : exitWithin;
}

std::string conclusion(const SurveyResult& survey) {
    if (!survey.hasLimits) return "Nothing is judged: " + survey.judgedBy + ".";
    const std::string judged = "Judged by the limits '" + survey.judgedBy + "': ";
    switch (statusOf(survey)) {
    case exitWithin:
        return judged + "all within.";
    case exitOutside:
        return judged + std::string(survey.verdict == Verdict::notYet ? "not yet there."
                                                                      : "not all within.");
    default:
        break;
    }
    if (survey.measured < survey.asked)
        return judged + std::to_string(survey.measured) + " of " + std::to_string(survey.asked) +
               " readings that were asked for are there.";
    return judged + "not all could be decided.";
}

} // namespace

Result<int> checkCommand(const CheckOptions& options, const CliOutside& outside) {
    if (!options.code.empty()) return codeCommand(options, outside);
    if (options.json) return refuse("--json", "goes with --code");
    const auto workbook = loadNamed(outside.files, options.file);
    if (!workbook) return tl::unexpected(workbook.error());
    const auto units = chooseUnits(*workbook, options.units);
    if (!units) return tl::unexpected(units.error());
    if (workbook->surveys.empty() && options.survey.empty()) {
        outside.out << "Nothing has been measured yet.\n";
        return exitUndecided;
    }
    const auto survey = chooseSurvey(*workbook, options.survey);
    if (!survey) return tl::unexpected(survey.error());

    const Results results = compute(*workbook, *units);
    const SurveyResult& result = *findResult(results, (*survey)->header.id);
    const bool finish = purposeOf((*survey)->header.kind) == LimitPurpose::finish;
    outside.out << "Survey '" << (*survey)->header.name << "', " << nameOf((*survey)->header.kind)
                << ", " << dateInWords((*survey)->header.time)
                << (workbook->invented ? "; invented for demonstration" : "") << ".\n"
                << alignedTable(tableOf(result, *units, finish)) << doubtSentences(result, *units)
                << conclusion(result) << "\n";
    return statusOf(result);
}

} // namespace borewright
