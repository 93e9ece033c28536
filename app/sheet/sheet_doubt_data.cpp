// SPDX-License-Identifier: GPL-3.0-or-later
// What the sheet says of its own doubt: cautions, shapes, and the budget of each gear.
#include "app/pictures/reading_words.h"
#include "app/sheet/sheet_data.h"
#include "core/results/doubt_words.h"
#include "core/results/words.h"

#include <algorithm>

namespace borewright {
namespace {

std::vector<const SurveyResult*> toldResults(const Workbook& workbook, const Results& results) {
    std::vector<const SurveyResult*> told;
    for (const SurveyHeader* header : toldSurveys(workbook, results))
        if (const SurveyResult* result = findResult(results, header->id)) told.push_back(result);
    return told;
}

QString capital(QString text) {
    if (!text.isEmpty()) text[0] = text[0].toUpper();
    return text;
}

// The largest of what the gauge alone would show on a perfect bore.
std::optional<Length> gaugeAlone(const SurveyResult& survey, Quality quality) {
    std::optional<Length> most;
    for (const BoreResult& bore : survey.bores)
        for (const Judgement& judgement : bore.judgements)
            if (judgement.quality == quality && judgement.gaugeAlone)
                most = std::max(most.value_or(Length()), *judgement.gaugeAlone);
    return most;
}

QStringList sentencesOf(const SurveyResult& survey, const DisplayUnits& units) {
    QStringList sentences;
    const auto round = gaugeAlone(survey, Quality::outOfRound);
    const auto taper = gaugeAlone(survey, Quality::taper);
    const auto shown = [&](Length length) {
        return qs(smallWithUnit(length, units, Sign::negative, 1));
    };
    if (round && taper)
        sentences << SheetWords::tr("On a perfect bore this gauge alone would show about %1 out of "
                                    "round and %2 of taper.")
                         .arg(shown(*round), shown(*taper));
    sentences << qs(calledWords(survey, units));
    for (const std::string& warning : survey.doubts.warnings)
        sentences << qs(warning);
    sentences.removeAll(QString());
    return sentences;
}

// Another size a little larger moves nothing that anybody could read off the bars.
bool looksAlike(const SheetBudget& a, const SheetBudget& b) {
    const auto same = [](const BudgetBar& one, const BudgetBar& other) {
        return one.source == other.source && one.word == other.word;
    };
    return a.trust == b.trust && std::ranges::equal(a.bars.bars, b.bars.bars, same);
}

// The rules of the surveys told, each once.
QString rulesOf(const std::vector<const SurveyResult*>& told) {
    QStringList rules;
    for (const SurveyResult* survey : told)
        if (survey->hasLimits && survey->doubts.budget.known())
            rules << qs(ruleWords(survey->doubts.rule));
    rules.removeDuplicates();
    return rules.join(SheetWords::tr(" or "));
}

} // namespace

QStringList sheetCautions(const Workbook& workbook, const Results& results) {
    const auto told = toldResults(workbook, results);
    const bool known = std::ranges::any_of(
        told, [](const SurveyResult* survey) { return survey->doubts.budget.known(); });
    const bool all = std::ranges::all_of(
        told, [](const SurveyResult* survey) { return survey->doubts.budget.known(); });
    QStringList cautions;
    if (known) {
        const QString rule = rulesOf(told);
        cautions << (rule.isEmpty() ? SheetWords::tr("± at 95 %.")
                                    : SheetWords::tr("± at 95 %; called with %1; how far these "
                                                     "figures can be trusted stands overleaf.")
                                          .arg(rule));
    }
    if (!known || !all)
        cautions << (known
                         ? SheetWords::tr("Where no ± stands the doubt of the gauge is not known, "
                                          "and each value is compared with its limit as it "
                                          "stands.")
                         : SheetWords::tr("The doubt of the gauge is not known to this sheet, so "
                                          "each value is compared with its limit as it stands."));
    cautions << SheetWords::tr("A two-point gauge does not see an odd number of lobes.")
             << SheetWords::tr("The engine maker's manual rules over this sheet.");
    return cautions;
}

QStringList sheetShapes(const Results& results) {
    std::vector<std::pair<std::string, std::vector<int>>> shapes;
    for (const BoreStory& story : results.stories) {
        const auto& id = story.nowSurvey ? story.nowSurvey : story.wasSurvey;
        const SurveyResult* survey = id ? findResult(results, *id) : nullptr;
        const BoreResult* bore = survey != nullptr ? findBoreResult(*survey, story.bore) : nullptr;
        if (bore == nullptr || !bore->shape) continue;
        auto same =
            std::ranges::find(shapes, bore->shapeWords, &decltype(shapes)::value_type::first);
        if (same == shapes.end()) same = shapes.insert(same, {bore->shapeWords, {}});
        same->second.push_back(story.bore);
    }
    QStringList lines;
    for (const auto& [words, bores] : shapes) {
        const QString list = qs(listed(bores));
        lines << (bores.size() == 1 ? SheetWords::tr("Bore %1: %2.")
                                    : SheetWords::tr("Bores %1: %2."))
                     .arg(list, qs(words));
    }
    return lines;
}

std::vector<SheetBudget> sheetBudgets(const Workbook& workbook, const Results& results,
                                      const DisplayUnits& units) {
    auto told = toldSurveys(workbook, results);
    std::ranges::stable_sort(told, std::greater{}, [](const SurveyHeader* header) {
        return purposeOf(header->kind) == LimitPurpose::finish;
    });
    std::vector<SheetBudget> budgets;
    for (const SurveyHeader* header : told) {
        const SurveyResult* survey = findResult(results, header->id);
        if (survey == nullptr || !survey->doubts.budget.known()) continue;
        const Budget& budget = survey->doubts.budget;
        SheetBudget made;
        made.title = capital(qs(header->name));
        made.rows = budgetRows(budget, units);
        made.trust = qs(trustWords(budget, units));
        made.bars = budgetBarsData(budget, units);
        const auto same = std::ranges::find_if(
            budgets, [&](const SheetBudget& other) { return looksAlike(other, made); });
        if (same != budgets.end()) {
            same->title += QStringLiteral(", ") + qs(header->name);
            for (const QString& sentence : sentencesOf(*survey, units))
                if (!same->sentences.contains(sentence))
                    same->sentences
                        << SheetWords::tr("%1: %2").arg(capital(qs(header->name)), sentence);
            continue;
        }
        made.heads = budgetHeads(units);
        made.sums = budgetSums(budget, units);
        made.sentences = sentencesOf(*survey, units);
        budgets.push_back(std::move(made));
    }
    return budgets;
}

} // namespace borewright
