// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/storage/reader_parts.h"
#include "core/storage/record_reader.h"

namespace borewright {

// Named so that the templates of object_reader.h and reader_parts.h find them.
void readValue(const JsonValue& value, Damage& damage, Trouble& trouble);
void readValue(const JsonValue& value, SizeOnOffer& size, Trouble& trouble);
void takeFields(ObjectReader& fields, BoreWear& wear);
void takeFields(ObjectReader& fields, FinishTarget& target);

namespace {

// Names the damage where it is one that cannot stand.
void checkBoreWear(int number, const BoreWear& wear, const JsonValue& value, Trouble& trouble) {
    SizingPlan plan;
    plan.bores[number] = wear;
    const auto good = checkSizing(plan);
    if (good) return;
    BoreWear& some = plan.bores[number];
    some.damages.clear();
    const auto stands = [&] { return checkSizing(plan).has_value(); };
    const JsonValue* fault = nullptr;
    if (stands()) fault = firstFault(member(value, "damages"), wear.damages, some.damages, stands);
    trouble.at(fault == nullptr ? value.line : fault->line, good.error().where, good.error().what);
}

// The JSON of what cannot stand in a plan whose bores do.
const JsonValue& faultOf(const JsonValue& value, const SizingPlan& plan) {
    SizingPlan some;
    const auto stands = [&] { return checkSizing(some).has_value(); };
    if (const auto* fault = firstFault(member(value, "sizes"), plan.sizes, some.sizes, stands))
        return *fault;
    some.greatest = plan.greatest;
    if (!stands()) return placeOf(value, "greatest");
    some.finishAllowance = plan.finishAllowance;
    if (!stands()) return placeOf(value, "finishAllowance");
    some.honeStock = plan.honeStock;
    return stands() ? value : placeOf(value, "honeStock");
}

} // namespace

void readValue(const JsonValue& value, Damage& damage, Trouble& trouble) {
    ObjectReader fields(value, trouble);
    fields.need("depth", damage.depth);
    fields.take("axis", damage.axis);
    fields.need("deep", damage.deep);
    fields.take("felt", damage.felt);
    fields.take("what", damage.what);
    damage.unknown = fields.rest();
}

void readValue(const JsonValue& value, SizeOnOffer& size, Trouble& trouble) {
    ObjectReader fields(value, trouble);
    fields.need("oversize", size.oversize);
    fields.take("lower", size.lower);
    fields.take("upper", size.upper);
    size.unknown = fields.rest();
}

void takeFields(ObjectReader& fields, BoreWear& wear) {
    fields.take("side", wear.side);
    fields.take("madeTo", wear.madeTo);
    fields.take("damages", wear.damages);
}

void takeFields(ObjectReader& fields, FinishTarget& target) {
    fields.need("size", target.size);
    fields.take("lower", target.lower);
    fields.take("upper", target.upper);
    fields.take("from", target.from);
}

void readValue(const JsonValue& value, SizingPlan& plan, Trouble& trouble) {
    ObjectReader fields(value, trouble);
    fields.take("sizes", plan.sizes);
    fields.take("greatest", plan.greatest);
    fields.take("method", plan.method);
    fields.take("centring", plan.centring);
    fields.take("finishAllowance", plan.finishAllowance);
    fields.take("honeStock", plan.honeStock);
    fields.take("ownSizes", plan.ownSizes);
    takeByBore(fields, "bores", plan.bores, trouble,
               [&](int number, const BoreWear& wear, const JsonValue& item) {
                   checkBoreWear(number, wear, item, trouble);
               });
    plan.unknown = fields.rest();
    if (!trouble.none()) return;
    if (const auto good = checkSizing(plan); !good)
        trouble.at(faultOf(value, plan).line, good.error().where, good.error().what);
}

void takeTargets(ObjectReader& fields, FinishTargets& targets, Trouble& trouble) {
    takeByBore(fields, "targets", targets, trouble,
               [&](int number, const FinishTarget& target, const JsonValue& item) {
                   if (const auto good = checkTargets({{number, target}}); !good)
                       trouble.at(item.line, good.error().where, good.error().what);
               });
}

} // namespace borewright
