// SPDX-License-Identifier: GPL-3.0-or-later
// "Hone it for me": the proposed set-up done on the played bore and read afterwards, as one undo
// step, said to be simulated wherever it stands. Only in a workbook that is invented.
#pragma once

#include "core/results/hone_outlook.h"
#include "core/workbook/edit.h"

namespace borewright {

struct PlayedRound {
    Edit edit;          // the pass and the survey with its readings
    std::string survey; // id
};
// `proposed`: heading of the survey, as any new one begins. Refuses a workbook that is not
// invented, and what the played bore refuses.
Result<PlayedRound> playRound(const Workbook& workbook, const SurveyHeader& proposed, int bore,
                              const PlannedSetUp& planned, Timestamp clock);

} // namespace borewright
