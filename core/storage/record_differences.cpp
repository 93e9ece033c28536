// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/storage/record_differences.h"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <map>
#include <string_view>
#include <utility>

namespace borewright {
namespace {

using Kind = JsonValue::Kind;
using Found = std::vector<Difference>;

const JsonValue* member(const JsonValue& object, std::string_view key) {
    const auto place = std::ranges::find(object.items, key, &JsonValue::key);
    return place == object.items.end() ? nullptr : &*place;
}

std::string textOf(const JsonValue& object, std::string_view key) {
    const JsonValue* found = member(object, key);
    return found == nullptr ? std::string() : found->text;
}

} // namespace

// A few keys say less than the pages do.
std::string wordsForKey(const std::string& key) {
    static constexpr std::array<std::pair<std::string_view, std::string_view>, 7> named{
        {{"straightAim", "aim for straight"},
         {"limitSet", "limits chosen"},
         {"setOn", "gauge set on"},
         {"asked", "stations asked for"},
         {"sizing", "choice of size"},
         {"bore", "bore it is for"},
         {"after", "survey before it"}}};
    for (const auto& [known, words] : named)
        if (known == key) return std::string(words);
    std::string words;
    for (const char c : key) {
        const bool capital = c >= 'A' && c <= 'Z';
        if (capital && !words.empty()) words += ' ';
        words += capital ? static_cast<char>(c - 'A' + 'a') : c;
    }
    return words;
}

namespace {

std::string membersInShort(const JsonValue& object) {
    std::string text;
    for (const JsonValue& one : object.items) {
        if (one.key == "id" || one.text.empty()) continue; // what is inside lists is told elsewhere
        text += (text.empty() ? "" : ", ") + wordsForKey(one.key) + ' ' + inShort(one);
    }
    return text.empty() ? "there" : text;
}

} // namespace

std::string inShort(const JsonValue& value) {
    switch (value.kind) {
    case Kind::null:
        return "nothing";
    case Kind::boolean:
        return value.text == "true" ? "yes" : "no";
    case Kind::number:
    case Kind::string:
        return value.text;
    case Kind::array:
        return value.items.size() == 1 ? "1 entry"
                                       : std::to_string(value.items.size()) + " entries";
    case Kind::object:
        return membersInShort(value);
    }
    return {};
}

namespace {

// What tells the items of a list apart, and what an item is called; without a key, items are told
// apart by their place in the list.
struct ListKind {
    std::string_view list;
    std::array<std::string_view, 2> keys;
    std::string_view name; // of one item
    std::string_view call; // the field that it is called by; empty = by its key, or its place
};
constexpr std::array<ListKind, 24> listKinds{{
    {"bores", {"number", "bore"}, "bore", ""},
    {"axes", {"id", ""}, "axis", ""},
    {"limitSets", {"id", ""}, "limits", "name"},
    {"perBore", {"bore", ""}, "bore", ""},
    {"levels", {"depth", ""}, "level at", ""},
    {"wallMarks", {"depth", "axis"}, "wall at", ""},
    {"ports", {"", ""}, "port band", ""},
    {"studies", {"id", ""}, "repeatability study", ""},
    {"runs", {"", ""}, "run", ""},
    {"zeroChecks", {"", ""}, "zero check", ""},
    {"asked", {"", ""}, "station asked for", ""},
    {"sizes", {"oversize", ""}, "size on offer", ""},
    {"damages", {"", ""}, "damage", ""},
    {"targets", {"bore", ""}, "target of the hone, bore", ""},
    {"pistons", {"id", ""}, "piston", "label"},
    {"rings", {"id", ""}, "ring", "label"},
    {"skirt", {"", ""}, "skirt point", ""},
    {"stones", {"id", ""}, "stone", "name"},
    {"passes", {"id", ""}, "pass", ""},
    {"windows", {"", ""}, "window", ""},
    {"care", {"id", ""}, "care of a stone", ""},
    {"ticks", {"bore", ""}, "ticks of bore", ""},
    {"surveys", {"id", ""}, "survey", "name"},
    {"typed", {"", ""}, "reading", ""},
}};
constexpr ListKind anyList{"", {"", ""}, "entry", ""};

const ListKind& kindOf(std::string_view key) {
    const auto place = std::ranges::find(listKinds, key, &ListKind::list);
    return place == listKinds.end() ? anyList : *place;
}

std::string keyOf(const ListKind& kind, const JsonValue& item) {
    std::string key;
    for (const std::string_view part : kind.keys)
        if (const JsonValue* found = part.empty() ? nullptr : member(item, part))
            key += (key.empty() ? "" : ", ") + found->text;
    return key;
}

std::string called(const ListKind& kind, const JsonValue& item, std::size_t place) {
    std::string name = kind.call.empty() ? std::string() : textOf(item, kind.call);
    if (name.empty()) name = keyOf(kind, item);
    if (name.empty()) name = std::to_string(place + 1);
    return std::string(kind.name) + ' ' + name;
}

Difference inside(Difference around, const std::string& place) {
    if (!place.empty()) around.place += (around.place.empty() ? "" : ", ") + place;
    return around;
}

// The same, and of which bore, where the item says so.
Difference insideItem(const Difference& around, const ListKind& kind, const JsonValue& item,
                      std::size_t place) {
    Difference made = inside(around, called(kind, item, place));
    const bool ofBore = kind.keys[0] == "number" || kind.keys[0] == "bore" || kind.list == "passes";
    const std::string number = textOf(item, kind.keys[0] == "number" ? "number" : "bore");
    if (ofBore && !number.empty() && number.size() < 9) made.bore = std::atoi(number.c_str());
    return made;
}

// What a key names is said in the item's own place.
bool isPlain(const std::string& key) {
    return key.empty() || key == "block" || key == "drive" || key == "limits";
}

// Something that one of the two has: `around` says where it is, or `what` it is.
void onlyOne(Difference around, const std::string& what, const JsonValue* was, const JsonValue* is,
             Found& found) {
    around.what = what;
    if (was != nullptr) around.was = inShort(*was);
    if (is != nullptr) around.is = inShort(*is);
    found.push_back(std::move(around));
}

void compareItems(const JsonValue& was, const JsonValue& is, const Difference& around,
                  const std::string& key, Found& found) {
    const ListKind& kind = kindOf(key);
    // A key that came twice is told apart by its turn.
    using Names = std::map<std::pair<std::string, std::size_t>, std::size_t>;
    const auto named = [&](const JsonValue& list) {
        Names names;
        std::map<std::string, std::size_t> turns;
        for (std::size_t i = 0; i < list.items.size(); ++i) {
            const std::string name = keyOf(kind, list.items[i]);
            names.emplace(std::pair(name, turns[name]++), i);
        }
        return names;
    };
    const Names before = named(was);
    const Names now = named(is);
    const std::size_t foundBefore = found.size();
    std::vector<const JsonValue*> partners(is.items.size());
    for (const auto& [name, at] : now)
        if (const auto same = before.find(name); same != before.end())
            partners[at] = &was.items[same->second];
    for (std::size_t i = 0; i < is.items.size(); ++i) {
        const JsonValue& item = is.items[i];
        const Difference there = insideItem(around, kind, item, i);
        if (partners[i] != nullptr)
            compareValues(*partners[i], item, there, {}, found);
        else
            onlyOne(there, "", nullptr, &item, found);
    }
    for (const auto& [name, at] : before)
        if (!now.contains(name))
            onlyOne(insideItem(around, kind, was.items[at], at), "", &was.items[at], nullptr,
                    found);
    if (found.size() != foundBefore || before == now) return;
    Difference order = around;
    order.what = "order of " + wordsForKey(key);
    order.was = "another";
    order.is = "changed";
    found.push_back(order);
}

} // namespace

Difference underKey(const Difference& around, const std::string& key) {
    return inside(around, isPlain(key) ? "" : wordsForKey(key));
}

Difference inItem(const Difference& around, const std::string& key, const JsonValue& item,
                  std::size_t place) {
    return insideItem(around, kindOf(key), item, place);
}

void compareValues(const JsonValue& was, const JsonValue& is, const Difference& around,
                   const std::string& key, Found& found) {
    if (was.kind == is.kind && was.kind == Kind::object)
        return compareObjects(was, is, underKey(around, key), found);
    if (was.kind == is.kind && was.kind == Kind::array)
        return compareItems(was, is, around, key, found);
    if (was.kind != is.kind || was.text != is.text)
        onlyOne(around, wordsForKey(key), &was, &is, found);
}

void compareObjects(const JsonValue& was, const JsonValue& is, const Difference& around,
                    Found& found) {
    const JsonValue noList{Kind::array, 0, {}, {}, {}};
    const auto isList = [](const JsonValue& v) {
        return v.kind == Kind::array && !v.items.empty();
    };
    for (const JsonValue& now : is.items) {
        if (const JsonValue* before = member(was, now.key))
            compareValues(*before, now, around, now.key, found);
        else if (isList(now)) // its items one by one
            compareValues(noList, now, around, now.key, found);
        else
            onlyOne(around, wordsForKey(now.key), nullptr, &now, found);
    }
    for (const JsonValue& before : was.items) {
        if (member(is, before.key) != nullptr) continue;
        if (isList(before))
            compareValues(before, noList, around, before.key, found);
        else
            onlyOne(around, wordsForKey(before.key), &before, nullptr, found);
    }
}

} // namespace borewright
