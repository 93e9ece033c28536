// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/storage/record_writer.h"

namespace borewright {

void RecordWriter::fields(const FitRecord& fit) {
    list("pistons", fit.pistons, Lines::one);
    list("rings", fit.rings, Lines::one);
    if (fit.clearance != FitLimits()) object("clearance", fit.clearance, Lines::one);
    if (fit.ringGap != FitLimits()) object("ringGap", fit.ringGap, Lines::one);
    field("fileStep", fit.fileStep);
}

void RecordWriter::fields(const Piston& piston) {
    field("id", piston.id);
    field("label", piston.label);
    field("size", piston.size);
    field("height", piston.height);
    field("measuredWith", piston.measuredWith);
    field("temperature", piston.temperature);
    field("doubt", piston.doubt);
    field("expansion", piston.expansion);
    if (!piston.skirt.empty()) {
        m_json.beginList("skirt", Lines::one);
        for (const SkirtPoint& point : piston.skirt)
            object({}, point, Lines::one);
        m_json.endList();
    }
    field("bore", piston.bore);
    field("notes", piston.notes);
}

void RecordWriter::fields(const SkirtPoint& point) {
    field("height", point.height);
    field("size", point.size);
}

void RecordWriter::fields(const Ring& ring) {
    field("id", ring.id);
    field("label", ring.label);
    field("groove", ring.groove);
    field("measuredIn", ring.measuredIn);
    field("measuredAt", ring.measuredAt);
    field("gap", ring.gap);
    field("doubt", ring.doubt);
    field("bore", ring.bore);
}

void RecordWriter::fields(const FitLimits& limits) {
    field("lower", limits.lower);
    field("upper", limits.upper);
    field("aim", limits.aim);
    if (limits.decision != DecisionRule()) object("decision", limits.decision, Lines::one);
}

} // namespace borewright
