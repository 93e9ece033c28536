// SPDX-License-Identifier: GPL-3.0-or-later
// "Saltmarsh V6, to be honed": the same invented block after the rough stones have narrowed every
// bore towards its closed end, with the stones at hand and no pass logged yet. What next?
#include "tests/support/demo_scenarios.h"
#include "tests/support/demo_survey_builder.h"

namespace borewright::demo {
namespace {

// The abrasive begins 0.06 in above the carrier's lower end, so that it reaches down to 4.04 in.
Stone stone(const std::string& id, const std::string& name, const std::string& grit, StoneKind kind,
            std::string_view ends) {
    Stone stone;
    stone.id = id;
    stone.name = name;
    stone.grit = grit;
    stone.kind = kind;
    stone.begins = typed("0.06", Unit::inch);
    stone.ends = typed(ends, Unit::inch);
    return stone;
}

} // namespace

Workbook saltmarshHoning() {
    Workbook workbook = correctedSaltmarsh();
    workbook.job.serial = "SALT-0008";
    workbook.job.reason = "to be honed to 0.020 in over";
    workbook.job.notes = "Everything in this workbook is invented: no maker, engine or measured "
                         "data stand behind it. The program can play the honing; what it plays is "
                         "marked as simulated.";
    workbook.fit = {};
    workbook.surveys.resize(2); // as found, rough 100
    workbook.hone.stones = {stone("k1", "full 100", "100", StoneKind::rough, "3.06"),
                            stone("k2", "short 100", "100", StoneKind::rough, "1.06"),
                            stone("k3", "full 280", "280", StoneKind::finish, "3.06")};
    workbook.hone.hone.speedRpm = 150;
    workbook.hone.hone.feed = "spring at its second mark";
    workbook.hone.hone.oil = true;
    return workbook;
}

} // namespace borewright::demo
