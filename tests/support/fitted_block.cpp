// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/fitted_block.h"

#include "tests/support/blocks.h"

namespace borewright::test {
namespace {

SizingPlan plan() {
    SizingPlan made;
    made.sizes = {{typedIn("0"), {}, {}},
                  {typedIn(".010"), typedIn("3.5095"), typedIn("3.5105")},
                  {typedMm("0,50"), {}, {}}};
    made.greatest = typedIn("0.040");
    made.method = CutMethod::boreAndHone;
    made.centring = Centring::wornBore;
    made.finishAllowance = typedThou("0.5");
    made.honeStock = typedThou("3");
    made.ownSizes = true;
    Damage score{typedIn("1.40"), "B", typedThou("6"), true, "score, exhaust side"};
    Damage pit{typedIn("2.10"), "", typedThou("2"), false, "pit"};
    made.bores[2] = {WearSide::oneSide, typedIn("3.500"), {score, pit}};
    made.bores[3] = {WearSide::bothSides, {}, {}};
    return made;
}

Piston piston(const std::string& id, const std::string& size) {
    Piston made;
    made.id = id;
    made.label = id.substr(1);
    made.size = typedIn(size);
    made.height = typedIn("0.75");
    made.measuredWith = "micrometer, 3 to 4 in";
    made.temperature = *readTemperature("72 F", Scale::celsius);
    made.doubt = typedThou("0.1");
    made.expansion = 19.5;
    made.skirt = {{typedIn("0.25"), typedIn("3.4990")}, {typedIn("1.5"), typedIn("3.4950")}};
    made.notes = "new";
    return made;
}

FitRecord fit() {
    FitRecord made;
    made.pistons = {piston("p1", "3.5058"), piston("p2", "3,5062"), piston("p3", "3.5060")};
    made.pistons[0].bore = 1;
    made.pistons[1].bore = 3;
    made.rings = {{"g1", "top", 1, 2, typedIn("0.60"), typedThou("14"), typedThou("1"), 3},
                  {"g2", "second", 2, 2, typedIn("0.60"), typedThou("15"), {}, 3}};
    made.clearance = {
        typedThou("3.8"), typedThou("4.8"), typedThou("4.2"), {DecisionRule::Kind::plain}};
    made.ringGap = {typedThou("12"), typedThou("20"), {}, {}};
    made.fileStep = typedThou("2");
    return made;
}

} // namespace

Workbook fittedBlock() {
    Workbook workbook = inchBlock(3);
    workbook.sizing = plan();
    workbook.targets[1] = {typedIn("3.5100"), typedIn("3.5095"), typedIn("3.5105"),
                           "0.010 in over"};
    workbook.targets[2] = {typedIn("3.5104"), {}, {}, "piston 2 and 4.2 thou"};
    workbook.fit = fit();
    return workbook;
}

} // namespace borewright::test
