// SPDX-License-Identifier: GPL-3.0-or-later
// The parts of a workbook out of their JSON. Part of the workbook reader.
#pragma once

#include "core/storage/object_reader.h"
#include "core/workbook/workbook.h"

namespace borewright {

void readValue(const JsonValue& value, Job& job, Trouble& trouble);
void readValue(const JsonValue& value, Block& block, Trouble& trouble);
void readValue(const JsonValue& value, DecisionRule& rule, Trouble& trouble);
void readValue(const JsonValue& value, LimitSet& set, Trouble& trouble);
void readValue(const JsonValue& value, Station& station, Trouble& trouble);
void readValue(const JsonValue& value, Survey& survey, Trouble& trouble);
void readValue(const JsonValue& value, RepeatStudy& study, Trouble& trouble);
void readValue(const JsonValue& value, SizingPlan& plan, Trouble& trouble);
void readValue(const JsonValue& value, FitRecord& fit, Trouble& trouble);
void readValue(const JsonValue& value, HoneRecord& record, Trouble& trouble);
// The field "targets" of the whole.
void takeTargets(ObjectReader& fields, FinishTargets& targets, Trouble& trouble);
void readValue(const JsonValue& value, SheetText& sheet, Trouble& trouble);
void readValue(const JsonValue& value, History& history, Trouble& trouble);

// What only the whole can show: equal ids, readings where there is no bore or axis.
void checkRecord(const JsonValue& root, const Workbook& workbook, Trouble& trouble);
// The same of honing: passes of a bore, or after a survey, that is not there.
void checkPassesIn(const JsonValue& root, const Workbook& workbook, Trouble& trouble);

} // namespace borewright
