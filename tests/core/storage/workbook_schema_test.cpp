// SPDX-License-Identifier: GPL-3.0-or-later
// resources/workbook.schema.json says what is written and what is read, no more and no less.
#include "core/storage/words.h"
#include "core/storage/workbook_file.h"
#include "tests/support/demo_scenarios.h"
#include "tests/support/fitted_block.h"
#include "tests/support/honed_block.h"
#include "tests/support/random_workbook.h"
#include "tests/support/schema_validator.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>
#include <set>

namespace borewright {
namespace {

using test::Json;

std::vector<Workbook> manyWorkbooks() {
    std::vector<Workbook> all{demo::saltmarsh(), demo::rushmere(), emptyWorkbook()};
    for (unsigned seed = 1; seed <= 60; ++seed)
        all.push_back(test::randomWorkbook(seed));
    return all;
}

TEST(WorkbookSchema, DescribesAllThatIsWrittenAndNothingElse) {
    const Json schema = test::loadSchema("workbook");
    test::SchemaValidator validator(schema);
    for (const Workbook& workbook : manyWorkbooks())
        validator.check(Json::parse(writeWorkbook(workbook)), schema, "workbook");
    EXPECT_EQ(validator.problems, std::set<std::string>());
    EXPECT_EQ(validator.seen, test::propertiesOf(schema, "workbook"));
}

// Takes each member out of each object of a file in turn: the reader misses just what the schema
// calls required.
class Remover {
public:
    Remover(const Json& schema, const Workbook& workbook)
        : m_schema(schema)
        , m_file(Json::parse(writeWorkbook(workbook))) {}

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
    const Json schema = test::loadSchema("workbook");
    Remover surveys(schema, demo::saltmarsh());
    surveys.walk();
    EXPECT_GT(surveys.cases, 70);
    Remover fitted(schema, test::fittedBlock());
    fitted.walk();
    EXPECT_GT(fitted.cases, 80);
    Remover honed(schema, test::honedBlock());
    honed.walk();
    EXPECT_GT(honed.cases, 100);
}

template<class Choice>
void expectWords(const Json& given, Choice choice) {
    std::vector<std::string> words;
    for (const auto& [meaning, word] : wordsOf(choice))
        words.emplace_back(word);
    EXPECT_EQ(given["enum"].get<std::vector<std::string>>(), words);
}

TEST(WorkbookSchema, HasTheWordsOfTheReader) {
    const Json schema = test::loadSchema("workbook");
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
    expectWords(of("sizing", "method"), CutMethod{});
    expectWords(of("sizing", "centring"), Centring{});
    expectWords(of("boreWear", "side"), WearSide{});
    expectWords(of("stone", "kind"), StoneKind{});
    expectWords(of("stoneCare", "kind"), StoneCare::Kind{});
    expectWords(of("printedSheet", "units"), SheetUnits{});
    EXPECT_EQ(schema["properties"]["version"]["const"], workbookVersion);
}

} // namespace
} // namespace borewright
