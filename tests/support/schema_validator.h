// SPDX-License-Identifier: GPL-3.0-or-later
// Values against the schemas in resources/, as far as their words are used there (JSON Schema
// 2020-12).
#pragma once

#include <map>
#include <nlohmann/json.hpp>
#include <regex>
#include <set>
#include <string>

namespace borewright::test {

using Json = nlohmann::ordered_json;

// resources/NAME.schema.json
Json loadSchema(const std::string& name);

// "reading/typed" for every property of the schema; those of the whole begin with `top`.
std::set<std::string> propertiesOf(const Json& schema, const std::string& top);

// Checks values and keeps what it saw.
class SchemaValidator {
public:
    explicit SchemaValidator(const Json& schema)
        : m_root(schema) {}

    std::set<std::string> seen;     // "reading/typed": properties met
    std::set<std::string> problems; // each with its place

    void check(const Json& value, const Json& given, const std::string& name);

private:
    void checkValue(const Json& value, const Json& given, const std::string& name);

    const Json& m_root;
    std::map<std::string, std::regex> m_patterns;
};

} // namespace borewright::test
