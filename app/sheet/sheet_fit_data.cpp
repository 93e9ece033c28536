// SPDX-License-Identifier: GPL-3.0-or-later
// Which piston in which bore: what is decided, on which sizes it rests, and the least clearances in
// short for the customer.
#include "app/pictures/reading_words.h"
#include "app/pictures/verdict_mark.h"
#include "app/sheet/sheet_data.h"
#include "core/results/fit_figures.h"
#include "core/results/fit_words.h"
#include "core/results/words.h"

#include <algorithm>
#include <map>
#include <set>

namespace borewright {
namespace {

QString decidedText(const std::vector<int>& decided, const std::vector<int>& proposed) {
    if (decided.empty() && proposed.empty()) return {};
    if (proposed.empty()) return SheetWords::tr("as decided");
    if (decided.empty()) return SheetWords::tr("as proposed, not yet decided");
    return SheetWords::tr("%1 as decided, %2 as proposed, not yet decided")
        .arg(sheetBores(decided), sheetBores(proposed));
}

QString pairsText(const Workbook& workbook, const FitResult& fit) {
    std::vector<int> decided, proposed;
    for (const BoreFit& bore : fit.bores)
        if (const auto placed = sheetPlaced(workbook, fit, bore))
            (placed->decided ? decided : proposed).push_back(bore.bore);
    return decidedText(decided, proposed);
}

// A bore counts as decided where all its rings are.
QString ringsText(const FitResult& fit) {
    std::vector<int> decided, proposed;
    for (const BoreFit& bore : fit.bores) {
        bool any = false, all = true;
        for (const BoreFit::RingHere& here : bore.rings) {
            any = any || here.ring;
            all = all && (!here.ring || here.decided);
        }
        if (any) (all ? decided : proposed).push_back(bore.bore);
    }
    return decidedText(decided, proposed);
}

// The surveys that the bores' sizes are from, and whether the clearance can still change.
QString surveysText(const Workbook& workbook, const FitResult& fit) {
    std::vector<std::string> ids;
    std::map<std::string, std::vector<int>> bores;
    std::vector<int> unread;
    for (const BoreFit& bore : fit.bores) {
        if (bore.survey.empty()) {
            unread.push_back(bore.bore);
            continue;
        }
        if (!bores.contains(bore.survey)) ids.push_back(bore.survey);
        bores[bore.survey].push_back(bore.bore);
    }
    QStringList lines;
    for (const std::string& id : ids) {
        const Survey* survey = findSurvey(workbook, id);
        if (survey == nullptr) continue;
        QString line = SheetWords::tr("%1, %2").arg(qs(survey->header.name),
                                                    qs(dateInWords(survey->header.time)));
        if (survey->header.kind != SurveyKind::final)
            line =
                SheetWords::tr("%1: not the finished bore, so not the final clearance").arg(line);
        if (bores.size() > 1 || !unread.empty())
            line = SheetWords::tr("%1: %2").arg(sheetBores(bores[id]), line);
        lines << line;
    }
    if (!unread.empty()) lines << SheetWords::tr("%1: not read").arg(sheetBores(unread));
    return lines.join('\n');
}

QString sharedOf(const std::vector<Piston>& pistons, const auto& words) {
    QStringList all;
    for (const Piston& piston : pistons)
        if (const QString text = words(piston); !text.isEmpty()) all << text;
    all.removeDuplicates();
    return all.join(QStringLiteral("; "));
}

// "7 (3.4361 in), 8 (3.4360 in)": pistons that are in no bore.
QString leftOver(const Workbook& workbook, const FitResult& fit, const DisplayUnits& units) {
    std::set<std::size_t> used;
    for (const BoreFit& bore : fit.bores)
        if (const auto placed = sheetPlaced(workbook, fit, bore)) used.insert(placed->piston);
    QStringList left;
    for (std::size_t place : ownOrder(workbook.fit.pistons)) {
        if (used.contains(place)) continue;
        const Piston& piston = workbook.fit.pistons[place];
        left << (piston.size
                     ? SheetWords::tr("%1 (%2)").arg(qs(nameOf(piston)),
                                                     qs(sizeWithUnit(piston.size->value(), units)))
                     : SheetWords::tr("%1 (not measured)").arg(qs(nameOf(piston))));
    }
    return left.join(QStringLiteral(", "));
}

void add(std::vector<SheetFact>& facts, const QString& name, const QString& value) {
    if (!value.isEmpty()) facts.push_back({name, value});
}

std::vector<SheetFact> factsOf(const Workbook& workbook, const FitResult& fit,
                               const DisplayUnits& units) {
    const std::vector<Piston>& pistons = workbook.fit.pistons;
    std::vector<SheetFact> facts;
    add(facts, SheetWords::tr("Bores as read"), surveysText(workbook, fit));
    if (!pistons.empty())
        add(facts, SheetWords::tr("Clearance allowed"), sheetFitLimits(workbook.fit.clearance));
    add(facts, SheetWords::tr("Pistons in bores"), pairsText(workbook, fit));
    add(facts, SheetWords::tr("Pistons measured"),
        sharedOf(pistons, [](const Piston& piston) { return qs(piston.measuredWith); }));
    add(facts, SheetWords::tr("Pistons left over"), leftOver(workbook, fit, units));
    add(facts, SheetWords::tr("Rings in bores"), ringsText(fit));
    if (!workbook.fit.rings.empty())
        add(facts, SheetWords::tr("Ring gap allowed"), sheetFitLimits(workbook.fit.ringGap));
    return facts;
}

// What the customer reads: the least clearance of each bore, its doubt and its verdict.
SheetPairs pairsOf(const Workbook& workbook, const FitResult& fit, const DisplayUnits& units) {
    SheetPairs pairs;
    bool finished = true;
    std::optional<Length> most;
    for (const BoreFit& bore : fit.bores) {
        const auto placed = sheetPlaced(workbook, fit, bore);
        if (!placed || placed->honeTo || !bore.clearance) continue;
        finished = finished && bore.finished;
        const Clearance& clearance = *bore.clearance;
        const auto whole = wholeDoubt(clearance);
        if (whole) most = std::max(most.value_or(*whole), *whole);
        const QString doubt = sheetDoubt(whole, units);
        pairs.pairs.push_back({QString::number(bore.bore),
                               qs(nameOf(workbook.fit.pistons[placed->piston])),
                               qs(formatSmall(clearance.value, units)),
                               doubt.isEmpty() ? doubt : QStringLiteral("±") + doubt,
                               verdictWord(clearance.verdict), clearance.verdict});
    }
    if (pairs.pairs.empty()) return pairs;
    if (most) pairs.doubtAtMost = QStringLiteral("±") + sheetDoubt(most, units);
    QStringList parts{SheetWords::tr("Pistons: %1; least clearance in %2, total on the diameter")
                          .arg(pairsText(workbook, fit), unitSymbol(units.small))};
    const QString allowed = sheetFitLimits(workbook.fit.clearance);
    if (!allowed.isEmpty()) parts << SheetWords::tr("allowed %1").arg(allowed);
    if (!finished) parts << SheetWords::tr("not yet the finished bores");
    pairs.head = parts.join(QStringLiteral("; "));
    return pairs;
}

} // namespace

QString sheetBores(const std::vector<int>& bores) {
    return (bores.size() == 1 ? SheetWords::tr("bore %1") : SheetWords::tr("bores %1"))
        .arg(qs(numbersInShort(bores)));
}

std::optional<SheetPlaced> sheetPlaced(const Workbook& workbook, const FitResult& fit,
                                       const BoreFit& bore) {
    if (bore.toHone) {
        const auto finish = std::ranges::find(fit.finish, bore.bore, &FinishForPiston::bore);
        if (finish == fit.finish.end()) return std::nullopt;
        const bool decided = workbook.fit.pistons[finish->piston].bore == bore.bore;
        return SheetPlaced{finish->piston, decided, finish->finish};
    }
    if (!bore.piston) return std::nullopt;
    return SheetPlaced{*bore.piston, bore.decided, std::nullopt};
}

QString sheetFitLimits(const FitLimits& limits) {
    QStringList parts;
    if (limits.lower && limits.upper && limits.lower->unit() == limits.upper->unit())
        parts
            << SheetWords::tr("%1 to %2").arg(qs(limits.lower->text()), sheetTyped(*limits.upper));
    else if (limits.lower && limits.upper)
        parts
            << SheetWords::tr("%1 to %2").arg(sheetTyped(*limits.lower), sheetTyped(*limits.upper));
    else if (limits.lower)
        parts << SheetWords::tr("from %1").arg(sheetTyped(*limits.lower));
    else if (limits.upper)
        parts << SheetWords::tr("up to %1").arg(sheetTyped(*limits.upper));
    if (limits.aim) parts << SheetWords::tr("aim %1").arg(sheetTyped(*limits.aim));
    return parts.join(QStringLiteral(", "));
}

SheetFit sheetFit(const Workbook& workbook, const Results& results, const DisplayUnits& units) {
    SheetFit sheet;
    const FitResult& fit = results.fit;
    sheet.there = !fit.empty;
    if (fit.empty) return sheet;
    sheet.cautions = sheetTexts(fit.cautions);
    sheet.facts = factsOf(workbook, fit, units);
    if (!workbook.fit.pistons.empty()) {
        sheet.headline = qs(fit.headline);
        sheet.sentences = sheetTexts(fit.sentences);
        sheet.pistons = sheetPistons(workbook, fit, units);
        sheet.across = sheetAcross(workbook, fit, units);
        sheet.pairs = pairsOf(workbook, fit, units);
    }
    if (!workbook.fit.rings.empty()) {
        sheet.ringHeadline = qs(fit.ringHeadline);
        sheet.ringSentences = sheetTexts(fit.ringSentences);
        sheet.rings = sheetRings(workbook, fit, units);
    }
    return sheet;
}

} // namespace borewright
