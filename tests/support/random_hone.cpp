// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/random_maker.h"

namespace borewright::test {

Stone Maker::stone(int number) {
    Stone made;
    made.id = "k" + std::to_string(number);
    made.name = "stone no. " + std::to_string(number) + text();
    made.grit = text();
    made.kind = choice<StoneKind>(2);
    made.begins = typed(chance() ? "0" : "0,25", Unit::inch);
    made.ends = typed(std::to_string(1 + upTo(3)) + ".5", Unit::inch);
    made.outOfOpenEnd = maybe([&] { return typed("12,5", Unit::millimetre); });
    made.outOfClosedEnd = maybe([&] { return typed("0", Unit::millimetre); });
    if (chance())
        made.experience =
            StoneExperience{0.01 * (upTo(400) - 200), 0.01 * (1 + upTo(99)), upTo(40), unknown()};
    made.unknown = unknown();
    return made;
}

StrokeWindow Maker::window() {
    StrokeWindow made;
    made.from = length(2);
    made.to = typed("3" + std::string(chance() ? ".04" : ",9"), Unit::inch);
    made.strokes = maybe([&] { return 0.5 * (1 + upTo(100)); });
    made.seconds = maybe([&] { return 0.25 * (1 + upTo(100)); });
    if (chance() || (!made.strokes && !made.seconds)) made.holdSeconds = 0.1 * (1 + upTo(30));
    made.unknown = unknown();
    return made;
}

Pass Maker::pass(const std::string& id, const Workbook& workbook, const HoneRecord& record) {
    Pass made;
    made.id = id;
    const auto any = [&](const auto& list) {
        return list[static_cast<std::size_t>(upTo(static_cast<int>(list.size()) - 1))];
    };
    made.bore = any(workbook.block.bores).number;
    made.stone = any(record.stones).id;
    made.time = time();
    if (chance() && !workbook.surveys.empty()) made.after = any(workbook.surveys).header.id;
    for (int i = 1 + upTo(2); i > 0; --i)
        made.windows.push_back(window());
    made.speedRpm = maybe([&] { return 0.5 * (1 + upTo(900)); });
    made.simulated = chance();
    made.notes = text();
    made.struck = maybe([&] { return text(); });
    made.unknown = unknown();
    return made;
}

HoneRecord Maker::hone(const Workbook& workbook) {
    HoneRecord made;
    made.hone.speedRpm = maybe([&] { return 0.1 * (1 + upTo(9000)); });
    made.hone.beatsPerMinute = 1 + upTo(120);
    made.hone.feed = text();
    made.hone.oil = maybe([&] { return chance(); });
    made.hone.unknown = unknown();
    made.stages.roughStopsAt = maybe([&] { return typed("4,5", Unit::thou); });
    made.stages.closedEndLead = maybe([&] { return typed("0.02", Unit::millimetre); });
    made.stages.nextStopsAt = maybe([&] { return typed("1", Unit::thou); });
    made.stages.coolBelow = maybe([&] { return typed("3", Unit::tenth); });
    made.stages.unknown = unknown();
    made.unknown = unknown();
    for (int i = 1 + upTo(3); i > 0; --i)
        made.stones.push_back(stone(i));
    for (int i = upTo(6); i > 0; --i)
        made.passes.push_back(pass("h" + std::to_string(i), workbook, made));
    for (int i = upTo(3); i > 0; --i) {
        StoneCare care{
            "c" + std::to_string(i), "k1", choice<StoneCare::Kind>(3), time(), {}, {}, unknown()};
        if (chance() && !made.passes.empty()) care.afterPass = made.passes.back().id;
        care.struck = maybe([&] { return text(); });
        made.care.push_back(care);
    }
    for (int i = upTo(3); i > 0; --i)
        made.ticks[1 + upTo(15)] = {chance(), chance(), unknown()};
    return made;
}

} // namespace borewright::test
