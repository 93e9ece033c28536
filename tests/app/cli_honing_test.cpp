// SPDX-License-Identifier: GPL-3.0-or-later
// The commands that log stones and passes: what they print, what they write, what they refuse.
#include "core/storage/posix_file_system.h"
#include "tests/app/honing_commands.h"
#include "tests/support/schema_validator.h"

#include <cmath>

namespace borewright {
namespace {

using namespace test;

TEST_F(HoningCommands, StoneAddsOneAndChangesIt) {
    EXPECT_EQ(stone({"--name", "full 180", "--grit", "180", "--rough", "--begins", "0", "--ends",
                     "75mm", "--out-open", "1", "--rate", "1.2um", "--rate-doubt", "1.5"}),
              exitWithin)
        << err.str();
    EXPECT_EQ(out.str(), "Added the stone 'full 180' (k4).\n");
    Stone made = now().hone.stones.back();
    EXPECT_EQ(made.grit, "180");
    EXPECT_EQ(made.begins.withUnit(), "0 in") << "the workbook's own unit";
    EXPECT_EQ(made.ends.withUnit(), "75 mm") << "as typed";
    EXPECT_EQ(made.outOfOpenEnd, typedIn("1"));
    EXPECT_EQ(made.outOfClosedEnd, std::nullopt);
    EXPECT_DOUBLE_EQ(made.experience->logRate, std::log(1.2));
    EXPECT_DOUBLE_EQ(made.experience->logRateDoubt, std::log(1.5));

    EXPECT_EQ(stone({"--name", " FULL 180", "--finish", "--rate", "0.1", "--rate-doubt", "2"}),
              exitWithin);
    EXPECT_EQ(out.str(), "Changed the stone 'full 180' (k4).\n");
    made = now().hone.stones.back();
    EXPECT_EQ(made.kind, StoneKind::finish);
    EXPECT_EQ(made.grit, "180") << "what was not said stays";
    EXPECT_DOUBLE_EQ(made.experience->logRate, std::log(2.54)) << "a tenth of a thou";
}

TEST_F(HoningCommands, StoneListsThemAndLogsTheirCare) {
    EXPECT_EQ(stone({}), exitWithin);
    expectSays(out.str(), "Short 100");
    expectSays(out.str(), "0.67 to 4.75"); // worked in hone_record_test.cpp
    EXPECT_EQ(stone({"--name", "short 100", "--care", "reverse"}), exitWithin) << err.str();
    EXPECT_EQ(out.str(), "Logged that the stone 'Short 100' was run in reverse, after pass h3.\n");
    const StoneCare care = now().hone.care.back();
    EXPECT_EQ(care.kind, StoneCare::Kind::runInReverse);
    EXPECT_EQ(care.stone, "k2");
    EXPECT_EQ(care.afterPass, "h3");
    EXPECT_EQ(care.time, watch.now());
    Workbook bare = now();
    bare.hone = {};
    files.put(file, writeWorkbook(bare));
    EXPECT_EQ(stone({}), exitWithin);
    EXPECT_EQ(out.str(), "No stone is entered yet.\n");
}

TEST_F(HoningCommands, HoneTellsHowItStandsAndChangesWhatIsGiven) {
    const auto before = files.content(file);
    EXPECT_EQ(hone({}), exitWithin) << err.str();
    EXPECT_EQ(files.content(file), before);
    expectSays(out.str(),
               "350 turns a minute, 72 strokes a minute, spring at the third mark, with oil");
    expectSays(out.str(), "full rough stones stop with to go: 4 thou\n");
    EXPECT_EQ(hone({"--speed", "320", "--dry", "--next-stops-at", "0,9", "--bore", "3", "--done",
                    "chamfered", "--not-done", "washed"}),
              exitWithin)
        << err.str();
    expectSays(out.str(), "320 turns a minute, 72 strokes");
    const HoneRecord record = now().hone;
    EXPECT_EQ(record.hone.speedRpm, 320);
    EXPECT_EQ(record.hone.oil, false);
    EXPECT_EQ(record.stages.nextStopsAt->withUnit(), "0,9 thou") << "as typed";
    EXPECT_EQ(record.stages.roughStopsAt, typedThou("4")) << "what was not said stays";
    EXPECT_TRUE(record.ticks.at(3).portsChamfered);
    EXPECT_FALSE(record.ticks.at(3).washed);
    EXPECT_TRUE(record.ticks.at(1).portsChamfered) << "of the other bores as well";
}

TEST_F(HoningCommands, HoneRefusesWhatCannotBe) {
    expectSays(refused(&HoningCommands::hone, {"--speed", "fast"}), "--speed");
    expectSays(refused(&HoningCommands::hone, {"--speed", "0"}), "turns more than 0");
    expectSays(refused(&HoningCommands::hone, {"--beat", "0"}), "nothing was changed");
    expectSays(refused(&HoningCommands::hone, {"--done", "washed"}), "of which bore?");
    expectSays(refused(&HoningCommands::hone, {"--bore", "2"}), "--done or --not-done");
    expectSays(refused(&HoningCommands::hone, {"--bore", "9", "--done", "washed"}),
               "there is no bore 9");
    expectSays(refused(&HoningCommands::hone, {"--bore", "2", "--done", "painted"}), "painted");
    expectSays(
        refused(&HoningCommands::hone, {"--bore", "2", "--done", "washed", "--not-done", "washed"}),
        "both name 'washed'");
    expectSays(refused(&HoningCommands::hone, {"--oil", "--dry"}), "--oil");
    expectSays(refused(&HoningCommands::hone, {"--lead", "2in"}), "nothing was changed");
}

TEST_F(HoningCommands, StonesAsJsonFollowTheSchema) {
    const auto before = files.content(file);
    EXPECT_EQ(stone({"--json"}), exitWithin);
    EXPECT_EQ(files.content(file), before);
    const Json json = Json::parse(out.str());
    const Json schema = loadSchema("workbook");
    EXPECT_EQ(json["format"], "borewright stones");
    EXPECT_EQ(json["stones"].size(), 3U);
    EXPECT_EQ(json["care"][1]["afterPass"], "h1");
    SchemaValidator validator(schema);
    for (const char* part : {"stones", "care"})
        validator.check(json[part], schema["$defs"]["hone"]["properties"][part], part);
    EXPECT_EQ(validator.problems, std::set<std::string>());
}

TEST_F(HoningCommands, StonesThatCannotBeAreExplained) {
    const auto said = [&](const Words& more) { return refused(&HoningCommands::stone, more); };
    expectSays(said({"--name", "new", "--begins", "0", "--ends", "3"}), "--rough or --finish");
    expectSays(said({"--name", "new", "--rough"}), "--begins and --ends");
    expectSays(said({"--name", "new", "--rough", "--begins", "3", "--ends", "0"}),
               "ends where it begins or below");
    expectSays(said({"--name", "full 100", "--rough", "--finish"}), "excludes");
    expectSays(said({"--name", "full 100"}), "nothing is said of the stone");
    expectSays(said({"--name", "full 100", "--care", "dressed", "--grit", "80"}),
               "change the stone first");
    expectSays(said({"--name", "full 100", "--care", "broken"}), "--care");
    expectSays(said({"--name", "none", "--care", "dressed"}), "there is no stone 'none'");
    expectSays(said({"--grit", "80"}), "which stone?");
    expectSays(said({"--name", "full 100", "--rate", "2um"}), "belong together");
    expectSays(said({"--name", "full 100", "--rate", "0um", "--rate-doubt", "2"}), "--rate: ");
    expectSays(said({"--name", "full 100", "--rate", "1um", "--rate-doubt", "0.5"}),
               "a factor over 1");
    expectSays(said({"--name", "full 100", "--ends", "6o"}), "--ends: ");
    // Its passes went to 4.04 in, and an inch more of guide strikes the closed end.
    expectSays(said({"--name", "short 100", "--begins", "1"}), "pass h2");
}

TEST_F(HoningCommands, PassLogsAWindow) {
    EXPECT_EQ(pass({"--stone", "short 100", "--from", "3.3", "--to", "102.6mm", "--strokes", "24",
                    "--speed", "300", "--note", "chattered"}),
              exitWithin)
        << err.str();
    EXPECT_EQ(out.str(), "Logged pass h4 in bore 2 with 'Short 100': 24 strokes from 3.3 in to "
                         "102.6 mm, after the survey 'check'.\n");
    const Pass logged = now().hone.passes.back();
    EXPECT_EQ(logged.stone, "k2");
    EXPECT_EQ(logged.after, "s2") << "the last survey";
    EXPECT_EQ(logged.time, watch.now());
    EXPECT_EQ(logged.speedRpm, 300);
    EXPECT_EQ(logged.notes, "chattered");
    EXPECT_FALSE(logged.simulated);
    ASSERT_EQ(logged.windows.size(), 1U);
    EXPECT_EQ(logged.windows[0], (StrokeWindow{typedIn("3.3"), typedMm("102.6"), 24, {}}));
}

TEST_F(HoningCommands, PassTakesSeveralWindowsInTheOrderGiven) {
    const std::vector<StrokeWindow> wanted{
        {typedIn("3,3"), typedIn("4.04"), {}, 24, 0},
        {typedIn("3.9"), typedIn("4.0"), 8, {}, 2.5},
    };
    EXPECT_EQ(pass({"--stone", "k2", "--from", "3,3", "--to", "4.04", "--seconds", "24", "--from",
                    "3.9", "--to", "4.0", "--strokes", "8", "--hold", "2.5", "--simulated"}),
              exitWithin)
        << err.str();
    EXPECT_EQ(now().hone.passes.back().windows, wanted);
    EXPECT_TRUE(now().hone.passes.back().simulated);
    expectSays(out.str(), "24 s from 3,3 in to 4.04 in; then 8 strokes from 3.9 in to 4.0 in, "
                          "held 2.5 s");
    // Grouped by option, with equals signs: the same.
    EXPECT_EQ(pass({"--stone=k2", "--from=3,3", "--from=3.9", "--to=4.04", "--to=4.0",
                    "--seconds=24", "--strokes=8", "--hold=0", "--hold=2.5"}),
              exitWithin)
        << err.str();
    EXPECT_EQ(now().hone.passes.back().windows, wanted);
}

TEST_F(HoningCommands, WindowsThatDoNotPairAreExplained) {
    const auto said = [&](const Words& more) { return refused(&HoningCommands::pass, more); };
    expectSays(
        said({"--stone", "k2", "--from", "3", "--to", "4", "--from", "3.5", "--strokes", "8"}),
        "there are 2 --from, 1 --to and 1 --strokes or --seconds");
    expectSays(
        said({"--stone", "k2", "--from", "3", "--to", "4", "--strokes", "8", "--seconds", "9"}),
        "1 --from, 1 --to and 2 --strokes or --seconds");
    expectSays(said({"--stone", "k2"}), "no window is given");
    expectSays(said({"--stone", "k2", "--hold", "1", "--from", "3", "--from", "3", "--to", "4",
                     "--to", "4", "--strokes", "8", "--strokes", "8"}),
               "before any --from");
    expectSays(said({"--stone", "k2", "--from", "3", "--hold", "1", "--hold", "1", "--to", "4",
                     "--strokes", "8"}),
               "given twice for window 1");
}

TEST_F(HoningCommands, PassesThatCannotBeAreExplained) {
    const auto said = [&](const Words& more) { return refused(&HoningCommands::pass, more); };
    const auto window = [&](const char* from, const char* to, const char* strokes) {
        return said({"--stone", "k2", "--from", from, "--to", to, "--strokes", strokes});
    };
    expectSays(window("3", "4.9", "8"), "may go down to 4.750 in in bore 2");
    expectSays(window("4", "3", "8"), "upside down");
    expectSays(window("3", "4", "0"), "no strokes at all");
    expectSays(window("3", "4", "-8"), "strokes: lie between");
    expectSays(window("3", "4", "99999999"), "strokes: lie between");
    expectSays(window("3", "4", "1e9"), "--strokes: ");
    expectSays(window("3", "4", "nan"), "--strokes: ");
    expectSays(window("0.2", "4", "8"), "too high");
    expectSays(window("3 furlongs", "4", "8"), "--from: ");
    const Words good{"--from", "3", "--to", "4", "--strokes", "8"};
    const auto also = [&](Words first) {
        first.insert(first.end(), good.begin(), good.end());
        return said(first);
    };
    expectSays(also({"--stone", "none"}), "there is 'full 100' (k1), 'Short 100' (k2)");
    expectSays(also({"--stone", "k2", "--after", "tomorrow"}), "there is no survey 'tomorrow'");
    expectSays(also({"--stone", "k2", "--time", "yesterday"}), "--time: ");
    expectSays(also({"--stone", "k2", "--speed", "0"}), "speed: ");
    EXPECT_EQ(run({"pass", file, "--bore", "9", "--stone", "k2", "--from", "3", "--to", "4",
                   "--strokes", "8"}),
              exitWrong);
    expectSays(err.str(), "there is no bore 9");
    Workbook plated = now();
    plated.block.bores[1].surface = Surface::plated;
    files.put(file, writeWorkbook(plated));
    expectSays(also({"--stone", "k2"}), "plated bores want diamond; follow the plater");
    plated.block.bores[1].surface = Surface::bareAluminium;
    files.put(file, writeWorkbook(plated));
    EXPECT_EQ(pass({"--stone", "k2", "--from", "3", "--to", "4", "--strokes", "8"}), exitWithin);
    EXPECT_TRUE(warns("bare aluminium")) << err.str();
}

TEST_F(HoningCommands, PassIsLoggedAndToldWhereSomeDepthMayGoOverSize) {
    PosixFileSystem disk;
    const auto demo = disk.read(
        std::string(BOREWRIGHT_SOURCE_DIR) + "/demo/saltmarsh-honing.borebook", 1U << 26U);
    ASSERT_TRUE(demo);
    files.put(file, *demo);
    const auto passes = now().hone.passes.size();
    Words window{"--stone", "full 100", "--from", "2.9", "--to", "3.2", "--foresee"};
    const auto log = [&](const char* strokes) {
        files.put(file, *demo);
        Words all = window;
        all.insert(all.end(), {"--strokes", strokes});
        EXPECT_EQ(pass(all), exitWithin) << err.str();
        EXPECT_EQ(now().hone.passes.size(), passes + 1) << "it is what was done";
        return err.str();
    };
    // Bore 2 has 4 to 7 thou to go; a stroke of this stone takes off a hundredth of a thou or so.
    EXPECT_EQ(log("5"), "");
    const std::string over = log("500");
    expectSays(over, "such a pass is never proposed: ");
    expectSays(over, "% chance that some depth goes over size");
    expectSays(over, "borewright pass " + file + " --strike h");
    EXPECT_EQ(over.find("more than anyone makes"), std::string::npos) << over;
    const std::string far = log("5000");
    expectSays(far, "5000 strokes are more than anyone makes in one set-up");
    expectSays(far, ": 100 % chance");
    window.pop_back();
    EXPECT_EQ(log("500"), "") << "a script is not held up";
    expectSays(log("5000"), "5000 strokes are more than anyone makes in one set-up");
}

TEST_F(HoningCommands, PassIsStruckOutWithItsReason) {
    EXPECT_EQ(run({"pass", file, "--strike", "h2", "--why", "logged in the wrong bore"}),
              exitWithin)
        << err.str();
    expectSays(out.str(), "Struck out pass h2 of ");
    expectSays(out.str(), " in bore 2: logged in the wrong bore.");
    EXPECT_EQ(now().hone.passes[1].struck, "logged in the wrong bore");
    EXPECT_EQ(now().hone.passes.size(), 3U) << "it stays readable";
    const auto said = [&](Words more) {
        const auto before = files.content(file);
        more.insert(more.begin(), {"pass", file});
        EXPECT_EQ(run(more), exitWrong) << out.str();
        EXPECT_EQ(files.content(file), before) << "a refusal left a trace";
        return err.str();
    };
    expectSays(said({"--strike", "h2", "--why", "again"}), "is struck out already: logged in");
    expectSays(said({"--strike", "h1"}), "--why: ");
    expectSays(said({"--strike", "h9", "--why", "x"}),
               "there is no pass 'h9'; the last are h1 of ");
    expectSays(said({"--why", "x"}), "belongs to --strike");
    expectSays(said({"--strike", "h1", "--why", "x", "--bore", "2"}), "--strike: ");
    expectSays(said({"--stone", "k2"}), "--bore: ");
    expectSays(said({"--bore", "2"}), "--stone: ");
}

TEST_F(HoningCommands, AStoneTooLongForEveryBoreIsAddedAndTold) {
    EXPECT_EQ(stone({"--name", "Long", "--rough", "--begins", "0", "--ends", "6.00"}), exitWithin);
    EXPECT_EQ(now().hone.stones.back().ends.text(), "6.00");
    EXPECT_TRUE(warns("stone 'Long' is 6.000 in long, and the bore only 5")) << err.str();
    EXPECT_TRUE(warns("is one of its lengths a slip?")) << err.str();
    EXPECT_EQ(stone({"--name", "Long", "--ends", "3.00"}), exitWithin);
    EXPECT_EQ(err.str(), "");
}

TEST_F(HoningCommands, PassWarnsWhereTheClockRunsBackwards) {
    const Words work{"--stone", "k2", "--from", "3", "--to", "4", "--strokes", "8"};
    const auto at = [&](const Words& when) {
        Words all = work;
        all.insert(all.end(), when.begin(), when.end());
        EXPECT_EQ(pass(all), exitWithin) << err.str();
    };
    at({});
    EXPECT_FALSE(warns("clock")) << err.str();
    EXPECT_TRUE(warns("bore 2 was not measured after pass h2")) << err.str();
    at({"--time", "2026-03-20T11:00:00+01:00"});
    EXPECT_TRUE(warns("before pass h4 that was logged before it")) << err.str();
    at({"--time", "2026-03-19T11:00:00+01:00"});
    EXPECT_TRUE(warns("before the end of the survey 'check' that it follows")) << err.str();
    at({"--after", "as found"});
    EXPECT_TRUE(warns("after the survey 'check' that follows it")) << err.str();
    EXPECT_EQ(now().hone.passes.size(), 7U) << "warned of, but logged";
    EXPECT_EQ(now().hone.passes.back().after, "s1");
}

} // namespace
} // namespace borewright
