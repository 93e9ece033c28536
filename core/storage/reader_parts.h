// SPDX-License-Identifier: GPL-3.0-or-later
// What several readers share: lists by engine number, and the line of what cannot stand. Part of
// the workbook reader.
#pragma once

#include "core/storage/object_reader.h"

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace borewright {

// Null where the object has no such member.
const JsonValue* member(const JsonValue& object, std::string_view key);
// The member, or the object itself, to name a line.
const JsonValue& placeOf(const JsonValue& object, std::string_view key);

// Takes a list of objects, each with the "bore" it is of; refuses a bore given twice. What else
// stands in one is taken by takeFields(), then asked of `check(number, item, its JSON)`.
template<class T, class Check>
void takeByBore(ObjectReader& fields, std::string_view key, std::map<int, T>& into,
                Trouble& trouble, Check check) {
    const JsonValue* list = fields.find(key);
    if (list == nullptr || !isKind(*list, JsonValue::Kind::array, trouble)) return;
    for (const JsonValue& value : list->items) {
        ObjectReader own(value, trouble);
        int number = 0;
        own.need("bore", number);
        if (into.contains(number))
            trouble.at(value.line, "bore", std::to_string(number) + " is given twice");
        T& item = into[number];
        takeFields(own, item);
        item.unknown = own.rest();
        if (trouble.none()) check(number, item, value);
        if (!trouble.none()) return;
    }
}

// Gives `some` one of the `items` after the other while the whole stands(); the JSON of the first
// with which it does not, or null.
template<class Item, class Stands>
const JsonValue* firstFault(const JsonValue* list, const std::vector<Item>& items,
                            std::vector<Item>& some, Stands stands) {
    for (std::size_t i = 0; list != nullptr && i < items.size(); ++i) {
        some.push_back(items[i]);
        if (!stands()) return &list->items[i];
    }
    return nullptr;
}

} // namespace borewright
