// SPDX-License-Identifier: GPL-3.0-or-later
// The first demonstration block while it is honed: its surveys with the passes that could have made
// them (all invented).
#include "core/results/hone_outlook.h"
#include "tests/support/demo_scenarios.h"
#include "tests/support/lengths.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace borewright {
namespace {

using namespace test;

Stone stone(const char* id, const char* name, StoneKind kind, const char* ends) {
    Stone made;
    made.id = id;
    made.name = name;
    made.grit = kind == StoneKind::finish ? "280" : "100";
    made.kind = kind;
    made.begins = typedIn("0.06");
    made.ends = typedIn(ends);
    return made;
}

void addPass(Workbook& workbook, int bore, const char* stone, const char* from, const char* to,
             double strokes) {
    Pass pass;
    pass.id = freshPassId(workbook.hone);
    pass.bore = bore;
    pass.stone = stone;
    pass.after = "s2";
    pass.time = findSurvey(workbook, "s2")->header.time;
    pass.time.secondsSinceEpoch += 7200;
    pass.windows.push_back({typedIn(from), typedIn(to), strokes, {}, 0, {}});
    workbook.hone.passes.push_back(std::move(pass));
}

// Up to the check after the short and the full stone: 2.9 thou to go, the closed end 0.8 ahead.
Workbook honedSaltmarsh() {
    Workbook workbook = demo::correctedSaltmarsh();
    workbook.surveys.resize(3);
    workbook.hone.stones = {stone("k1", "full 100", StoneKind::rough, "3.06"),
                            stone("k2", "short 100", StoneKind::rough, "1.06"),
                            stone("k3", "full 280", StoneKind::finish, "3.06")};
    for (int bore = 1; bore <= 6; ++bore) {
        addPass(workbook, bore, "k2", "3.4", "4.04", 55);
        addPass(workbook, bore, "k1", "2.2", "4.04", 30);
    }
    return workbook;
}

TEST(HoneDemo, TheVThatTurnedRoundIsSaidAsItWasRead) {
    const Workbook workbook = honedSaltmarsh();
    const DisplayUnits units = DisplayUnits::inch();
    const Results results = compute(workbook, units);
    const HoneOutlook outlook = honeOutlook(workbook, results, units, {}, {1}, false);
    ASSERT_EQ(outlook.bores.size(), 1U);
    const BoreOutlook& bore = outlook.bores[0];
    ASSERT_TRUE(bore.next) << bore.headline;
    EXPECT_LE(bore.next->chanceOver, 0.01);
    std::string all;
    for (const std::string& sentence : bore.sentences)
        all += sentence + "\n";
    // 3.75 in less 0.60 in: −2.2 thou rough, +0.8 after the short stone.
    EXPECT_NE(all.find("closed end is 0.8"), std::string::npos) << all;
    EXPECT_NE(all.find("larger than its open end, turned round: the lead was −2.2 thou"),
              std::string::npos)
        << all;
    EXPECT_TRUE(std::ranges::any_of(bore.oddities, [](const std::string& oddity) {
        return oddity.find("Nothing was measured between the pass of ") != std::string::npos;
    })) << "two stones, one survey";
    // What is believed agrees with what was read: 3.4371 in at 0.60 A.
    const auto cell = static_cast<std::size_t>(15.24 / 2);
    EXPECT_NEAR(bore.curves.now.mean_um[cell], -2.85 * 25.4, 6);
}

} // namespace
} // namespace borewright
