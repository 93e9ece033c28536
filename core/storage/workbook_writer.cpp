// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/storage/record_writer.h"
#include "core/storage/workbook_file.h"

namespace borewright {

std::string RecordWriter::write(const Workbook& workbook) {
    m_block = &workbook.block;
    object({}, workbook, Lines::many);
    return m_json.take();
}

void RecordWriter::fields(const Workbook& workbook) {
    m_json.text("format", "borewright workbook");
    field("version", workbookVersion);
    field("invented", workbook.invented);
    object("job", workbook.job, Lines::many);
    object("block", workbook.block, Lines::many);
    list("limitSets", workbook.limitSets, Lines::many);
    field("straightAim", workbook.straightAim);
    list("surveys", workbook.surveys, Lines::many);
    if (!workbook.studies.empty()) list("studies", workbook.studies, Lines::many);
    if (workbook.sizing != SizingPlan()) object("sizing", workbook.sizing, Lines::many);
    if (!workbook.targets.empty()) byBore("targets", workbook.targets, Lines::one);
    if (workbook.fit != FitRecord()) object("fit", workbook.fit, Lines::many);
    if (workbook.hone != HoneRecord()) object("hone", workbook.hone, Lines::many);
    object("sheet", workbook.sheet, Lines::many);
    if (workbook.history != History()) object("history", workbook.history, Lines::many);
}

void RecordWriter::fields(const Job& job) {
    field("customer", job.customer);
    field("engine", job.engine);
    field("serial", job.serial);
    field("reason", job.reason);
    field("measuredBy", job.measuredBy);
    field("notes", job.notes);
}

void RecordWriter::fields(const Block& block) {
    field("arrangement", block.arrangement);
    list("axes", block.axes, Lines::one);
    list("bores", block.bores, Lines::many);
}

void RecordWriter::fields(const Axis& axis) {
    field("id", axis.id);
    field("label", axis.label);
    field("angle", axis.angleDegrees);
}

void RecordWriter::fields(const Bore& bore) {
    field("number", bore.number);
    field("standardSize", bore.standardSize);
    field("depth", bore.depth);
    field("surface", bore.surface);
    field("openEnd", bore.openEnd);
    field("roomAtOpenEnd", bore.roomAtOpenEnd);
    field("roomAtClosedEnd", bore.roomAtClosedEnd);
    field("combustionEnd", bore.combustionEnd);
    object("map", bore.map, Lines::many);
    list("levels", bore.levels, Lines::one);
    m_json.beginList("wallMarks");
    for (const WallMark& mark : bore.wallMarks) {
        m_json.beginObject({}, Lines::one);
        field("depth", depthOf(bore.number, mark.depth));
        fields(mark);
        m_json.unknown(mark.unknown);
        m_json.endObject();
    }
    m_json.endList();
}

void RecordWriter::fields(const BoreMap& map) {
    field("topRingLine", map.topRingLine);
    field("lowestRingLine", map.lowestRingLine);
    list("ports", map.ports, Lines::one);
    field("gaugeFoot", map.gaugeFoot);
}

void RecordWriter::fields(const PortBand& band) {
    field("from", band.from);
    field("to", band.to);
    m_json.beginList("axes", Lines::one);
    for (const std::string& axis : band.axes)
        m_json.text({}, axis);
    m_json.endList();
}

void RecordWriter::fields(const Level& level) {
    field("depth", level.depth);
    field("judging", level.judging);
}

void RecordWriter::fields(const WallMark& mark) {
    field("axis", mark.axis);
    field("wall", mark.wall);
}

void RecordWriter::fields(const LimitSet& set) {
    field("id", set.id);
    field("name", set.name);
    field("purpose", set.purpose);
    field("oversize", set.oversize);
    field("finishSize", set.finishSize);
    field("taperRule", set.taperRule);
    if (set.decision != DecisionRule()) object("decision", set.decision, Lines::one);
    object("limits", set.limits, Lines::many);
    byBore("perBore", set.perBore, Lines::one);
}

void RecordWriter::fields(const Limits& limits) {
    field("sizeLower", limits.sizeLower);
    field("sizeUpper", limits.sizeUpper);
    field("outOfRound", limits.outOfRound);
    field("taper", limits.taper);
}

void RecordWriter::fields(const DecisionRule& rule) {
    field("rule", rule.kind);
    field("ownPercent", rule.ownPercent);
}

void RecordWriter::fields(const SheetText& sheet) {
    field("summary", sheet.summary);
}

// A depth in the unit that the bore's own depth was typed in.
TypedLength RecordWriter::depthOf(int bore, Length depth) const {
    const Bore* found = findBore(*m_block, bore);
    if (found != nullptr && found->depth) return typedFrom(depth, found->depth->unit());
    if (found != nullptr && found->standardSize)
        return typedFrom(depth, found->standardSize->unit());
    return typedFrom(depth, Unit::millimetre);
}

std::string writeWorkbook(const Workbook& workbook) {
    return RecordWriter().write(workbook);
}

} // namespace borewright
