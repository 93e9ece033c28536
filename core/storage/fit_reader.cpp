// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/storage/reader_parts.h"
#include "core/storage/record_reader.h"

namespace borewright {

// Named so that the templates of object_reader.h find them.
void readValue(const JsonValue& value, SkirtPoint& point, Trouble& trouble);
void readValue(const JsonValue& value, Piston& piston, Trouble& trouble);
void readValue(const JsonValue& value, Ring& ring, Trouble& trouble);
void readValue(const JsonValue& value, FitLimits& limits, Trouble& trouble);

namespace {

// The JSON of what cannot stand in a fit that is refused.
const JsonValue& faultOf(const JsonValue& value, const FitRecord& fit) {
    FitRecord some;
    const auto stands = [&] { return checkFit(some).has_value(); };
    if (const auto* fault = firstFault(member(value, "pistons"), fit.pistons, some.pistons, stands))
        return *fault;
    if (const auto* fault = firstFault(member(value, "rings"), fit.rings, some.rings, stands))
        return *fault;
    some.clearance = fit.clearance;
    if (!stands()) return placeOf(value, "clearance");
    some.ringGap = fit.ringGap;
    if (!stands()) return placeOf(value, "ringGap");
    some.fileStep = fit.fileStep;
    return stands() ? value : placeOf(value, "fileStep");
}

} // namespace

void readValue(const JsonValue& value, SkirtPoint& point, Trouble& trouble) {
    ObjectReader fields(value, trouble);
    fields.need("height", point.height);
    fields.need("size", point.size);
    point.unknown = fields.rest();
}

void readValue(const JsonValue& value, Piston& piston, Trouble& trouble) {
    ObjectReader fields(value, trouble);
    fields.need("id", piston.id);
    fields.take("label", piston.label);
    fields.take("size", piston.size);
    fields.take("height", piston.height);
    fields.take("measuredWith", piston.measuredWith);
    fields.take("temperature", piston.temperature);
    fields.take("doubt", piston.doubt);
    fields.take("expansion", piston.expansion);
    fields.take("skirt", piston.skirt);
    fields.take("bore", piston.bore);
    fields.take("notes", piston.notes);
    piston.unknown = fields.rest();
}

void readValue(const JsonValue& value, Ring& ring, Trouble& trouble) {
    ObjectReader fields(value, trouble);
    fields.need("id", ring.id);
    fields.take("label", ring.label);
    fields.take("groove", ring.groove);
    fields.take("measuredIn", ring.measuredIn);
    fields.take("measuredAt", ring.measuredAt);
    fields.take("gap", ring.gap);
    fields.take("doubt", ring.doubt);
    fields.take("bore", ring.bore);
    ring.unknown = fields.rest();
}

void readValue(const JsonValue& value, FitLimits& limits, Trouble& trouble) {
    ObjectReader fields(value, trouble);
    fields.take("lower", limits.lower);
    fields.take("upper", limits.upper);
    fields.take("aim", limits.aim);
    fields.take("decision", limits.decision);
    limits.unknown = fields.rest();
}

void readValue(const JsonValue& value, FitRecord& fit, Trouble& trouble) {
    ObjectReader fields(value, trouble);
    fields.take("pistons", fit.pistons);
    fields.take("rings", fit.rings);
    fields.take("clearance", fit.clearance);
    fields.take("ringGap", fit.ringGap);
    fields.take("fileStep", fit.fileStep);
    fit.unknown = fields.rest();
    if (!trouble.none()) return;
    if (const auto good = checkFit(fit); !good)
        trouble.at(faultOf(value, fit).line, good.error().where, good.error().what);
}

} // namespace borewright
