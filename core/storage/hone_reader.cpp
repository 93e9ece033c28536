// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/storage/reader_parts.h"
#include "core/storage/record_reader.h"

#include <algorithm>

namespace borewright {

// Named so that the templates of object_reader.h and reader_parts.h find them.
void readValue(const JsonValue& value, Hone& hone, Trouble& trouble);
void readValue(const JsonValue& value, StoneExperience& experience, Trouble& trouble);
void readValue(const JsonValue& value, Stone& stone, Trouble& trouble);
void readValue(const JsonValue& value, HoneStages& stages, Trouble& trouble);
void readValue(const JsonValue& value, StrokeWindow& window, Trouble& trouble);
void readValue(const JsonValue& value, Pass& pass, Trouble& trouble);
void readValue(const JsonValue& value, StoneCare& care, Trouble& trouble);
void takeFields(ObjectReader& fields, BoreTicks& ticks);

namespace {

// The JSON of the first item with which the record, holding only what stands before it, no longer
// stands; or null. A record that fails goes on failing, so it is found by halving: a log is long.
template<class Item>
const JsonValue* firstFaultOf(const JsonValue& value, std::string_view key,
                              const std::vector<Item>& items, HoneRecord& some,
                              std::vector<Item> HoneRecord::*list) {
    const auto standsWith = [&](std::size_t count) {
        (some.*list).assign(items.begin(), items.begin() + static_cast<std::ptrdiff_t>(count));
        return checkHone(some).has_value();
    };
    if (standsWith(items.size())) return nullptr;
    std::size_t place = 0;
    for (std::size_t last = items.size() - 1; place < last;) {
        const std::size_t middle = place + (last - place) / 2;
        if (standsWith(middle + 1))
            place = middle + 1;
        else
            last = middle;
    }
    const JsonValue* member = borewright::member(value, key);
    return member == nullptr ? &value : &member->items[place];
}

// The JSON of what cannot stand in a record that is refused.
const JsonValue& faultOf(const JsonValue& value, const HoneRecord& record) {
    HoneRecord some;
    some.hone = record.hone;
    if (!checkHone(some)) return placeOf(value, "drive");
    if (const auto* fault = firstFaultOf(value, "stones", record.stones, some, &HoneRecord::stones))
        return *fault;
    some.stages = record.stages;
    if (!checkHone(some)) return placeOf(value, "stages");
    if (const auto* fault = firstFaultOf(value, "passes", record.passes, some, &HoneRecord::passes))
        return *fault;
    if (const auto* fault = firstFaultOf(value, "care", record.care, some, &HoneRecord::care))
        return *fault;
    return placeOf(value, "ticks");
}

} // namespace

void readValue(const JsonValue& value, Hone& hone, Trouble& trouble) {
    ObjectReader fields(value, trouble);
    fields.take("speedRpm", hone.speedRpm);
    fields.take("beatsPerMinute", hone.beatsPerMinute);
    fields.take("feed", hone.feed);
    fields.take("oil", hone.oil);
    hone.unknown = fields.rest();
}

void readValue(const JsonValue& value, StoneExperience& experience, Trouble& trouble) {
    ObjectReader fields(value, trouble);
    fields.need("logRate", experience.logRate);
    fields.need("logRateDoubt", experience.logRateDoubt);
    fields.take("passes", experience.passes);
    experience.unknown = fields.rest();
}

void readValue(const JsonValue& value, Stone& stone, Trouble& trouble) {
    ObjectReader fields(value, trouble);
    fields.need("id", stone.id);
    fields.need("name", stone.name);
    fields.take("grit", stone.grit);
    fields.need("kind", stone.kind);
    fields.need("begins", stone.begins);
    fields.need("ends", stone.ends);
    fields.take("outOfOpenEnd", stone.outOfOpenEnd);
    fields.take("outOfClosedEnd", stone.outOfClosedEnd);
    fields.take("experience", stone.experience);
    stone.unknown = fields.rest();
}

void readValue(const JsonValue& value, HoneStages& stages, Trouble& trouble) {
    ObjectReader fields(value, trouble);
    fields.take("roughStopsAt", stages.roughStopsAt);
    fields.take("closedEndLead", stages.closedEndLead);
    fields.take("nextStopsAt", stages.nextStopsAt);
    fields.take("coolBelow", stages.coolBelow);
    stages.unknown = fields.rest();
}

void readValue(const JsonValue& value, StrokeWindow& window, Trouble& trouble) {
    ObjectReader fields(value, trouble);
    fields.need("from", window.from);
    fields.need("to", window.to);
    fields.take("strokes", window.strokes);
    fields.take("seconds", window.seconds);
    fields.take("holdSeconds", window.holdSeconds);
    window.unknown = fields.rest();
}

void readValue(const JsonValue& value, Pass& pass, Trouble& trouble) {
    ObjectReader fields(value, trouble);
    fields.need("id", pass.id);
    fields.need("bore", pass.bore);
    fields.need("stone", pass.stone);
    fields.need("time", pass.time);
    fields.take("after", pass.after);
    fields.need("windows", pass.windows);
    fields.take("speedRpm", pass.speedRpm);
    fields.take("simulated", pass.simulated);
    fields.take("notes", pass.notes);
    fields.take("struck", pass.struck);
    pass.unknown = fields.rest();
}

void readValue(const JsonValue& value, StoneCare& care, Trouble& trouble) {
    ObjectReader fields(value, trouble);
    fields.need("id", care.id);
    fields.need("stone", care.stone);
    fields.need("kind", care.kind);
    fields.need("time", care.time);
    fields.take("afterPass", care.afterPass);
    fields.take("struck", care.struck);
    care.unknown = fields.rest();
}

void takeFields(ObjectReader& fields, BoreTicks& ticks) {
    fields.take("portsChamfered", ticks.portsChamfered);
    fields.take("washed", ticks.washed);
}

void readValue(const JsonValue& value, HoneRecord& record, Trouble& trouble) {
    ObjectReader fields(value, trouble);
    fields.take("drive", record.hone);
    fields.take("stones", record.stones);
    fields.take("stages", record.stages);
    fields.take("passes", record.passes);
    fields.take("care", record.care);
    takeByBore(fields, "ticks", record.ticks, trouble,
               [&](int number, const BoreTicks& ticks, const JsonValue& item) {
                   HoneRecord alone;
                   alone.ticks[number] = ticks;
                   if (const auto good = checkHone(alone); !good)
                       trouble.at(item.line, good.error().where, good.error().what);
               });
    record.unknown = fields.rest();
    if (!trouble.none()) return;
    if (const auto good = checkHone(record); !good)
        trouble.at(faultOf(value, record).line, good.error().where, good.error().what);
}

void checkPassesIn(const JsonValue& root, const Workbook& workbook, Trouble& trouble) {
    const std::vector<Pass>& passes = workbook.hone.passes;
    for (std::size_t i = 0; i < passes.size() && trouble.none(); ++i) {
        const JsonValue& value = member(*member(root, "hone"), "passes")->items[i];
        if (findBore(workbook.block, passes[i].bore) == nullptr)
            trouble.at(value.line, "bore", "there is no bore " + std::to_string(passes[i].bore));
        if (!passes[i].after.empty() && findSurvey(workbook, passes[i].after) == nullptr)
            trouble.at(value.line, "after",
                       "there is no survey '" + shortened(passes[i].after) + "'");
    }
}

} // namespace borewright
