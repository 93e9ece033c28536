// SPDX-License-Identifier: GPL-3.0-or-later
// "Rushmere 3": invented, with no maker, model or measured data behind it.
#include "tests/support/demo_fit.h"
#include "tests/support/demo_scenarios.h"
#include "tests/support/demo_survey_builder.h"

namespace borewright::demo {
namespace {

TypedLength mm(std::string_view text) {
    return typed(text, Unit::millimetre);
}

Block block() {
    Block block;
    block.arrangement = Arrangement::inLine;
    block.axes = usualAxes();
    for (int number = 1; number <= 3; ++number) {
        Bore bore;
        bore.number = number;
        bore.standardSize = mm("73.200");
        bore.depth = mm("88");
        bore.surface = Surface::ironSleeveInAluminium;
        bore.openEnd = "crankcase face";
        bore.roomAtClosedEnd = mm("0");
        bore.combustionEnd = End::closed;
        bore.map.topRingLine = mm("81");
        bore.map.lowestRingLine = mm("20");
        bore.map.ports = {{mm("28"), mm("50"), {"B"}}, {mm("32"), mm("44"), {"A"}}};
        bore.map.gaugeFoot = mm("6");
        for (const char* depth : {"8", "24", "47", "58", "70", "80"})
            bore.levels.push_back({mm(depth), Judging::byMap});
        block.bores.push_back(bore);
    }
    return block;
}

std::vector<LimitSet> limits() {
    LimitSet worn;
    worn.id = "l1";
    worn.name = "worn";
    worn.limits.sizeUpper = mm("73.280");
    worn.limits.outOfRound = mm("0.030");
    worn.limits.taper = mm("0.050");
    LimitSet finish;
    finish.id = "l2";
    finish.name = "0.50 over";
    finish.purpose = LimitPurpose::finish;
    finish.oversize = mm("0.50");
    finish.limits.sizeLower = mm("73.695");
    finish.limits.sizeUpper = mm("73.715");
    finish.limits.outOfRound = mm("0.010");
    finish.limits.taper = mm("0.010");
    return {worn, finish};
}

// The figures of a careful man's own gauge; the study below gave its repeatability.
Gear gear() {
    Gear gear;
    gear.dialLocalError = typed("0.6", Unit::micrometre);
    gear.step = typed("1", Unit::micrometre);
    gear.repeatability = typed("0.816", Unit::micrometre);
    gear.repeatabilityFreedom = 9;
    gear.master = typed("0.8", Unit::micrometre);
    gear.masterMeant = Meant::expanded;
    gear.settingScatter = typed("0.5", Unit::micrometre);
    gear.drift = typed("1.5", Unit::micrometre);
    gear.driftLimit = typed("4", Unit::micrometre);
    gear.lastChecked = "March 2026";
    return gear;
}

SurveyHeader header(const std::string& id, const std::string& name, SurveyKind kind,
                    std::string_view time, Entry entry) {
    SurveyHeader header;
    header.id = id;
    header.name = name;
    header.kind = kind;
    header.time = *readIso(time);
    header.gauge.gauge = "dial bore gauge, 50 to 150 mm (invented)";
    header.gauge.setOn = entry == Entry::diameter ? "setting ring 73.200" : "setting ring 73.700";
    header.gauge.setSize = mm(entry == Entry::diameter ? "73.200" : "73.700");
    header.gauge.entry = entry;
    header.gauge.dial = micrometreDial();
    header.gauge.gear = gear();
    header.gauge.blockExpansion = Expansion::sleeveInAluminium;
    header.gauge.stoodTogether = true;
    header.gauge.dial.larger = Dial::Larger::minus;
    header.plate = false;
    return header;
}

Job job() {
    Job job;
    job.customer = "B. Customer (invented)";
    job.engine = "Rushmere 3, one-piece head (invented)";
    job.serial = "RUSH-0003";
    job.reason = "hard to start, uses oil";
    job.measuredBy = "the demonstration";
    job.notes = "Everything in this workbook is invented: no maker, engine or measured data stand "
                "behind it. Some readings are mistakes, left as they were typed.";
    return job;
}

Survey found(const Block& block) {
    return SurveyBuilder(block,
                         header("s1", "as found", SurveyKind::asFound, "2026-04-07T08:30:00+01:00",
                                Entry::diameter),
                         Unit::millimetre)
        .bore(1, "206 211 224 229 238 246", "208 215 x 241 256 268", "73.")
        .bore(2, "205 212 226 231 239 248", "207 214 x 243 216 271", "73.")
        .bore(3, "207 213 223 230 259 249", "209 217 x 244 241 274", "73.")
        .take();
}

Survey rough(const Block& block) {
    return SurveyBuilder(block,
                         header("s2", "rough 120", SurveyKind::check, "2026-04-08T10:15:00+01:00",
                                Entry::deviation),
                         Unit::micrometre)
        .bore(1, "49 52 55 60 78 97", "47 51 x 58 76 95")
        .bore(2, "51 54 57 63 81 102", "50 53 x 61 80 99")
        .zeroCheck("0")
        .bore(3, "54 57 60 64 81 100", "52 56 x 63 80 98")
        .zeroCheck("6")
        .take();
}

Survey shortThenFull(const Block& block) {
    return SurveyBuilder(block,
                         header("s3", "short, full", SurveyKind::check, "2026-04-08T14:05:00+01:00",
                                Entry::deviation),
                         Unit::micrometre)
        .bore(1, "40 41 42 40 31 25", "39 40 x 39 0.030 24")
        .bore(2, "41 42 43 42 33 27", "40 42 x 41 32 25")
        .bore(3, "38 39 40 38 29 22", "37 38 x 37 28 21")
        .take();
}

Survey final(const Block& block) {
    return SurveyBuilder(block,
                         header("s4", "final", SurveyKind::final, "2026-04-09T09:00:00+01:00",
                                Entry::deviation),
                         Unit::micrometre)
        .bore(1, "-6 -4 -4 -3 -4 -3", "-6 -5 x -4 -4 -3")
        .bore(2, "-9 -8 -7 -7 -6 -6", "-9 -8 x -7 -7 -6")
        .bore(3, "-7 -6 -5 -5 -6 -5", "-8 -6 x -6 -5 -5")
        .take();
}

RepeatStudy study() {
    RepeatRun run{"the demonstration", "bore 2, 58 mm, A", {}, {}};
    for (const char* shown : {"-1", "0", "0", "1", "-1", "0", "1", "0", "-1", "1"})
        run.typed.push_back(typed(shown, Unit::micrometre));
    return {"r1", "dial bore gauge, 50 to 150 mm (invented)", "2026-04-07", {run}, {}};
}

} // namespace

Workbook rushmere() {
    Workbook workbook = emptyWorkbook();
    workbook.job = job();
    workbook.block = block();
    workbook.limitSets = limits();
    workbook.surveys = {found(workbook.block), rough(workbook.block), shortThenFull(workbook.block),
                        final(workbook.block)};
    workbook.studies = {study()};
    workbook.sizing = rushmereSizes();
    workbook.fit = rushmereFit();
    workbook.invented = true;
    return workbook;
}

} // namespace borewright::demo
