// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/judge/doubt_text.h"

#include "app/judge/verdict_text.h"
#include "app/pictures/reading_words.h"
#include "core/results/doubt_words.h"

#include <QCoreApplication>
#include <QStringList>

namespace borewright::doubt_text {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("DoubtText", text);
}

std::optional<Around> aroundOf(const BoreResult& bore, int column, const Budget& budget) {
    if (const auto quality = verdict_text::qualityOf(column))
        return borewright::around(bore, *quality);
    switch (column) {
    case columns::mean:
        return aroundMean(bore, budget);
    case columns::lead:
        return aroundLead(bore, budget);
    case columns::straight:
        return aroundStraightness(bore);
    default:
        return std::nullopt;
    }
}

QString chanceText(const Judgement& judgement) {
    const QString chance = qs(chanceWords(*judgement.chanceWrong));
    switch (judgement.verdict) {
    case Verdict::within:
        return tr("%1 that it is outside after all").arg(chance);
    case Verdict::outside:
    case Verdict::notYet:
        return tr("%1 that it is within after all").arg(chance);
    case Verdict::tooCloseToCall:
        return tr("%1 that it is outside").arg(chance);
    default:
        return {};
    }
}

QString small(double um, const DisplayUnits& units) {
    return qs(smallWithUnit(Length::nearest(um, Unit::micrometre), units, Sign::negative, 1));
}

void addHead(QStringList& lines, const QString& text) {
    lines << QStringLiteral("<p style='margin-top:8px; margin-bottom:2px'><b>%1</b></p>")
                 .arg(text.toHtmlEscaped());
}

void addLine(QStringList& lines, const QString& text) {
    lines << QStringLiteral("<p style='margin-top:2px; margin-bottom:2px'>%1</p>")
                 .arg(text.toHtmlEscaped());
}

QString capital(QString text) {
    if (!text.isEmpty()) text[0] = text[0].toUpper();
    return text;
}

void addRemedies(QStringList& lines, const QString& head, const std::vector<Remedy>& remedies,
                 double factor, const DisplayUnits& units) {
    constexpr std::size_t most = 3;
    if (remedies.empty()) return;
    addHead(lines, head);
    for (std::size_t i = 0; i < std::min(most, remedies.size()); ++i)
        addLine(lines, capital(qs(remedyWords(remedies[i], factor, units))));
}

} // namespace

QString cell(const BoreResult& bore, int column, const Budget& budget, const DisplayUnits& units) {
    const auto doubt = aroundOf(bore, column, budget);
    return doubt ? qs(aroundText(*doubt, units)) : QString();
}

QString around(const BoreResult& bore, int column, const Budget& budget,
               const DisplayUnits& units) {
    const auto doubt = aroundOf(bore, column, budget);
    return doubt ? ' ' + qs(aroundWords(*doubt, units)) : QString();
}

QString behind(const BoreResult& bore, int column, const DisplayUnits& units) {
    const auto quality = verdict_text::qualityOf(column);
    QString text;
    for (const Judgement& judgement : bore.judgements) {
        if (!quality || judgement.quality != *quality) continue;
        if (judgement.chanceWrong)
            if (const QString chance = chanceText(judgement); !chance.isEmpty())
                text += tr(", %1").arg(chance);
        if (judgement.guard && judgement.limit && *judgement.guard > Length())
            text += tr("; %1 kept from the limit")
                        .arg(small(judgement.guard->in(Unit::micrometre), units));
        if (judgement.gaugeAlone && *judgement.gaugeAlone > Length())
            text += tr("; the gauge alone would show about %1")
                        .arg(small(judgement.gaugeAlone->in(Unit::micrometre), units));
    }
    if (column == columns::outOfRound) text += tr(". %1").arg(QString::fromUtf8(lobesWords));
    return text;
}

QString bore(const BoreResult& bore) {
    QStringList parts;
    if (!bore.shapeWords.empty()) parts << capital(qs(bore.shapeWords)) + '.';
    if (!bore.settles.empty()) parts << tr("Too close to call: %1.").arg(qs(bore.settles));
    return parts.isEmpty() ? QString() : tr("Bore %1: %2").arg(bore.bore).arg(parts.join(' '));
}

QString page(const SurveyResult& survey, const DisplayUnits& units) {
    const SurveyDoubts& doubts = survey.doubts;
    QStringList lines;
    if (!doubts.budget.known()) {
        addLine(lines, tr("Values are compared with their limits as they stand."));
        addLine(lines, tr("Enter what the gauge and its master are worth at the gauge setting of "
                          "the survey, on the Measure page; two usual sets of gear are there to "
                          "begin with."));
        return lines.join(QString());
    }
    if (!doubts.warnings.empty()) addHead(lines, tr("Beware"));
    for (const std::string& warning : doubts.warnings)
        addLine(lines, qs(warning));
    if (!doubts.prospect.empty()) addHead(lines, tr("What this gear can decide"));
    for (const std::string& sentence : doubts.prospect)
        addLine(lines, qs(sentence));
    const Budget& budget = doubts.budget;
    const double one = wholeOfOne(budget).in(Unit::micrometre) / budget.single_um;
    const double two = wholeOfDifference(budget).in(Unit::micrometre) / budget.difference_um;
    addRemedies(lines, tr("What would help most, for a size (95 %)"), doubts.sizeRemedies, one,
                units);
    addRemedies(lines, tr("What would help most, for out-of-round and taper (95 %)"),
                doubts.differenceRemedies, two, units);
    addHead(lines, tr("Never forget"));
    addLine(lines, tr("The largest less the smallest of several readings is never nothing, even in "
                      "a perfect bore: each cell says what the gauge alone would show."));
    addLine(lines, QString::fromUtf8(lobesWords));
    return lines.join(QString());
}

} // namespace borewright::doubt_text
