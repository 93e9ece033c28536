// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/storage/record_writer.h"

namespace borewright {

void RecordWriter::fields(const SizingPlan& plan) {
    list("sizes", plan.sizes, Lines::one);
    field("greatest", plan.greatest);
    field("method", plan.method);
    field("centring", plan.centring);
    field("finishAllowance", plan.finishAllowance);
    field("honeStock", plan.honeStock);
    if (plan.ownSizes) field("ownSizes", true);
    byBore("bores", plan.bores, Lines::many);
}

void RecordWriter::fields(const SizeOnOffer& size) {
    field("oversize", size.oversize);
    field("lower", size.lower);
    field("upper", size.upper);
}

void RecordWriter::fields(const BoreWear& wear) {
    field("side", wear.side);
    field("madeTo", wear.madeTo);
    list("damages", wear.damages, Lines::one);
}

void RecordWriter::fields(const Damage& damage) {
    field("depth", damage.depth);
    field("axis", damage.axis);
    field("deep", damage.deep);
    if (damage.felt) field("felt", true);
    field("what", damage.what);
}

void RecordWriter::fields(const FinishTarget& target) {
    field("size", target.size);
    field("lower", target.lower);
    field("upper", target.upper);
    field("from", target.from);
}

} // namespace borewright
