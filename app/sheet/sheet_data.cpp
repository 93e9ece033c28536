// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/sheet/sheet_data.h"

#include "app/pictures/reading_words.h"
#include "app/sheet/check_code.h"

#include <algorithm>

namespace borewright {
namespace {

void add(std::vector<SheetFact>& facts, const QString& name, const QString& value) {
    if (!value.trimmed().isEmpty()) facts.push_back({name, value.trimmed()});
}

// "11 March 2026 to 13 March 2026".
QString datesOf(const Workbook& workbook) {
    if (workbook.surveys.empty()) return {};
    const auto [first, last] = std::ranges::minmax_element(
        workbook.surveys, {}, [](const Survey& survey) { return survey.header.time; });
    const QString from = qs(dateInWords(first->header.time));
    const QString to = qs(dateInWords(last->header.time));
    return from == to ? from : SheetWords::tr("%1 to %2").arg(from, to);
}

std::vector<SheetFact> factsOf(const Workbook& workbook) {
    const Job& job = workbook.job;
    std::vector<SheetFact> facts;
    add(facts, SheetWords::tr("Customer"), qs(job.customer));
    add(facts, SheetWords::tr("Engine"), qs(job.engine));
    add(facts, SheetWords::tr("Serial number"), qs(job.serial));
    add(facts, SheetWords::tr("Why it came"), qs(job.reason));
    add(facts, SheetWords::tr("Measured"), datesOf(workbook));
    add(facts, SheetWords::tr("Measured by"), qs(job.measuredBy));
    return facts;
}

// The plan with what each bore is now, else what it was.
PlanData planOf(const Workbook& workbook, const Results& results) {
    PlanData plan = planOfNumbers(workbook.block, 0);
    plan.numbersOnly = false;
    for (PlanBore& bore : plan.bores) {
        const auto story = std::ranges::find(results.stories, bore.number, &BoreStory::bore);
        if (story == results.stories.end()) continue;
        const auto& id = story->nowSurvey ? story->nowSurvey : story->wasSurvey;
        const SurveyResult* survey = id ? findResult(results, *id) : nullptr;
        const BoreResult* result =
            survey != nullptr ? findBoreResult(*survey, bore.number) : nullptr;
        bore.word = result != nullptr ? qs(result->word) : SheetWords::tr("not measured");
        bore.verdict = result != nullptr ? result->verdict : Verdict::notMeasured;
        if (result != nullptr) bore.why = qs(result->why);
    }
    return plan;
}

QString titleOf(const Workbook& workbook) {
    QStringList parts;
    if (!workbook.job.engine.empty()) parts << qs(workbook.job.engine);
    if (!workbook.job.serial.empty()) parts << qs(workbook.job.serial);
    if (parts.isEmpty()) return SheetWords::tr("Bore sheet");
    return SheetWords::tr("Bore sheet, %1").arg(parts.join(QStringLiteral(", ")));
}

std::vector<SheetFact> recordOf(const Workbook& workbook, const DisplayUnits& units) {
    std::vector<SheetFact> facts;
    add(facts, SheetWords::tr("Notes"), qs(workbook.job.notes));
    const auto& bores = workbook.block.bores;
    if (bores.empty()) return facts;
    const auto all = [&](const auto& member, const auto& words) {
        QString text;
        for (const Bore& bore : bores) {
            const QString here = member(bore) ? qs(words(member(bore)->value(), units)) : QString();
            if (&bore == &bores.front()) text = here;
            if (here != text) return SheetWords::tr("differs by bore");
        }
        return text;
    };
    add(facts, SheetWords::tr("Standard size"),
        all([](const Bore& b) { return b.standardSize; },
            [](Length value, const DisplayUnits& in) { return sizeWithUnit(value, in); }));
    add(facts, SheetWords::tr("Depth of bore"),
        all([](const Bore& b) { return b.depth; }, depthWithUnit));
    add(facts, SheetWords::tr("Depths from"), qs(bores.front().openEnd));
    return facts;
}

QString axesKeyOf(const Block& block) {
    QStringList parts;
    for (const Axis& axis : block.axes)
        parts << SheetWords::tr("%1 = %2").arg(qs(axis.id), qs(axis.label));
    return parts.join(QStringLiteral(", "));
}

} // namespace

QString sheetTyped(const TypedLength& typed) {
    return qs(typed.text()) + ' ' + unitSymbol(typed.unit());
}

QStringList sheetSentences(const Workbook& workbook, const Results& results) {
    if (workbook.sheet.summary) return qs(*workbook.sheet.summary).split('\n', Qt::SkipEmptyParts);
    QStringList sentences;
    for (const std::string& sentence : results.summary)
        sentences << qs(sentence);
    return sentences;
}

SheetData sheetData(const Workbook& workbook, const Results& results,
                    const Preferences& preferences, const DisplayUnits& units,
                    const Timestamp& printed) {
    SheetData data;
    data.title = titleOf(workbook);
    data.shopName = preferences.shopName.trimmed();
    data.shopAddress = preferences.shopAddress.split('\n', Qt::SkipEmptyParts);
    if (!preferences.shopPicture.isEmpty()) data.shopPicture = QImage(preferences.shopPicture);
    data.invented = workbook.invented;
    data.facts = factsOf(workbook);
    data.sentences = sheetSentences(workbook, results);
    data.plan = planOf(workbook, results);
    data.table = sheetBoreTable(workbook, results, units);
    data.sections = storySectionsData(workbook, results, std::nullopt, units);
    data.sections.options.words = false;
    data.means = sheetMeans(workbook, results, units);
    data.shapes = sheetShapes(results);
    data.cautions = sheetCautions(workbook, results);
    data.budgets = sheetBudgets(workbook, results, units);
    data.sizing = sheetSizing(workbook, results, units);
    data.hone = sheetHone(workbook, results, units);
    data.fit = sheetFit(workbook, results, units);
    // While nothing is honed the customer's sentences say which size.
    if (!data.table.hasNow) data.cautions << data.sizing.cautions;
    if (!data.fit.pairs.pairs.empty()) data.cautions << data.fit.cautions;
    data.cautions.removeDuplicates();
    data.signer = qs(workbook.job.measuredBy);
    data.printed = qs(dateInWords(printed));
    data.record = recordOf(workbook, units);
    data.limits = sheetLimits(workbook);
    data.axesKey = axesKeyOf(workbook.block);
    data.sizeUnit = unitSymbol(units.size);
    for (std::size_t i = 0; i < workbook.surveys.size() && i < results.surveys.size(); ++i)
        data.surveys.push_back(
            sheetSurvey(workbook, workbook.surveys[i], results.surveys[i], units));
    data.code = checkCodeOf(shownOnSheet(data));
    return data;
}

} // namespace borewright
