// SPDX-License-Identifier: GPL-3.0-or-later
// A row a bore: what it was, what it is now, and what is allowed.
#include "app/pictures/reading_words.h"
#include "app/pictures/verdict_mark.h"
#include "app/sheet/sheet_data.h"
#include "core/results/doubt_words.h"
#include "core/results/words.h"

#include <algorithm>
#include <set>

namespace borewright {
namespace {

using Surveys = std::optional<std::string>;

const BoreResult* resultOf(const Results& results, const Surveys& survey, int bore) {
    const SurveyResult* found = survey ? findResult(results, *survey) : nullptr;
    return found == nullptr ? nullptr : findBoreResult(*found, bore);
}

QString figure(Quality quality, Length value, const DisplayUnits& units) {
    const bool size = quality == Quality::largestSize || quality == Quality::smallestSize;
    return qs(size ? formatSize(value, units) : formatSmall(value, units));
}

std::optional<Length> valueOf(const BoreForm& form, Quality quality) {
    switch (quality) {
    case Quality::largestSize:
        return form.largest.value;
    case Quality::smallestSize:
        return form.smallest.value;
    case Quality::outOfRound:
        return form.outOfRound ? std::optional(form.outOfRound->value) : std::nullopt;
    case Quality::taper:
        return form.worstTaper ? std::optional(form.worstTaper->taper) : std::nullopt;
    }
    return std::nullopt;
}

SheetSide sideOf(const BoreResult* bore, const DisplayUnits& units) {
    SheetSide side;
    if (bore == nullptr) return side;
    side.there = true;
    for (std::size_t i = 0; i < side.figures.size(); ++i) {
        const auto quality = static_cast<Quality>(i);
        if (!bore->form) continue;
        if (const auto value = valueOf(*bore->form, quality))
            side.figures[i].text = figure(quality, *value, units);
        if (const auto doubt = around(*bore, quality))
            side.figures[i].doubt = qs(aroundText(*doubt, units));
        const auto judged = std::ranges::find(bore->judgements, quality, &Judgement::quality);
        if (judged != bore->judgements.end()) side.figures[i].verdict = judged->verdict;
    }
    if (bore->straightness) side.straight.text = qs(formatSmall(*bore->straightness, units));
    if (const auto doubt = aroundStraightness(*bore))
        side.straight.doubt = qs(aroundText(*doubt, units));
    if (bore->straight == AimAnswer::cannotTell)
        side.aim = SheetWords::tr("unsure");
    else if (bore->straight != AimAnswer::noAim)
        side.aim = qs(std::string(nameOf(bore->straight)));
    side.verdict = bore->verdict;
    side.verdictText = verdictWord(bore->verdict);
    return side;
}

// The largest doubt of a column over all bores, either way.
QString atMost(const std::vector<std::optional<Around>>& doubts, const DisplayUnits& units) {
    std::optional<Length> most;
    for (const auto& doubt : doubts)
        if (doubt) most = std::max({most.value_or(doubt->above), doubt->below, doubt->above});
    return most ? qs(aroundText({*most, *most}, units)) : QString();
}

SheetSide sideAtMost(const Results& results, bool now, const DisplayUnits& units) {
    SheetSide side;
    std::array<std::vector<std::optional<Around>>, 4> figures;
    std::vector<std::optional<Around>> straight;
    for (const BoreStory& story : results.stories) {
        const BoreResult* bore =
            resultOf(results, now ? story.nowSurvey : story.wasSurvey, story.bore);
        if (bore == nullptr) continue;
        for (std::size_t i = 0; i < figures.size(); ++i)
            figures[i].push_back(around(*bore, static_cast<Quality>(i)));
        straight.push_back(aroundStraightness(*bore));
    }
    for (std::size_t i = 0; i < figures.size(); ++i)
        side.figures[i].doubt = atMost(figures[i], units);
    side.straight.doubt = atMost(straight, units);
    side.there = !side.figures[0].doubt.isEmpty();
    return side;
}

std::array<QString, 4> allowedBy(const BoreResult* bore, const DisplayUnits& units) {
    std::array<QString, 4> texts;
    if (bore == nullptr) return texts;
    for (const Judgement& judgement : bore->judgements) {
        if (!judgement.limit) continue;
        const QString sign = judgement.quality == Quality::smallestSize ? "≥ " : "≤ ";
        texts[static_cast<std::size_t>(judgement.quality)] =
            sign + figure(judgement.quality, *judgement.limit, units);
    }
    return texts;
}

// Bores with the same limits share a line.
std::vector<SheetAllowed> allowedLines(const Results& results, const Workbook& workbook,
                                       const DisplayUnits& units) {
    std::vector<SheetAllowed> lines;
    std::vector<std::vector<int>> bores;
    for (const BoreStory& story : results.stories) {
        SheetAllowed line;
        line.was = allowedBy(resultOf(results, story.wasSurvey, story.bore), units);
        line.now = allowedBy(resultOf(results, story.nowSurvey, story.bore), units);
        const auto same = std::ranges::find_if(lines, [&](const SheetAllowed& other) {
            return other.was == line.was && other.now == line.now;
        });
        if (same != lines.end()) {
            bores[static_cast<std::size_t>(same - lines.begin())].push_back(story.bore);
            continue;
        }
        lines.push_back(line);
        bores.push_back({story.bore});
    }
    for (std::size_t i = 0; i < lines.size(); ++i) {
        if (lines.size() > 1) lines[i].bores = qs(listed(bores[i]));
        if (workbook.straightAim)
            lines[i].aim = SheetWords::tr("aim %1").arg(
                qs(claimed(workbook.straightAim->value(), units)).section(' ', 0, 0));
    }
    return lines;
}

// The name of the surveys of one side: its own where all bores share one.
QString headOf(const Workbook& workbook, const std::set<std::string>& ids, const QString& usual) {
    if (ids.size() != 1) return usual;
    const Survey* survey = findSurvey(workbook, *ids.begin());
    if (survey == nullptr || survey->header.name.empty()) return usual;
    const QString name = qs(survey->header.name);
    const QString head = name.left(1).toUpper() + name.mid(1);
    return SheetWords::tr("%1, %2").arg(head, qs(dateInWords(survey->header.time)));
}

} // namespace

SheetBoreTable sheetBoreTable(const Workbook& workbook, const Results& results,
                              const DisplayUnits& units) {
    SheetBoreTable table;
    table.sizeUnit = unitSymbol(units.size);
    table.smallUnit = unitSymbol(units.small);
    std::set<std::string> was, now;
    for (const BoreStory& story : results.stories) {
        SheetBoreRow row;
        row.bore = QString::number(story.bore);
        row.was = sideOf(resultOf(results, story.wasSurvey, story.bore), units);
        row.now = sideOf(resultOf(results, story.nowSurvey, story.bore), units);
        if (story.wasSurvey) was.insert(*story.wasSurvey);
        if (story.nowSurvey) now.insert(*story.nowSurvey);
        table.hasStraight = table.hasStraight || !row.now.straight.text.isEmpty();
        table.rows.push_back(std::move(row));
    }
    table.hasWas = !was.empty();
    table.hasNow = !now.empty();
    table.wasHead = headOf(workbook, was, SheetWords::tr("As found"));
    table.nowHead = headOf(workbook, now, SheetWords::tr("Now"));
    table.wasAtMost = sideAtMost(results, false, units);
    table.nowAtMost = sideAtMost(results, true, units);
    table.hasDoubt = table.wasAtMost.there || table.nowAtMost.there;
    table.allowed = allowedLines(results, workbook, units);
    return table;
}

} // namespace borewright
