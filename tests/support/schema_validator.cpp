// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/schema_validator.h"

#include <algorithm>
#include <fstream>

namespace borewright::test {
namespace {

// The fields that random workbooks carry to stand for those of a later version.
bool isUnknown(const std::string& key) {
    return key.starts_with("later") || key.starts_with("other");
}

bool isOfType(const Json& value, const std::string& type) {
    return (type == "object" && value.is_object()) || (type == "array" && value.is_array()) ||
           (type == "string" && value.is_string()) || (type == "boolean" && value.is_boolean()) ||
           (type == "integer" && value.is_number_integer()) ||
           (type == "number" && value.is_number());
}

} // namespace

Json loadSchema(const std::string& name) {
    std::ifstream file(std::string(BOREWRIGHT_SOURCE_DIR) + "/resources/" + name + ".schema.json");
    return Json::parse(file);
}

std::set<std::string> propertiesOf(const Json& schema, const std::string& top) {
    std::set<std::string> all;
    for (const auto& [key, value] : schema["properties"].items())
        all.insert(top + "/" + key);
    for (const auto& [name, definition] : schema["$defs"].items())
        if (definition.contains("properties"))
            for (const auto& [key, value] : definition["properties"].items())
                all.insert(name + "/" + key);
    return all;
}

void SchemaValidator::check(const Json& value, const Json& given, const std::string& name) {
    if (given.contains("$ref")) {
        const auto target = given["$ref"].get<std::string>().substr(8);
        return check(value, m_root["$defs"][target], target);
    }
    checkValue(value, given, name);
    if (given.contains("items"))
        for (const Json& item : value)
            check(item, given["items"], name);
    if (!given.contains("properties")) return;
    for (const auto& [key, member] : value.items()) {
        if (given["properties"].contains(key)) {
            seen.insert(name + "/" + key);
            check(member, given["properties"][key], name + "/" + key);
        } else if (!isUnknown(key) || given.contains("additionalProperties")) {
            problems.insert(name + "/" + key + " is not in the schema");
        }
    }
    if (given.contains("required"))
        for (const Json& key : given["required"])
            if (!value.contains(key.get<std::string>()))
                problems.insert(name + "/" + key.get<std::string>() + " is missing");
}

void SchemaValidator::checkValue(const Json& value, const Json& given, const std::string& name) {
    const auto require = [&](bool good) {
        if (!good) problems.insert(name + ": " + value.dump());
    };
    if (given.contains("const")) require(value == given["const"]);
    if (given.contains("enum"))
        require(std::ranges::find(given["enum"], value) != given["enum"].end());
    if (given.contains("type")) require(isOfType(value, given["type"].get<std::string>()));
    if (given.contains("minimum") && value.is_number())
        require(value.get<double>() >= given["minimum"].get<double>());
    if (given.contains("maximum") && value.is_number())
        require(value.get<double>() <= given["maximum"].get<double>());
    if (given.contains("pattern")) {
        const auto [place, added] = m_patterns.try_emplace(given["pattern"].get<std::string>(),
                                                           given["pattern"].get<std::string>());
        require(value.is_string() && std::regex_search(value.get<std::string>(), place->second));
    }
}

} // namespace borewright::test
