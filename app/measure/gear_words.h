// SPDX-License-Identifier: GPL-3.0-or-later
// Usual sets of gear as one chooses them, and in words what a setting's gear is worth.
#pragma once

#include "core/gauging/budget.h"
#include "core/length/format.h"

#include <QString>
#include <QStringList>

namespace borewright {

enum class GearChoice {
    unknown, // no figures at all
    fine,    // a fine dial set on a ring
    coarse,  // a coarse dial set on a micrometer
    own,     // anything else
};

// The choices in the order of their values. `small` is the unit that small amounts are shown in.
QStringList gearChoices(Unit small);
// The figures of a choice; none for unknown and own. Where small amounts are metric, the same
// figures to a tenth of a micrometre, with the steps that metric dials have.
Gear gearFor(GearChoice choice, Unit small);
// Which choice a gear's figures are.
GearChoice choiceOf(const Gear& gear, Unit small);
// The usual set that goes with a dial: fine up to 0.2 thou, 5 µm, a division.
GearChoice fittingChoice(const Dial& dial);

// "one reading ± 0.26 thou", 95 %; "doubt not known".
QString readingDoubtWords(const Budget& budget, const DisplayUnits& units);
// The same with that of a difference of two readings; what is missing where it is not known.
QString worthWords(const Budget& budget, const DisplayUnits& units);

} // namespace borewright
