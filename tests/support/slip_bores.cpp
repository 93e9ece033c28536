// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/slip_bores.h"

#include "tests/support/lengths.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace borewright::test {
namespace {

double between(Random& random, double least, double most) {
    return least + (most - least) * random.uniform();
}

// What makes the bores of a block alike, in µm and shares of depth.
struct Form {
    double wear, oval, decay, witness, flare, vee, port, from, honed;
};

Form formOf(Random& random) {
    return {between(random, 25, 110),
            between(random, 0.15, 0.7),
            between(random, 0.8, 2.5),
            between(random, 0, 0.2),
            between(random, 12, 75),
            between(random, -50, 50),
            between(random, 12, 50),
            random.uniform() < 0.5 ? between(random, 0, 15) : between(random, -150, 0),
            between(random, 1, 8)};
}

Form varied(const Form& f, Random& random) {
    const auto by = [&] { return between(random, 0.8, 1.2); };
    return {f.wear * by(),  f.oval * by(), f.decay * by(), f.witness,
            f.flare * by(), f.vee * by(),  f.port * by(),  f.from + between(random, -5, 5),
            f.honed * by()};
}

// Wear is largest just below the top ring, dies away downward, and is more across the crankshaft.
double worn_um(const Form& f, double t, bool b, bool witness) {
    const double wear = witness ? f.witness * f.wear : f.wear * std::exp(-f.decay * t);
    return wear * (b ? 1 + f.oval : 1);
}

double size_um(BoreKind kind, const Form& f, double t, std::size_t level, bool b) {
    const bool first = level == 0;
    switch (kind) {
    case BoreKind::honed:
        return f.honed * std::sin(3 * t + f.decay) + (b ? 0.3 * f.honed : 0);
    case BoreKind::worn:
    case BoreKind::scored:
        return worn_um(f, t, b, false);
    case BoreKind::ridge:
        return worn_um(f, t, b, first);
    case BoreKind::bell:
        return worn_um(f, t, b, first) * 0.4 + f.flare * std::max(0.0, (t - 0.65) / 0.35);
    case BoreKind::vee:
        return f.vee * t + (b ? 4 : 0);
    case BoreKind::portWear:
        return worn_um(f, t, b, false) * 0.6 + (b && t > 0.35 && t < 0.7 ? f.port : 0);
    case BoreKind::oval:
        return (b ? f.oval * 90 : 0) + f.honed * t;
    }
    return 0;
}

Workbook emptyBlock(const BlockPlan& plan, Random& random) {
    Workbook workbook = emptyWorkbook();
    const bool inch = plan.gear == GearKind::tenthThou || plan.gear == GearKind::diameterInch;
    for (int number = 1; number <= plan.bores; ++number) {
        Bore bore;
        bore.number = number;
        bore.depth = inch ? typedIn("4.10") : typed("104", Unit::millimetre);
        workbook.block.bores.push_back(bore);
    }
    double depth_mm = 6;
    for (int level = 0; level < plan.levels; ++level) {
        const Length depth = Length::whole(std::lround(depth_mm), Unit::millimetre);
        for (Bore& bore : workbook.block.bores)
            bore.levels.push_back({typedFrom(depth, Unit::millimetre), {}});
        depth_mm += between(random, 0.7, 1.3) * 88 / plan.levels;
    }
    Survey survey;
    survey.header.id = "s1";
    survey.header.time = {1'774'000'000, 0};
    GaugeSetting& gauge = survey.header.gauge;
    gauge.setSize = inch ? typedIn("3.4200") : typed("86.800", Unit::millimetre);
    gauge.dial = inch ? tenthDial() : micrometreDial();
    if (plan.gear == GearKind::micrometre) gauge.dial.larger = Dial::Larger::minus;
    const bool diameters =
        plan.gear == GearKind::diameterInch || plan.gear == GearKind::diameterMetric;
    gauge.entry = diameters ? Entry::diameter : Entry::deviation;
    gauge.gear.repeatability = typedUm("2");
    workbook.surveys.push_back(survey);
    return workbook;
}

// What the user types for a bore that is this much larger than the setting.
TypedLength typedFor(double um, const BlockPlan& plan, const GaugeSetting& gauge) {
    const Unit units[] = {Unit::thou, Unit::micrometre, Unit::inch, Unit::millimetre};
    const Unit unit = units[static_cast<std::size_t>(plan.gear)];
    const Length step = gauge.dial.graduation.value();
    const double steps = um * 1e6 / static_cast<double>(step.picometres());
    const Length dial = std::lround(steps) * step;
    Length shown = gauge.dial.larger == Dial::Larger::minus ? -dial : dial;
    if (gauge.entry == Entry::diameter) shown += gauge.setSize->value();
    const std::string text = format(shown, unit, usualDecimals(unit), Sign::plain);
    return *readTyped(text, unit);
}

// µm by station of one bore, its shape, its own roughness and its score.
std::vector<double> cutBore(BoreKind kind, const Form& form, const std::vector<Level>& levels,
                            double base_um, bool scored, Random& random) {
    std::vector<double> um;
    const double first = levels.front().depth.value().in(Unit::millimetre);
    const double last = levels.back().depth.value().in(Unit::millimetre);
    const std::size_t scoreAt = random.next() % levels.size();
    const std::size_t scoreLong = 1 + random.next() % 2;
    const bool scoreOnB = random.next() % 2 == 0;
    const double score_um = between(random, 20, 150);
    for (std::size_t i = 0; i < levels.size(); ++i)
        for (const bool b : {false, true}) {
            const double t = (levels[i].depth.value().in(Unit::millimetre)-first) / (last - first);
            double x = base_um + size_um(kind, form, t, i, b) + 0.8 * random.normal();
            if (scored && b == scoreOnB && i >= scoreAt && i < scoreAt + scoreLong) x += score_um;
            um.push_back(x);
        }
    return um;
}

} // namespace

std::string nameOf(BoreKind kind) {
    const char* names[] = {"honed", "worn", "ridge", "bell", "V", "scored", "port wear", "oval"};
    return names[static_cast<std::size_t>(kind)];
}

Workbook readBlock(const BlockPlan& plan, Random& random) {
    Workbook workbook = emptyBlock(plan, random);
    Survey& survey = workbook.surveys.front();
    const Form form = formOf(random), other = formOf(random);
    const int odd = plan.oddBore ? 1 + static_cast<int>(random.next() % 6) % plan.bores : 0;
    const int scored = 1 + static_cast<int>(random.next() % 6) % plan.bores;
    std::map<Station, double> um;
    for (const Bore& bore : workbook.block.bores) {
        const bool isOdd = bore.number == odd;
        const BoreKind kind = isOdd ? allBoreKinds[random.next() % 8] : plan.kind;
        const bool isScored = plan.kind == BoreKind::scored && bore.number == scored;
        const auto cut = cutBore(kind, varied(isOdd ? other : form, random), bore.levels, form.from,
                                 isScored, random);
        for (std::size_t i = 0; i < bore.levels.size(); ++i) {
            um[{bore.number, bore.levels[i].depth.value(), "A"}] = cut[2 * i];
            um[{bore.number, bore.levels[i].depth.value(), "B"}] = cut[2 * i + 1];
        }
    }
    Timestamp now = survey.header.time;
    for (const Station& station :
         inOrder(workbook.block, plannedStations(workbook.block), Order::downAndUp)) {
        now.secondsSinceEpoch += 7;
        Reading reading;
        reading.station = station;
        reading.typed = typedFor(um[station] + 2 * random.normal(), plan, survey.header.gauge);
        reading.time = now;
        survey.readings.push_back(reading);
    }
    return workbook;
}

} // namespace borewright::test
