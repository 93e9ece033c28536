// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/fit/fit_words.h"

#include "app/fit/match_model.h"
#include "app/pictures/reading_words.h"
#include "app/pictures/verdict_mark.h"
#include "core/results/sizing_words.h"

#include <QCoreApplication>

namespace borewright::fit_words {
namespace {

QString say(const char* text) {
    return QCoreApplication::translate("FitWords", text);
}

QString clearanceWords(const Clearance& clearance, const DisplayUnits& units) {
    const std::string amount = marginWords(clearance.value, clearance.u, clearance.coverage, units);
    QString where = say("Least clearance %1, %2 down")
                        .arg(qs(amount), qs(depthWithUnit(clearance.depth, units)));
    if (!clearance.axis.empty()) where += say(" on %1").arg(qs(clearance.axis));
    if (clearance.verdict != Verdict::notJudged)
        where += QStringLiteral(": ") + verdictWord(clearance.verdict);
    if (!clearance.why.empty()) where += QStringLiteral(", ") + qs(clearance.why);
    where += '.';
    if (!clearance.u) return where + say(" Its doubt is not known.");
    return clearance.pistonDoubtKnown ? where
                                      : where + say(" The piston's own doubt is not in it.");
}

QString worthWords(const Length& worst, const Length& sum, const DisplayUnits& units) {
    return say("worst miss %1, sum %2")
        .arg(qs(smallWithUnit(worst, units)), qs(formatSmall(sum, units)));
}

// As it stands: the pistons' own order where that was chosen, else the best.
const std::optional<Matching::Worth>& worthChosen(const Matching& matching) {
    const bool own = matching.ownOrder && matching.chosen == matching.ownOrder->piston;
    return own ? matching.ownOrder : matching.best;
}

QString costWords(const MatchModel& model, const Document& document, const QModelIndex& index) {
    const DisplayUnits& units = document.units();
    const Matching& matching = model.matching();
    const auto& now = worthChosen(matching);
    if (model.isFixed(index)) return say("Fixed here by you.");
    if (!now) return say("No matching: %1.").arg(qs(matching.why));
    if (model.isChosen(index))
        return say("Chosen: %1.").arg(worthWords(now->worst, now->sum, units));
    const MatchCell* cell = model.cellAt(index);
    const QString name = shortPiston(document.workbook().fit, model.pistonAt(index.column()));
    if (!cell->swap) return say("Piston %1 cannot go here as the pairs stand.").arg(name);
    return say("Piston %1 here instead: %2; as chosen: %3.")
        .arg(name, worthWords(cell->swap->worst, cell->swap->sum, units),
             say("%1, sum %2")
                 .arg(qs(formatSmall(now->worst, units)), qs(formatSmall(now->sum, units))));
}

} // namespace

QString shortPiston(const FitRecord& fit, std::size_t piston) {
    const std::string& label = fit.pistons.at(piston).label;
    return label.empty() ? say("row %1").arg(piston + 1) : qs(label);
}

QString piston(const FitRecord& fit, std::size_t place, const DisplayUnits& units) {
    const Piston& piston = fit.pistons.at(place);
    QString words = say("Piston %1").arg(shortPiston(fit, place));
    if (piston.size) words += QStringLiteral(": ") + qs(sizeWithUnit(piston.size->value(), units));
    if (piston.height)
        words += say(", measured %1 from the skirt's end")
                     .arg(qs(sizeWithUnit(piston.height->value(), units)));
    else
        words += say(", measuring height not given");
    if (!piston.measuredWith.empty()) words += say(" with %1").arg(qs(piston.measuredWith));
    if (piston.temperature) words += say(" at %1 °C").arg(piston.temperature->celsius(), 0, 'g', 4);
    return words + '.';
}

QStringList pair(const MatchModel& model, const Document& document, const QModelIndex& index) {
    const MatchCell* cell = model.cellAt(index);
    if (cell == nullptr) return {};
    const QString title =
        say("Piston %1 in bore %2.")
            .arg(shortPiston(document.workbook().fit, model.pistonAt(index.column())))
            .arg(model.boreAt(index.row()));
    if (!cell->clearance) return {title, say("No clearance: %1.").arg(qs(cell->refused))};
    return {title, clearanceWords(*cell->clearance, document.units()),
            costWords(model, document, index)};
}

QString withoutHeight(const FitRecord& fit) {
    QStringList names;
    for (std::size_t i = 0; i < fit.pistons.size(); ++i)
        if (!fit.pistons[i].height) names << shortPiston(fit, i);
    if (names.isEmpty()) return {};
    if (names.size() == 1)
        return say("Piston %1 gets no clearance: the height it was measured at is not given.")
            .arg(names.front());
    const QString last = names.takeLast();
    return say("Pistons %1 and %2 get no clearance: the heights they were measured at are not "
               "given.")
        .arg(names.join(QStringLiteral(", ")), last);
}

QString smallUnit(const Document& document) {
    return unitSymbol(document.units().small);
}

QString together(const std::vector<std::string>& sentences) {
    QStringList all;
    for (const std::string& sentence : sentences)
        all << qs(sentence);
    return all.join(' ');
}

} // namespace borewright::fit_words
