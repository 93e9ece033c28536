// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/storage/object_reader.h"
#include "core/storage/record_reader.h"
#include "core/workbook/check.h"

namespace borewright {

// Named so that the templates of object_reader.h find them.
void readValue(const JsonValue& value, Axis& axis, Trouble& trouble);
void readValue(const JsonValue& value, PortBand& band, Trouble& trouble);
void readValue(const JsonValue& value, BoreMap& map, Trouble& trouble);
void readValue(const JsonValue& value, Level& level, Trouble& trouble);
void readValue(const JsonValue& value, WallMark& mark, Trouble& trouble);
void readValue(const JsonValue& value, Bore& bore, Trouble& trouble);

void readValue(const JsonValue& value, Axis& axis, Trouble& trouble) {
    ObjectReader fields(value, trouble);
    fields.need("id", axis.id);
    fields.take("label", axis.label);
    fields.take("angle", axis.angleDegrees);
    axis.unknown = fields.rest();
}

void readValue(const JsonValue& value, PortBand& band, Trouble& trouble) {
    ObjectReader fields(value, trouble);
    fields.need("from", band.from);
    fields.need("to", band.to);
    fields.take("axes", band.axes);
    band.unknown = fields.rest();
}

void readValue(const JsonValue& value, BoreMap& map, Trouble& trouble) {
    ObjectReader fields(value, trouble);
    fields.take("topRingLine", map.topRingLine);
    fields.take("lowestRingLine", map.lowestRingLine);
    fields.take("ports", map.ports);
    fields.take("gaugeFoot", map.gaugeFoot);
    map.unknown = fields.rest();
}

void readValue(const JsonValue& value, Level& level, Trouble& trouble) {
    ObjectReader fields(value, trouble);
    fields.need("depth", level.depth);
    fields.take("judging", level.judging);
    level.unknown = fields.rest();
}

void readValue(const JsonValue& value, WallMark& mark, Trouble& trouble) {
    ObjectReader fields(value, trouble);
    fields.need("depth", mark.depth);
    fields.need("axis", mark.axis);
    fields.need("wall", mark.wall);
    mark.unknown = fields.rest();
}

void readValue(const JsonValue& value, Bore& bore, Trouble& trouble) {
    ObjectReader fields(value, trouble);
    fields.need("number", bore.number);
    fields.take("standardSize", bore.standardSize);
    fields.take("depth", bore.depth);
    fields.take("surface", bore.surface);
    fields.take("openEnd", bore.openEnd);
    fields.take("roomAtOpenEnd", bore.roomAtOpenEnd);
    fields.take("roomAtClosedEnd", bore.roomAtClosedEnd);
    fields.take("combustionEnd", bore.combustionEnd);
    fields.take("map", bore.map);
    fields.take("levels", bore.levels);
    fields.take("wallMarks", bore.wallMarks);
    bore.unknown = fields.rest();
}

void readValue(const JsonValue& value, Block& block, Trouble& trouble) {
    ObjectReader fields(value, trouble);
    fields.take("arrangement", block.arrangement);
    fields.need("axes", block.axes);
    if (const JsonValue* bores = fields.find("bores")) {
        // Told before a million of them are read.
        if (static_cast<int>(bores->items.size()) > mostBores)
            return trouble.at(*bores, "more than " + std::to_string(mostBores) + " bores");
        readValue(*bores, block.bores, trouble);
        for (std::size_t i = 0; trouble.none() && i < block.bores.size(); ++i)
            if (auto good = checkBore(block.bores[i], block.axes); !good)
                trouble.at(bores->items[i].line, good.error().where, good.error().what);
    }
    block.unknown = fields.rest();
    if (trouble.none())
        if (auto good = checkBlock(block); !good)
            trouble.at(value.line, good.error().where, good.error().what);
}

} // namespace borewright
