// SPDX-License-Identifier: GPL-3.0-or-later
// Honing from a script: a job begun from nothing, the survey of one bore after a pass, and nothing
// written over what somebody else wrote.
#include "tests/app/honing_commands.h"

namespace borewright {
namespace {

using namespace test;

TEST_F(HoningCommands, RecordTakesReadingsTypedOnTheLine) {
    EXPECT_EQ(record({"--reading", "0.5in,A,3.5012", "--reading", "2,b,3.5010in", "--reading",
                      "3,5;A;88,93mm"}),
              exitWithin)
        << err.str();
    EXPECT_EQ(out.str(), "Took 3 readings into 'check 2'.\n");
    const Survey survey = now().surveys.back();
    EXPECT_EQ(survey.header.kind, SurveyKind::check);
    ASSERT_TRUE(survey.header.asked);
    const std::vector<Station> asked{{2, in("0.5"), "A"}, {2, in("2"), "B"}, {2, in("3.5"), "A"}};
    EXPECT_EQ(*survey.header.asked, asked) << "nothing else is missing";
    EXPECT_EQ(survey.readings[0].typed, typedIn("3.5012"));
    EXPECT_EQ(survey.readings[2].typed, typedMm("88,93"));
    EXPECT_EQ(survey.readings[1].time, watch.now());

    // Another bore into the same check: it is asked for too.
    EXPECT_EQ(
        run({"record", file, "--bore", "3", "--survey", "check 2", "--reading", "2,A,3.5003"}),
        exitWithin)
        << err.str();
    EXPECT_EQ(now().surveys.back().header.asked->size(), 4U);
    EXPECT_EQ(now().surveys.size(), 3U);
}

TEST_F(HoningCommands, DeviationsTypedOnTheLineAreInTheSmallUnit) {
    EXPECT_EQ(record({"--set", "3.5in", "--reading", "0.5,A,1.5", "--reading", "2,A,-0.001in"}),
              exitWithin)
        << err.str();
    EXPECT_EQ(now().surveys.back().readings[0].typed, typedThou("1.5"));
    EXPECT_EQ(now().surveys.back().readings[1].typed, typedIn("-0.001"));
}

TEST_F(HoningCommands, ReadingsThatCannotBeAreExplained) {
    const auto said = [&](const Words& more) { return refused(&HoningCommands::record, more); };
    expectSays(said({"--reading", "2,A"}), "--reading: '2,A': is not a depth, an axis");
    expectSays(said({"--reading", "2,A,3,5012"}), "with decimal commas");
    expectSays(said({"--reading", "2,C,3.5012"}), "--reading: '2,C,3.5012': axis: there is no");
    expectSays(said({"--reading", "6,A,3.5012"}), "deeper than bore 2");
    expectSays(said({"--reading", "1.1,A,3.5012"}), "--add-levels");
    expectSays(said({"--reading", "2,A,0.0012"}), "'2,A,0.0012'");
    expectSays(said({"--reading", "2,A,\"3.5012\""}), "is not a depth");
    expectSays(said({}), "no readings are given");
    files.put("/shop/r.csv", "bore,depth,axis,reading,unit\n2,2,A,3.5012,in\n");
    expectSays(said({"/shop/r.csv"}), "--bore: goes with --reading");
    expectSays(said({"/shop/r.csv", "--reading", "2,A,3.5012"}), "one or the other");
    EXPECT_EQ(run({"record", file, "--bore", "9", "--reading", "2,A,3.5012"}), exitWrong);
    expectSays(err.str(), "there is no bore 9");
}

// What is read after a pass is no part of the survey before it.
TEST_F(HoningCommands, ASurveyThatThePassFollowedTakesNoMoreOfThatBore) {
    const auto into = [&](const char* survey) {
        return Words{"--survey", survey, "--reading", "2,A,1.5"};
    };
    expectSays(refused(&HoningCommands::record, into("s2")),
               "bore 2 was honed after this survey (pass h2), so a new one is due");
    expectSays(refused(&HoningCommands::record, into("s1")), "(pass h2)");
    EXPECT_EQ(run({"record", file, "--bore", "1", "--survey", "s2", "--reading", "2,A,1.5"}),
              exitWithin)
        << "bore 1 was honed before it: " << err.str();
    EXPECT_EQ(run({"record", file, "--bore", "3", "--survey", "s1", "--reading", "2,A,1.5"}),
              exitWithin)
        << err.str();
    Workbook workbook = now();
    workbook.hone.passes[1].struck = "wrong bore";
    files.put(file, writeWorkbook(workbook));
    EXPECT_EQ(record(into("s2")), exitWithin) << "that pass never was: " << err.str();
}

TEST_F(HoningCommands, AJobIsHonedFromNothing) {
    const std::string job = "/shop/new.borebook";
    ASSERT_EQ(run({"new", job, "--bores", "1", "--size", "3.42in", "--depth", "4in", "--levels",
                   "0.5,2,3.5", "--blind", "--finish-size", "3.44in", "--finish-from", "3.4397in",
                   "--finish-to", "3.4405in", "--aim", "0.3thou"}),
              exitWithin)
        << err.str();
    const auto opened = [&] { return *loadWorkbook(files, job); };
    const LimitSet finish = opened().limitSets.at(0);
    EXPECT_EQ(finish.id, "l1");
    EXPECT_EQ(finish.purpose, LimitPurpose::finish);
    EXPECT_EQ(finish.finishSize, typedIn("3.44"));
    EXPECT_EQ(finish.limits.sizeLower, typedIn("3.4397"));
    EXPECT_EQ(finish.limits.sizeUpper, typedIn("3.4405"));
    EXPECT_EQ(opened().straightAim, typedThou("0.3"));
    const auto read = [&](const char* much) {
        watch.seconds += 600;
        return run({"record", job, "--bore", "1", "--reading", "0.5,A," + std::string(much),
                    "--reading", "3.5,A,3.4372"});
    };
    ASSERT_EQ(read("3.4371"), 0) << err.str();
    ASSERT_EQ(run({"stone", job, "--name", "full", "--rough", "--begins", "0", "--ends", "3"}), 0);
    watch.seconds += 60;
    ASSERT_EQ(run({"pass", job, "--bore", "1", "--stone", "full", "--from", "2", "--to", "4",
                   "--seconds", "15"}),
              0)
        << err.str();
    EXPECT_EQ(err.str(), "");
    ASSERT_EQ(read("3.4375"), 0) << err.str();
    EXPECT_EQ(opened().surveys[0].header.kind, SurveyKind::asFound);
    EXPECT_EQ(opened().surveys[0].header.asked, std::nullopt) << "the whole plan";
    EXPECT_EQ(opened().surveys[1].header.asked->size(), 2U);
    EXPECT_EQ(opened().hone.passes[0].after, "s1");
    EXPECT_EQ(run({"check", job}), exitOutside) << "not yet: " << out.str();
    expectSays(out.str(), "not yet there");
}

TEST_F(HoningCommands, AFinishThatCannotBeIsExplained) {
    const auto said = [&](const Words& more) {
        Words all{"new", "/shop/new.borebook", "--bores", "1", "--size", "3.42in", "--depth",
                  "4in"};
        EXPECT_EQ(with(all, more), exitWrong);
        EXPECT_FALSE(files.content("/shop/new.borebook"));
        return err.str();
    };
    expectSays(said({"--finish-size", "3.44"}), "say the unit");
    expectSays(said({"--finish-size", "3.44in", "--finish-from", "3.45in"}),
               "below the smallest finished size");
    expectSays(said({"--finish-size", "3.44in", "--finish-to", "3.43in"}),
               "over the largest finished size");
    expectSays(said({"--finish-from", "3.44in", "--finish-to", "3.43in"}), "size");
    expectSays(said({"--aim", "0in"}), "--aim");
}

TEST_F(HoningCommands, WhatChangedMeanwhileIsNotOverwritten) {
    for (const Words& words :
         std::vector<Words>{{"pass", file, "--bore", "2", "--stone", "k2", "--from", "3", "--to",
                             "4", "--strokes", "8"},
                            {"stone", file, "--name", "k2", "--grit", "80"},
                            {"record", file, "--bore", "2", "--reading", "2,A,3.5012"}}) {
        files.put(file, writeWorkbook(honedBlock()));
        Workbook theirs = honedBlock();
        theirs.job.notes = "typed in the window meanwhile";
        files.forgetCalls();
        files.onCall([&](std::size_t call) {
            if (call == 1) files.put(file, writeWorkbook(theirs));
        });
        EXPECT_EQ(run(words), exitWrong) << words[0];
        EXPECT_TRUE(warns("it changed while this was taken in")) << err.str();
        EXPECT_TRUE(now() == theirs) << words[0];
        files.onCall({});
    }
}

} // namespace
} // namespace borewright
