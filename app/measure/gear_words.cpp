// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/measure/gear_words.h"

#include "core/statistics/coverage.h"

#include <QCoreApplication>

#include <cmath>

namespace borewright {
namespace {

constexpr double fineDivision_um = 5.1;

QString tr(const char* text) {
    return QCoreApplication::translate("Gear", text);
}

std::optional<TypedLength> inMicrometres(const std::optional<TypedLength>& length) {
    if (!length) return length;
    const Length tenth = Length::fromPicometres(picometresPer(Unit::micrometre) / 10);
    const auto steps = divideHalfToEven(length->value().picometres(), tenth.picometres());
    return typedFrom(steps * tenth, Unit::micrometre);
}

Gear metric(Gear gear, const char* step_um) {
    for (auto* figure : {&gear.dialLocalError, &gear.repeatability, &gear.master,
                         &gear.settingScatter, &gear.drift})
        *figure = inMicrometres(*figure);
    gear.step = *readTyped(step_um, Unit::micrometre); // a literal: reading it cannot fail
    return gear;
}

// ± for 95 %.
double expanded(double u_um, double freedom) {
    return u_um * (std::isinf(freedom) ? 2 : coverageFactor(0.95, freedom));
}

QString shown(double um, const DisplayUnits& units) {
    return QString::fromStdString(
        smallWithUnit(Length::nearest(um, Unit::micrometre), units, Sign::negative, 1));
}

} // namespace

QStringList gearChoices(Unit small) {
    if (isInchFamily(small))
        return {tr("not known: plain comparison"), tr("usual: tenth dial set on a ring"),
                tr("usual: half-thou dial set on a micrometer"), tr("my own figures")};
    return {tr("not known: plain comparison"), tr("usual: 0.001 mm dial set on a ring"),
            tr("usual: 0.01 mm dial set on a micrometer"), tr("my own figures")};
}

Gear gearFor(GearChoice choice, Unit small) {
    switch (choice) {
    case GearChoice::fine:
        return isInchFamily(small) ? tenthDialAndRing() : metric(tenthDialAndRing(), "1");
    case GearChoice::coarse:
        return isInchFamily(small) ? halfThouDialAndMicrometer()
                                   : metric(halfThouDialAndMicrometer(), "5");
    case GearChoice::unknown:
    case GearChoice::own:
        break;
    }
    return {};
}

GearChoice choiceOf(const Gear& gear, Unit small) {
    for (const GearChoice choice : {GearChoice::unknown, GearChoice::fine, GearChoice::coarse}) {
        Gear usual = gearFor(choice, small);
        usual.lastChecked = gear.lastChecked; // says nothing of what it is worth
        if (usual == gear) return choice;
    }
    return GearChoice::own;
}

GearChoice fittingChoice(const Dial& dial) {
    return dial.graduation.value().in(Unit::micrometre) <= fineDivision_um ? GearChoice::fine
                                                                           : GearChoice::coarse;
}

QString readingDoubtWords(const Budget& budget, const DisplayUnits& units) {
    if (!budget.known()) return tr("doubt not known");
    return tr("one reading ± %1").arg(shown(expanded(budget.single_um, budget.freedom), units));
}

QString worthWords(const Budget& budget, const DisplayUnits& units) {
    if (budget.known())
        return tr("%1; a difference ± %2")
            .arg(readingDoubtWords(budget, units),
                 shown(expanded(budget.difference_um, budget.differenceFreedom), units));
    QStringList missing;
    for (const std::string& figure : budget.missing)
        missing << QString::fromStdString(figure);
    return tr("still missing: %1").arg(missing.join(tr(" and ")));
}

} // namespace borewright
