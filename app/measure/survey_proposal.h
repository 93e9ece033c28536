// SPDX-License-Identifier: GPL-3.0-or-later
// What a new survey begins with: the kind that usually comes next, the gauge last used, usual
// figures for its gear where he has none, the set size that the bores suggest.
#pragma once

#include "app/context/preferences.h"
#include "core/workbook/workbook.h"

namespace borewright {

struct SurveyProposal {
    SurveyHeader header;
    bool usualGear = false; // the gear's figures are the program's, not his
};

// `small`: the unit that small amounts are shown in.
SurveyProposal proposeSurvey(const Workbook& workbook, const Preferences& preferences, Unit small);

// A worn block is measured from standard, a honed one from its finish size; a setting made for the
// same purpose before is proposed again.
void proposeSetSize(const Workbook& workbook, SurveyHeader& header);

// The name of its kind, with a number where the name is taken.
QString proposeSurveyName(const Workbook& workbook, SurveyKind kind);

} // namespace borewright
