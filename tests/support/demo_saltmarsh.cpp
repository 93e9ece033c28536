// SPDX-License-Identifier: GPL-3.0-or-later
// "Saltmarsh V6": invented, with no maker, model or measured data behind it.
#include "tests/support/demo_fit.h"
#include "tests/support/demo_scenarios.h"
#include "tests/support/demo_survey_builder.h"

namespace borewright::demo {
namespace {

Block block() {
    Block block;
    block.arrangement = Arrangement::vee;
    block.axes = usualAxes();
    for (int number = 1; number <= 6; ++number) {
        Bore bore;
        bore.number = number;
        bore.standardSize = typed("3.4200", Unit::inch);
        bore.depth = typed("4.10", Unit::inch);
        bore.surface = Surface::ironSleeveInAluminium;
        bore.openEnd = "head face";
        bore.roomAtClosedEnd = typed("0", Unit::inch);
        bore.combustionEnd = End::open;
        bore.map.topRingLine = typed("0.42", Unit::inch);
        bore.map.ports = {{typed("1.95", Unit::inch), typed("2.90", Unit::inch), {"A", "B"}}};
        bore.map.gaugeFoot = typed("0.35", Unit::inch);
        for (const char* depth : {"0.25", "0.60", "1.20", "1.80", "3.05", "3.75"})
            bore.levels.push_back({typed(depth, Unit::inch), Judging::byMap});
        block.bores.push_back(bore);
    }
    return block;
}

std::vector<LimitSet> limits() {
    LimitSet worn;
    worn.id = "l1";
    worn.name = "worn";
    worn.limits.sizeUpper = typed("3.4240", Unit::inch);
    worn.limits.outOfRound = typed("3.0", Unit::thou);
    worn.limits.taper = typed("2.0", Unit::thou);
    LimitSet finish;
    finish.id = "l2";
    finish.name = "0.020 over";
    finish.purpose = LimitPurpose::finish;
    finish.oversize = typed("0.020", Unit::inch);
    finish.limits.sizeLower = typed("3.4395", Unit::inch);
    finish.limits.sizeUpper = typed("3.4410", Unit::inch);
    finish.limits.outOfRound = typed("1.0", Unit::thou);
    finish.limits.taper = typed("1.0", Unit::thou);
    return {worn, finish};
}

SurveyHeader header(const std::string& id, const std::string& name, SurveyKind kind,
                    std::string_view time, std::string_view set) {
    SurveyHeader header;
    header.id = id;
    header.name = name;
    header.kind = kind;
    header.time = *readIso(time);
    header.gauge.gauge = "dial bore gauge, 2.8 to 6 in (invented)";
    header.gauge.setOn = "setting ring " + std::string(set);
    header.gauge.setSize = typed(set, Unit::inch);
    header.gauge.dial = tenthDial();
    header.gauge.gear = tenthDialAndRing();
    header.gauge.blockExpansion = Expansion::sleeveInAluminium;
    header.gauge.stoodTogether = true;
    header.plate = false;
    return header;
}

Job job() {
    Job job;
    job.customer = "A. Customer (invented)";
    job.engine = "Saltmarsh V6 (invented)";
    job.serial = "SALT-0006";
    job.reason = "low compression on cylinder 4";
    job.measuredBy = "the demonstration";
    job.notes = "Everything in this workbook is invented: no maker, engine or measured data stand "
                "behind it. Some readings are mistakes, left as they were typed.";
    return job;
}

Survey found(const Block& block) {
    return SurveyBuilder(
               block,
               header("s1", "as found", SurveyKind::asFound, "2026-03-11T09:05:00Z", "3.4200"),
               Unit::thou)
        .bore(1, "0.3 1.9 1.5 1.2 0.8 0.5", "0.4 2.9 2.5 2.3 1.2 0.7")
        .bore(2, "0.2 2.1 -1.6 1.2 0.7 0.4", "0.3 3.3 2.8 2.4 1.1 0.6")
        .bore(3, "0.3 1.7 1.4 1.1 0.7 0.6", "0.3 2.6 2.3 2.0 1.0 0.6")
        .bore(4, "0.3 2.4 2.0 1.6 0.9 0.5", "0.5 4.3 3.7 3.1 1.5 0.8")
        .bore(5, "0.3 1.8 1.4 1.2 1.9 2.5", "0.3 2.7 2.4 2.1 2.6 3.1")
        .bore(6, "0.2 2.0 1.6 1.3 0.8 0.4", "0.4 -6.2 3.2 2.7 1.3 0.7")
        .take();
}

Survey rough(const Block& block) {
    return SurveyBuilder(
               block,
               header("s2", "rough 100", SurveyKind::check, "2026-03-12T11:20:00Z", "3.4400"),
               Unit::thou)
        .bore(1, "-4.3 -4.4 -4.5 -4.7 -5.7 -6.6", "-4.2 -4.3 -4.5 -4.6 -5.6 -6.5")
        .bore(2, "-4.4 -4.5 -4.7 -4.8 -5.9 -6.9", "-4.4 -4.4 -4.6 -4.7 -5.7 -6.8")
        .bore(3, "-4.1 -4.3 -4.4 -4.5 -5.4 -6.3", "-4.0 -4.2 -4.3 -4.5 -5.3 -6.2")
        .bore(4, "-4.2 -4.4 -4.5 -4.6 -5.6 -6.6", "-4.0 -4.1 -4.3 -4.5 -5.4 -6.4")
        .bore(5, "-4.4 -4.5 -4.6 -4.7 -5.3 -5.9", "-4.3 -4.4 -4.6 -4.6 -5.2 -5.8")
        .bore(6, "-4.2 -4.3 -4.5 -4.6 -5.6 -6.7", "-4.1 -4.2 -4.4 -4.5 -5.5 -6.5")
        .take();
}

Survey shortThenFull(const Block& block) {
    return SurveyBuilder(block,
                         header("s3", "short, then full 100", SurveyKind::check,
                                "2026-03-12T14:40:00Z", "3.4400"),
                         Unit::thou)
        .bore(1, "-2.9 -2.9 -3.0 -3.0 -2.3 -2.1", "-2.8 -2.9 -3.0 -3.0 -2.3 -2.2")
        .bore(2, "-3.0 -3.1 -3.1 -3.1 -2.5 -2.3", "-3.0 -3.0 -3.1 -3.1 -2.4 -2.3")
        .bore(3, "-2.8 -2.9 -2.9 -3.0 -2.2 -2.0", "-2.7 -2.8 -2.9 -2.2 -1.9 x")
        .bore(4, "-2.9 -3.0 -3.0 -3.1 -2.4 -2.2", "-2.8 -2.9 -3.0 -3.0 -2.3 -2.1")
        .bore(5, "-2.9 -2.9 -3.0 -3.0 -2.1 -1.8", "-2.8 -2.9 -2.9 -3.0 -2.1 -1.7")
        .bore(6, "-2.8 -2.9 -3.0 -3.0 -2.3 -2.1", "-2.8 -2.8 -2.9 -3.0 -2.3 -2.0")
        .take();
}

Survey final(const Block& block) {
    return SurveyBuilder(block,
                         header("s4", "final", SurveyKind::final, "2026-03-13T09:10:00Z", "3.4400"),
                         Unit::thou)
        .bore(1, "0.3 0.2 0.1 0.1 0.1 0.1", "0.3 0.2 0.2 0.1 0.1 0.1")
        .bore(2, "0.4 0.3 0.3 0.3 0.3 0.2", "0.4 0.3 0.3 0.3 0.2 0.2")
        .bore(3, "0.2 0.1 0.0 0.0 0.1 0.1", "0.2 0.1 0.1 0.0 0.1 0.0")
        .bore(4, "0.4 0.3 0.2 0.2 0.2 0.3", "0.4 0.3 0.3 0.2 0.2 0.2")
        .bore(5, "0.5 0.4 0.4 0.4 0.4 0.5", "0.5 0.5 0.4 0.4 0.4 0.5")
        .bore(6, "0.8 0.8 0.7 0.7 0.7 0.6", "0.9 0.8 0.8 0.7 0.7 0.7")
        .strike(6, "read 4 minutes after its pass, still warm", 5400)
        .bore(6, "0.3 0.3 0.2 0.2 0.2 0.1", "0.4 0.3 0.3 0.2 0.2 0.2")
        .take();
}

} // namespace

Workbook saltmarsh() {
    Workbook workbook = emptyWorkbook();
    workbook.job = job();
    workbook.block = block();
    workbook.limitSets = limits();
    workbook.surveys = {found(workbook.block), rough(workbook.block), shortThenFull(workbook.block),
                        final(workbook.block)};
    workbook.sizing = saltmarshSizes();
    workbook.fit = saltmarshFit();
    workbook.invented = true;
    return workbook;
}

} // namespace borewright::demo
