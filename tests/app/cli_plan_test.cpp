// SPDX-License-Identifier: GPL-3.0-or-later
// borewright plan, and the loop plan, pass, record as a script runs it: with no display, on a file,
// against a bench that shares no code with the planner.
#include "tests/app/honing_commands.h"
#include "tests/support/hone_shop.h"
#include "tests/support/mild_bench.h"
#include "tests/support/schema_validator.h"

#include <fmt/format.h>

namespace borewright {
namespace {

using namespace test;

class PlanCommand : public HoningCommands {
protected:
    PlanCommand()
        : shop(mildBlock(31, 1)) {
        files.put(file, writeWorkbook(shop.workbook));
    }
    int plan(const Words& more) { return with({"plan", file}, more); }
    Json planned() {
        EXPECT_EQ(err.str(), "");
        return Json::parse(out.str());
    }
    // What the script reads off the plan, as it goes into the next command.
    static std::string inMm(const Json& length) {
        return fmt::format("{:.4f}mm", length.get<double>());
    }
    Words passOf(const Json& bore) {
        Words words{"pass",    file,
                    "--bore",  bore["bore"].dump(),
                    "--stone", bore["stone"].get<std::string>()};
        for (const Json& window : bore["windows"]) {
            words.insert(words.end(),
                         {"--from", inMm(window["from_mm"]), "--to", inMm(window["to_mm"]),
                          "--strokes", fmt::format("{:.0f}", window["strokes"].get<double>())});
            if (window["hold_s"].get<double>() > 0)
                words.insert(words.end(),
                             {"--hold", fmt::format("{:.0f}", window["hold_s"].get<double>())});
        }
        return words;
    }
    // The bench does what was planned and is read at all of its stations.
    Words recordOf(const Json& bore) {
        PlannedSetUp setUp;
        setUp.stone = bore["stone_id"].get<std::string>();
        for (const Json& window : bore["windows"])
            setUp.windows.push_back(
                {typedMm(fmt::format("{:.4f}", window["from_mm"].get<double>())),
                 typedMm(fmt::format("{:.4f}", window["to_mm"].get<double>())),
                 window["strokes"].get<double>(), 0, window["hold_s"].get<double>()});
        shop.stroke(1, setUp);
        shop.measure(std::vector<int>{1});
        Words words{"record", file, "--bore", "1"};
        for (const Reading& reading : shop.workbook.surveys.back().readings)
            words.insert(words.end(),
                         {"--reading", fmt::format("{}mm,{},{}mm",
                                                   format(reading.station.depth, Unit::millimetre,
                                                          1, Sign::plain),
                                                   reading.station.axis, reading.typed.text())});
        return words;
    }

    HoneShop shop;
};

TEST_F(PlanCommand, ALoopOfPlanPassAndRecordHonesABore) {
    std::optional<double> toGo;
    for (int round = 0; round < 3; ++round) {
        ASSERT_EQ(plan({"--bore", "1", "--json"}), exitOutside) << out.str() << err.str();
        const Json bore = planned()["plan"]["bores"][0];
        EXPECT_EQ(bore["status"], "next") << bore["sentence"];
        EXPECT_LE(bore["chance_over"].get<double>(), bore["chance_over_limit"].get<double>());
        double smallest = bore["now"][0]["diameter_mm"].get<double>();
        for (const Json& at : bore["now"])
            smallest = std::min(smallest, at["diameter_mm"].get<double>());
        const double left = bore["finish_mm"].get<double>() - smallest;
        if (toGo) {
            EXPECT_LT(left, *toGo) << "each round brings it on";
        }
        toGo = left;
        watch.seconds += 60;
        ASSERT_EQ(run(passOf(bore)), exitWithin) << err.str();
        ASSERT_EQ(plan({"--json"}), exitUndecided) << "measure first";
        EXPECT_EQ(planned()["plan"]["bores"][0]["status"], "not-measured");
        watch.seconds += 1800;
        ASSERT_EQ(run(recordOf(bore)), exitWithin) << err.str();
    }
    EXPECT_EQ(now().hone.passes.size(), 3U);
    EXPECT_EQ(now().surveys.size(), 4U);
    EXPECT_NE(plan({}), exitWrong) << err.str();
    expectSays(out.str(), "Planned in ");
    EXPECT_LE(shop.bench(1).largest(), 5.0) << "over its limit";
}

TEST_F(PlanCommand, TheTextTellsTheSetUpTheStonesAndTheCautions) {
    EXPECT_EQ(plan({}), exitOutside) << err.str();
    EXPECT_TRUE(out.str().starts_with("Bore 1: ")) << out.str();
    expectSays(out.str(), "with its lower end from ");
    expectSays(out.str(), "; then measure ");
    expectSays(out.str(), "model, not measured");
    expectSays(out.str(), "breaks a wrist");
    EXPECT_EQ(plan({"--units", "inch"}), exitOutside);
    expectSays(out.str(), " in");
}

TEST_F(PlanCommand, JsonFollowsTheSchema) {
    const Json schema = loadSchema("results");
    plan({"--json"});
    SchemaValidator validator(schema);
    validator.check(planned()["plan"], schema["$defs"]["honePlan"], "honePlan");
    EXPECT_EQ(validator.problems, std::set<std::string>());
    EXPECT_EQ(planned()["invented"], true);
}

TEST_F(PlanCommand, WhatCannotBePlannedIsUndecided) {
    Workbook workbook = shop.workbook;
    workbook.hone.stones.clear();
    files.put(file, writeWorkbook(workbook));
    EXPECT_EQ(plan({}), exitUndecided);
    expectSays(out.str(), "No stone is in the list");
    EXPECT_EQ(plan({"--json"}), exitUndecided);
    expectSays(planned()["plan"]["refused"].get<std::string>(), "No stone");
}

TEST_F(PlanCommand, WrongUsageIsThree) {
    EXPECT_EQ(plan({"--bore", "7"}), exitWrong);
    expectSays(err.str(), "there is no bore 7");
    EXPECT_EQ(plan({"--fitted", "nothing"}), exitWrong);
    expectSays(err.str(), "there is no stone 'nothing'");
    EXPECT_EQ(plan({"--units", "cubits"}), exitWrong);
    EXPECT_EQ(run({"plan", "/shop/none.borebook"}), exitWrong);
    EXPECT_EQ(run({"plan"}), exitWrong);
}

} // namespace
} // namespace borewright
