// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/storage/record_reader.h"

#include "core/storage/reader_parts.h"

#include <set>

namespace borewright {

// Named so that the templates of object_reader.h and reader_parts.h find them.
void readValue(const JsonValue& value, Limits& limits, Trouble& trouble);
void takeFields(ObjectReader& fields, Limits& limits);

namespace {

void requireLimits(const Limits& limits, const JsonValue& value, Trouble& trouble) {
    if (auto good = checkLimits(limits); !good)
        trouble.at(value.line, good.error().where, good.error().what);
}

// Ids must be there once each; `items` are the objects that carry them.
template<class Items, class IdOf>
void checkIds(const JsonValue* list, const Items& items, IdOf idOf, Trouble& trouble) {
    std::set<std::string> ids;
    for (std::size_t i = 0; i < items.size(); ++i) {
        const std::string& id = idOf(items[i]);
        if (id.empty()) trouble.at(list->items[i].line, "id", "is empty");
        if (!ids.insert(id).second)
            trouble.at(list->items[i].line, "id", "'" + shortened(id) + "' is given twice");
    }
}

void checkStation(const Block& block, const Station& station, const JsonValue& value,
                  Trouble& trouble) {
    if (findBore(block, station.bore) == nullptr)
        trouble.at(value.line, "bore", "there is no bore " + std::to_string(station.bore));
    if (findAxis(block, station.axis) == nullptr)
        trouble.at(value.line, "axis", "there is no axis '" + shortened(station.axis) + "'");
}

} // namespace

const JsonValue* member(const JsonValue& object, std::string_view key) {
    for (const JsonValue& item : object.items)
        if (item.key == key) return &item;
    return nullptr;
}

const JsonValue& placeOf(const JsonValue& object, std::string_view key) {
    const JsonValue* found = member(object, key);
    return found == nullptr ? object : *found;
}

void takeFields(ObjectReader& fields, Limits& limits) {
    fields.take("sizeLower", limits.sizeLower);
    fields.take("sizeUpper", limits.sizeUpper);
    fields.take("outOfRound", limits.outOfRound);
    fields.take("taper", limits.taper);
}

void readValue(const JsonValue& value, Job& job, Trouble& trouble) {
    ObjectReader fields(value, trouble);
    fields.take("customer", job.customer);
    fields.take("engine", job.engine);
    fields.take("serial", job.serial);
    fields.take("reason", job.reason);
    fields.take("measuredBy", job.measuredBy);
    fields.take("notes", job.notes);
    job.unknown = fields.rest();
}

void readValue(const JsonValue& value, SheetText& sheet, Trouble& trouble) {
    ObjectReader fields(value, trouble);
    fields.take("summary", sheet.summary);
    sheet.unknown = fields.rest();
}

void readValue(const JsonValue& value, Limits& limits, Trouble& trouble) {
    ObjectReader fields(value, trouble);
    takeFields(fields, limits);
    limits.unknown = fields.rest();
    requireLimits(limits, value, trouble);
}

void readValue(const JsonValue& value, DecisionRule& rule, Trouble& trouble) {
    ObjectReader fields(value, trouble);
    fields.need("rule", rule.kind);
    fields.take("ownPercent", rule.ownPercent);
    rule.unknown = fields.rest();
    if (auto good = checkDecision(rule); !good)
        trouble.at(value.line, good.error().where, good.error().what);
}

void readValue(const JsonValue& value, LimitSet& set, Trouble& trouble) {
    ObjectReader fields(value, trouble);
    fields.need("id", set.id);
    fields.take("name", set.name);
    fields.need("purpose", set.purpose);
    fields.take("oversize", set.oversize);
    fields.take("finishSize", set.finishSize);
    fields.take("taperRule", set.taperRule);
    fields.take("decision", set.decision);
    fields.take("limits", set.limits);
    takeByBore(fields, "perBore", set.perBore, trouble,
               [&](int, const Limits& limits, const JsonValue& item) {
                   requireLimits(limits, item, trouble);
               });
    set.unknown = fields.rest();
}

void checkRecord(const JsonValue& root, const Workbook& workbook, Trouble& trouble) {
    checkIds(
        member(root, "limitSets"), workbook.limitSets,
        [](const LimitSet& set) -> const std::string& { return set.id; }, trouble);
    const JsonValue* surveys = member(root, "surveys");
    checkIds(
        surveys, workbook.surveys,
        [](const Survey& survey) -> const std::string& { return survey.header.id; }, trouble);
    checkIds(
        member(root, "studies"), workbook.studies,
        [](const RepeatStudy& study) -> const std::string& { return study.id; }, trouble);
    for (std::size_t i = 0; i < workbook.surveys.size() && trouble.none(); ++i) {
        const Survey& survey = workbook.surveys[i];
        if (survey.header.asked) {
            const JsonValue* asked = member(surveys->items[i], "asked");
            for (std::size_t k = 0; k < survey.header.asked->size(); ++k)
                checkStation(workbook.block, (*survey.header.asked)[k], asked->items[k], trouble);
        }
        const JsonValue* readings = member(surveys->items[i], "readings");
        for (std::size_t k = 0; k < survey.readings.size(); ++k)
            checkStation(workbook.block, survey.readings[k].station, readings->items[k], trouble);
    }
}

} // namespace borewright
