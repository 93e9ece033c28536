// SPDX-License-Identifier: GPL-3.0-or-later
// The budget of the doubt in words and as a table.
#include "app/pictures/budget_bars.h"
#include "app/pictures/reading_words.h"
#include "core/results/doubt_words.h"

#include <QCoreApplication>

#include <cmath>

namespace borewright {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("BudgetBars", text);
}

// A doubt in µm in the small unit, two digits finer than readings are shown.
QString fine(double um, const DisplayUnits& units) {
    return qs(formatSmall(Length::nearest(um, Unit::micrometre), units, Sign::negative, 2));
}

QString sourceText(Source source) {
    return qs(std::string(nameOf(source)));
}

QString partText(Source source) {
    return isShared(source) ? tr("shared") : tr("own");
}

QString distributionText(Distribution distribution) {
    switch (distribution) {
    case Distribution::normal:
        return tr("normal");
    case Distribution::rectangular:
        return tr("rectangular");
    case Distribution::triangular:
        return tr("triangular");
    case Distribution::uShaped:
        return tr("U-shaped");
    }
    return {};
}

QString valueText(const BudgetLine& line, const DisplayUnits& units) {
    switch (line.in) {
    case BudgetLine::In::micrometre:
        return tr("%1 %2").arg(fine(line.value, units), unitSymbol(units.small));
    case BudgetLine::In::celsius:
        return tr("%1 °C").arg(line.value, 0, 'g', 3);
    case BudgetLine::In::perCelsius:
        return tr("%1 × 10⁻⁶/°C").arg(line.value * 1e6, 0, 'g', 3);
    }
    return {};
}

QString sensitivityText(const BudgetLine& line, const DisplayUnits& units) {
    const QString unit = unitSymbol(units.small);
    switch (line.in) {
    case BudgetLine::In::micrometre:
        return QString::number(line.sensitivity, 'g', 3);
    case BudgetLine::In::celsius:
        return tr("%1 %2/°C").arg(fine(line.sensitivity, units), unit);
    case BudgetLine::In::perCelsius:
        return tr("%1 %2 per 10⁻⁶/°C").arg(fine(line.sensitivity / 1e6, units), unit);
    }
    return {};
}

QString freedomText(double freedom) {
    return std::isinf(freedom) ? QStringLiteral("∞") : QString::number(freedom, 'f', 0);
}

} // namespace

BudgetBarsData budgetBarsData(const Budget& budget, const DisplayUnits& units) {
    BudgetBarsData data;
    data.head = tr("What each source adds to the doubt of one reading, %1 (standard uncertainty)")
                    .arg(unitSymbol(units.small));
    if (!budget.known()) {
        data.friendly = qs(trustWords(budget, units));
        return data;
    }
    for (const BudgetLine& line : budget.lines) {
        const Length amount = Length::nearest(line.contribution_um, Unit::micrometre);
        data.bars.push_back({sourceText(line.source),
                             tr("%1 %2").arg(qs(formatSmall(amount, units, Sign::negative, 1)),
                                             partText(line.source)),
                             amount.in(units.small), isShared(line.source)});
    }
    return data;
}

QString describeBudgetBars(const BudgetBarsData& data) {
    if (!data.friendly.isEmpty()) return data.friendly;
    QStringList parts;
    for (const BudgetBar& bar : data.bars)
        parts << tr("%1: %2").arg(bar.source, bar.word);
    return tr("%1. %2.").arg(data.head, parts.join(QStringLiteral("; ")));
}

QStringList budgetHeads(const DisplayUnits& units) {
    return {tr("source"),
            tr("part"),
            tr("value, ±"),
            tr("distribution"),
            tr("divided by"),
            tr("sensitivity"),
            tr("adds, %1").arg(unitSymbol(units.small)),
            tr("degrees of freedom")};
}

std::vector<QStringList> budgetRows(const Budget& budget, const DisplayUnits& units) {
    std::vector<QStringList> rows;
    for (const BudgetLine& line : budget.lines)
        rows.push_back({sourceText(line.source), partText(line.source), valueText(line, units),
                        distributionText(line.distribution), QString::number(line.divisor, 'f', 2),
                        sensitivityText(line, units), fine(line.contribution_um, units),
                        freedomText(line.freedom)});
    return rows;
}

QStringList budgetSums(const Budget& budget, const DisplayUnits& units) {
    if (!budget.known()) return {};
    const QString unit = unitSymbol(units.small);
    return {tr("One diameter: own %1 and shared %2 come to %3 %4; %5 effective degrees of freedom; "
               "times k = %6 for 95 %: ± %7 %4.")
                .arg(fine(budget.own_um, units), fine(budget.shared_um, units),
                     fine(budget.single_um, units), unit, freedomText(budget.freedom),
                     QString::number(budget.coverage, 'f', 2),
                     qs(upward(wholeOfOne(budget), units, 1))),
            tr("A difference of two: the own part twice, %1 %2, with what is shared gone; %3 "
               "effective degrees of freedom; 95 %: ± %4 %2.")
                .arg(fine(budget.difference_um, units), unit, freedomText(budget.differenceFreedom),
                     qs(upward(wholeOfDifference(budget), units, 1)))};
}

} // namespace borewright
