// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/honed_block.h"

#include "tests/support/blocks.h"
#include "tests/support/lengths.h"

namespace borewright::test {
namespace {

constexpr Timestamp noon{1'774'000'000, 60};

Timestamp minutesLater(int minutes) {
    return {noon.secondsSinceEpoch + 60 * minutes, noon.offsetMinutes};
}

Stone stone(const char* id, const char* name, const char* grit, StoneKind kind, const char* begins,
            const char* ends) {
    Stone made;
    made.id = id;
    made.name = name;
    made.grit = grit;
    made.kind = kind;
    made.begins = typedIn(begins);
    made.ends = typedIn(ends);
    return made;
}

StrokeWindow window(const char* from, const char* to, std::optional<double> strokes) {
    StrokeWindow made;
    made.from = typedIn(from);
    made.to = typedIn(to);
    made.strokes = strokes;
    return made;
}

Pass pass(const char* id, int bore, const char* stone, int minutes, const char* after) {
    Pass made;
    made.id = id;
    made.bore = bore;
    made.stone = stone;
    made.time = minutesLater(minutes);
    made.after = after;
    return made;
}

std::vector<Pass> passes() {
    Pass first = pass("h1", 1, "k1", 10, "s1");
    first.windows = {window("2.00", "5.00", {}), window("4.5", "5.0", 8)};
    first.windows[0].seconds = 24;
    first.windows[1].holdSeconds = 2.5;
    first.speedRpm = 320;
    first.simulated = true;
    first.notes = "loud";
    Pass second = pass("h2", 2, "k2", 30, "s2");
    second.windows = {window("3,3", "4.04", 24)};
    Pass third = pass("h3", 2, "k1", 40, "s2");
    third.windows = {window("2.5", "5", 30)};
    third.struck = "that was bore 3";
    return {first, second, third};
}

} // namespace

Workbook honedBlock() {
    Workbook workbook = inchBlock(3);
    for (Bore& bore : workbook.block.bores) {
        bore.depth = typedIn("5");
        bore.roomAtClosedEnd = typedIn("0");
    }
    addSurvey(workbook, SurveyKind::asFound, "as found");
    addSurvey(workbook, SurveyKind::check, "check");
    HoneRecord& made = workbook.hone;
    made.hone.speedRpm = 350;
    made.hone.beatsPerMinute = 72;
    made.hone.feed = "spring at the third mark";
    made.hone.oil = true;
    made.stones = {stone("k1", "full 100", "100", StoneKind::rough, "0", "3"),
                   stone("k2", "Short 100", "100", StoneKind::rough, "0.25", "1,25"),
                   stone("k3", "full 280", "280", StoneKind::finish, "0", "3.00")};
    made.stones[0].outOfOpenEnd = typedIn("1");
    made.stones[0].outOfClosedEnd = typedIn("0.5");
    made.stones[0].experience = StoneExperience{-0.25, 0.4, 12};
    made.stages = {typedThou("4"), typedThou("0.7"), typedThou("1.2"), typedMm("0,008")};
    made.passes = passes();
    made.care = {{"c1", "k2", StoneCare::Kind::turnedEndForEnd, minutesLater(1), "", {}},
                 {"c2", "k1", StoneCare::Kind::dressed, minutesLater(12), "h1", "it was not"}};
    made.ticks[1] = {true, false};
    made.ticks[3] = {false, true};
    return workbook;
}

Workbook measuredHonedBlock() {
    Workbook workbook = honedBlock();
    workbook.hone.passes[2].struck = "that was bore 3";
    for (const char* survey : {"s1", "s2"})
        for (const int bore : {1, 2})
            typeShape(workbook, survey, bore, [](double, const std::string&) { return -6; });
    workbook.hone.passes[0].after = "s1";
    addSurvey(workbook, SurveyKind::check, "second check");
    typeShape(workbook, "s3", 2,
              [](double depth, const std::string&) { return depth > 3 ? -4.0 : -4.5; });
    return workbook;
}

} // namespace borewright::test
