// SPDX-License-Identifier: GPL-3.0-or-later
// resources/workbook.schema.json says what is written and what is read, no more and no less.
#include "core/storage/words.h"
#include "core/storage/workbook_file.h"
#include "tests/support/demo_scenarios.h"
#include "tests/support/random_workbook.h"

#include <fstream>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>
#include <regex>
#include <set>

namespace borewright {
namespace {

using Json = nlohmann::ordered_json;

Json loadSchema() {
    std::ifstream file(std::string(BOREWRIGHT_SOURCE_DIR) + "/resources/workbook.schema.json");
    return Json::parse(file);
}

// The fields that random workbooks carry to stand for those of a later version.
bool isUnknown(const std::string& key) {
    return key.starts_with("later") || key.starts_with("other");
}

// Checks values against the schema, as far as its words are used there (JSON Schema 2020-12), and
// keeps what it saw.
class Validator {
public:
    explicit Validator(const Json& schema)
        : m_root(schema) {}

    std::set<std::string> seen;     // "reading/typed": properties met
    std::set<std::string> problems; // each with its place

    void check(const Json& value, const Json& given, const std::string& name) {
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

private:
    void checkValue(const Json& value, const Json& given, const std::string& name) {
        const auto require = [&](bool good) {
            if (!good) problems.insert(name + ": " + value.dump());
        };
        if (given.contains("const")) require(value == given["const"]);
        if (given.contains("enum"))
            require(std::ranges::find(given["enum"], value) != given["enum"].end());
        if (given.contains("type")) {
            const auto type = given["type"].get<std::string>();
            require((type == "object" && value.is_object()) ||
                    (type == "array" && value.is_array()) ||
                    (type == "string" && value.is_string()) ||
                    (type == "boolean" && value.is_boolean()) ||
                    (type == "integer" && value.is_number_integer()) ||
                    (type == "number" && value.is_number()));
        }
        if (given.contains("pattern")) {
            const auto [place, added] = m_patterns.try_emplace(given["pattern"].get<std::string>(),
                                                               given["pattern"].get<std::string>());
            require(value.is_string() &&
                    std::regex_search(value.get<std::string>(), place->second));
        }
    }

    const Json& m_root;
    std::map<std::string, std::regex> m_patterns;
};

std::vector<Workbook> manyWorkbooks() {
    std::vector<Workbook> all{demo::saltmarsh(), demo::rushmere(), emptyWorkbook()};
    for (unsigned seed = 1; seed <= 60; ++seed)
        all.push_back(test::randomWorkbook(seed));
    return all;
}

// "reading/typed" for every property of the schema.
std::set<std::string> properties(const Json& schema) {
    std::set<std::string> all;
    for (const auto& [key, value] : schema["properties"].items())
        all.insert("workbook/" + key);
    for (const auto& [name, definition] : schema["$defs"].items())
        if (definition.contains("properties"))
            for (const auto& [key, value] : definition["properties"].items())
                all.insert(name + "/" + key);
    return all;
}

TEST(WorkbookSchema, DescribesAllThatIsWrittenAndNothingElse) {
    const Json schema = loadSchema();
    Validator validator(schema);
    for (const Workbook& workbook : manyWorkbooks())
        validator.check(Json::parse(writeWorkbook(workbook)), schema, "workbook");
    EXPECT_EQ(validator.problems, std::set<std::string>());
    EXPECT_EQ(validator.seen, properties(schema));
}

// Takes each member out of each object of a file in turn: the reader misses just what the schema
// calls required.
class Remover {
public:
    explicit Remover(const Json& schema)
        : m_schema(schema)
        , m_file(Json::parse(writeWorkbook(demo::saltmarsh()))) {}

    int cases = 0;

    void walk(Json& value, const Json& given) {
        if (given.contains("$ref"))
            return walk(value, m_schema["$defs"][given["$ref"].get<std::string>().substr(8)]);
        if (value.is_array() && !value.empty()) return walk(value.front(), given["items"]);
        if (!value.is_object()) return;
        std::vector<std::string> keys;
        for (const auto& [key, member] : value.items())
            keys.push_back(key);
        for (const std::string& key : keys) {
            walk(value[key], given["properties"][key]);
            tryWithout(value, key, given);
        }
    }
    void walk() { walk(m_file, m_schema); }

private:
    void tryWithout(Json& value, const std::string& key, const Json& given) {
        const Json before = value;
        value.erase(key);
        const bool required =
            given.contains("required") &&
            std::ranges::find(given["required"], Json(key)) != given["required"].end();
        const auto read = readWorkbook(m_file.dump(1));
        const std::string said = read ? "was read" : read.error().message();
        // Surveys refer to bores; without those it is the readings that are wrong.
        const bool missed = said.find(key + ": is missing") != std::string::npos ||
                            said == "this is not a Borewright workbook";
        EXPECT_EQ(missed, required) << key << ": " << said;
        value = before;
        ++cases;
    }

    const Json& m_schema;
    Json m_file;
};

TEST(WorkbookSchema, RequiresWhatTheReaderMisses) {
    const Json schema = loadSchema();
    Remover remover(schema);
    remover.walk();
    EXPECT_GT(remover.cases, 70);
}

template<class Choice>
void expectWords(const Json& given, Choice choice) {
    std::vector<std::string> words;
    for (const auto& [meaning, word] : wordsOf(choice))
        words.emplace_back(word);
    EXPECT_EQ(given["enum"].get<std::vector<std::string>>(), words);
}

TEST(WorkbookSchema, HasTheWordsOfTheReader) {
    const Json schema = loadSchema();
    const auto of = [&](const char* name, const char* key) -> const Json& {
        return schema["$defs"][name]["properties"][key];
    };
    expectWords(of("block", "arrangement"), Arrangement{});
    expectWords(of("bore", "surface"), Surface{});
    expectWords(of("bore", "combustionEnd"), End{});
    expectWords(of("level", "judging"), Judging{});
    expectWords(of("limitSet", "purpose"), LimitPurpose{});
    expectWords(of("limitSet", "taperRule"), TaperRule{});
    expectWords(of("survey", "kind"), SurveyKind{});
    expectWords(of("gauge", "entry"), Entry{});
    expectWords(of("gauge", "masterExpansion"), Expansion{});
    expectWords(of("gauge", "blockExpansion"), Expansion{});
    expectWords(of("dial", "face"), Dial::Face{});
    expectWords(of("dial", "larger"), Dial::Larger{});
    EXPECT_EQ(schema["properties"]["version"]["const"], workbookVersion);
}

} // namespace
} // namespace borewright
