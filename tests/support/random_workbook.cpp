// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/random_workbook.h"

#include "tests/support/random_maker.h"

namespace borewright::test {

Bore Maker::bore(int number, const std::vector<Axis>& axes) {
    Bore made;
    made.number = number;
    made.standardSize = maybe([&] { return size(); });
    made.depth = maybe([&] { return chance() ? size() : typed("88,5", Unit::millimetre); });
    made.surface = choice<Surface>(4);
    made.openEnd = text();
    made.roomAtOpenEnd = maybe([&] { return length(2); });
    made.roomAtClosedEnd = maybe([&] { return length(2); });
    made.combustionEnd = choice<End>(2);
    made.map.topRingLine = maybe([&] { return length(4); });
    made.map.lowestRingLine = maybe([&] { return length(4); });
    made.map.gaugeFoot = maybe([&] { return length(1); });
    made.map.unknown = unknown();
    if (chance())
        made.map.ports.push_back(
            {typed("1.5", Unit::inch), typed("2", Unit::inch), {axes[0].id}, unknown()});
    for (int i = 0, count = upTo(6); i < count; ++i)
        made.levels.push_back(
            {typed(std::to_string(i) + ".25", Unit::inch), choice<Judging>(3), unknown()});
    for (int i = upTo(2); i > 0; --i)
        made.wallMarks.push_back(
            {Length::fromPicometres(upTo(1'000'000'000)), axes[0].id, chance(), unknown()});
    made.unknown = unknown();
    return made;
}

Limits Maker::limits() {
    Limits made;
    made.sizeLower = maybe([&] { return typed("3.4", Unit::inch); });
    made.sizeUpper = maybe([&] { return typed("3,5", Unit::inch); });
    made.outOfRound = maybe([&] { return typed("1.5", Unit::thou); });
    made.taper = maybe([&] { return typed("50", Unit::micrometre); });
    made.unknown = unknown();
    return made;
}

LimitSet Maker::limitSet(const std::string& id, int bores) {
    LimitSet made;
    made.id = id;
    made.name = text();
    made.purpose = choice<LimitPurpose>(2);
    made.oversize = maybe([&] { return typed(".020", Unit::inch); });
    made.finishSize = maybe([&] { return size(); });
    made.taperRule = choice<TaperRule>(2);
    made.decision.kind = choice<DecisionRule::Kind>(4);
    if (chance()) made.decision.ownPercent = 0.1 * (1 + upTo(400));
    made.decision.unknown = unknown();
    made.limits = limits();
    if (chance()) made.perBore[1 + upTo(bores - 1)] = limits();
    made.unknown = unknown();
    return made;
}

Station Maker::station(const Block& block) {
    return {block.bores[static_cast<std::size_t>(upTo(static_cast<int>(block.bores.size()) - 1))]
                .number,
            Length::fromPicometres(upTo(2'000'000'000) * 50LL),
            block.axes[static_cast<std::size_t>(upTo(static_cast<int>(block.axes.size()) - 1))].id};
}

GaugeSetting Maker::gauge() {
    GaugeSetting made;
    made.gauge = text();
    made.setOn = text();
    made.setSize = maybe([&] { return size(); });
    made.entry = choice<Entry>(2);
    made.dial = chance() ? tenthDial() : micrometreDial();
    made.dial.face = choice<Dial::Face>(2);
    made.dial.larger = choice<Dial::Larger>(2);
    made.dial.unknown = unknown();
    made.masterTemperature = maybe([&] { return temperature(); });
    made.blockTemperature = maybe([&] { return temperature(); });
    made.masterExpansion = choice<Expansion>(4);
    made.blockExpansion = choice<Expansion>(4);
    made.stoodTogether = chance();
    made.closedEndTemperature = maybe([&] { return temperature(); });
    made.gaugeWarmedBy = maybe([&] { return 0.1 * upTo(100) - 5; });
    made.differenceDoubt = maybe([&] { return 0.5 * upTo(10); });
    made.temperatureDoubt = maybe([&] { return 0.5 * upTo(10); });
    if (chance()) made.gear = gear();
    made.unknown = unknown();
    return made;
}

Gear Maker::gear() {
    const auto figure = [&] { return maybe([&] { return typed("0.05", Unit::thou); }); };
    Gear made;
    made.dialError = figure();
    made.dialLocalError = figure();
    made.step = figure();
    made.repeatability = figure();
    made.repeatabilityFreedom = maybe([&] { return 1 + upTo(30); });
    made.master = figure();
    made.masterMeant = choice<Meant>(3);
    made.settingScatter = figure();
    made.drift = figure();
    made.driftLimit = figure();
    made.rocking = figure();
    made.lastChecked = text();
    made.unknown = unknown();
    return made;
}

RepeatStudy Maker::study(const std::string& id) {
    RepeatStudy made{id, text(), text(), {}, unknown()};
    for (int i = upTo(2); i > 0; --i) {
        RepeatRun run{text(), text(), {}, unknown()};
        for (int reading = upTo(10); reading > 0; --reading)
            run.typed.push_back(length(3, true, unit()));
        made.runs.push_back(run);
    }
    return made;
}

Survey Maker::survey(const std::string& id, const Block& block) {
    Survey made;
    SurveyHeader& header = made.header;
    header.id = id;
    header.name = text();
    header.kind = choice<SurveyKind>(4);
    header.time = time();
    header.gauge = gauge();
    header.plate = maybe([&] { return chance(); });
    header.limitSet = maybe([&] { return std::string("l1"); });
    if (chance()) header.asked = std::vector<Station>{station(block), station(block)};
    for (int i = upTo(2); i > 0; --i)
        header.zeroChecks.push_back({length(3, true, Unit::thou), time(), unknown()});
    header.minutesSinceWarm = maybe([&] { return upTo(500); });
    header.cooling = maybe([&] {
        return Cooling{temperature(), temperature(), temperature(), 1.0 + upTo(60), unknown()};
    });
    header.notes = text();
    header.unknown = unknown();
    for (int i = upTo(20); i > 0; --i) {
        Reading reading{station(block), length(30, true, unit()), time(), {}, {}, {}, false,
                        unknown()};
        reading.accepted = maybe([&] { return "a story" + text(); });
        reading.kept = chance();
        reading.angleOffAxis = maybe([&] { return 0.1 * upTo(300) - 15; });
        if (chance()) reading.struck = Strike{text(), time(), text(), unknown()};
        made.readings.push_back(reading);
    }
    return made;
}

History Maker::history() {
    static const char* const values[] = {"\"3 thou\"", "true", "[{\"a\": 1}, []]", "{}", "null"};
    History made;
    made.id = text();
    for (int i = upTo(4); i > 0; --i) {
        HistoryEntry entry{time(), text(), text(), {}};
        for (int k = upTo(2); k > 0; --k) {
            OldValue old{"/" + text(), {}, {}, unknown()};
            old.was = maybe([&] { return std::string(values[upTo(std::size(values) - 1)]); });
            old.splice = maybe([&] { return Splice{upTo(20), upTo(5)}; });
            entry.was.push_back(old);
        }
        entry.dropped = chance();
        entry.sheet = maybe([&] {
            PrintedSheet sheet{text(), choice<SheetUnits>(10), text(), text(), {}, unknown()};
            for (int k = upTo(3); k > 0; --k)
                sheet.readings.push_back(upTo(400));
            return sheet;
        });
        entry.unknown = unknown();
        made.entries.push_back(entry);
    }
    made.unknown = unknown();
    return made;
}

Workbook Maker::make() {
    Workbook made = emptyWorkbook();
    made.job = {text(), text(), text(), text(), text(), text(), unknown()};
    made.block.arrangement = choice<Arrangement>(3);
    if (chance()) made.block.axes.push_back({"C é", text(), 0.1 * upTo(1800), unknown()});
    const int bores = 1 + upTo(15);
    for (int i = 0; i < bores; ++i)
        made.block.bores.push_back(bore(bores - i, made.block.axes));
    made.block.unknown = unknown();
    made.straightAim = maybe([&] { return typed("0,00025", Unit::inch); });
    for (int i = upTo(3); i > 0; --i)
        made.limitSets.push_back(limitSet("l" + std::to_string(i), bores));
    for (int i = upTo(3); i > 0; --i)
        made.surveys.push_back(survey("s" + std::to_string(i), made.block));
    for (int i = upTo(2); i > 0; --i)
        made.studies.push_back(study("r" + std::to_string(i)));
    made.sheet.summary = maybe([&] { return text(); });
    made.sheet.unknown = unknown();
    made.invented = chance();
    made.unknown = unknown();
    if (chance()) made.sizing = sizing(bores);
    if (chance()) made.targets = targets(bores);
    if (chance()) made.fit = fit(bores);
    if (chance()) made.hone = hone(made);
    if (chance()) made.history = history();
    return made;
}

Workbook randomWorkbook(unsigned seed) {
    return Maker(seed).make();
}

} // namespace borewright::test
