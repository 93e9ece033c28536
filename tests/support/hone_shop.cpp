// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/hone_shop.h"

#include "tests/support/lengths.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace borewright::test {
namespace {

constexpr double finish_mm = 85;

TypedLength millimetres(double mm, int decimals) {
    return typedMm(fmt::format("{:.{}f}", mm, decimals));
}

Bore boreOf(const BoreAsStated& stated, int number) {
    Bore bore;
    bore.number = number;
    bore.standardSize = typedMm("84.5");
    bore.depth = millimetres(stated.depth_mm, 1);
    bore.openEnd = "head face";
    bore.roomAtClosedEnd = typedMm("0");
    for (const double depth : stated.stations)
        bore.levels.push_back({millimetres(depth, 1), Judging::always});
    return bore;
}

Stone stoneOf(const StatedStone& stated, std::size_t place) {
    Stone stone;
    stone.id = "k" + std::to_string(place + 1);
    stone.name = stated.name;
    stone.grit = stated.finish ? "280" : "100";
    stone.kind = stated.finish ? StoneKind::finish : StoneKind::rough;
    stone.begins = millimetres(stated.dead_mm, 2);
    stone.ends = millimetres(stated.dead_mm + stated.length_mm, 2);
    return stone;
}

LimitSet finishSet() {
    LimitSet set;
    set.id = "l1";
    set.name = "finish";
    set.purpose = LimitPurpose::finish;
    set.finishSize = typedMm("85");
    set.limits.sizeLower = typedMm("84.990");
    set.limits.sizeUpper = typedMm("85.005");
    return set;
}

} // namespace

HoneShop::HoneShop(std::vector<SimulatedBench> block)
    : workbook(emptyWorkbook())
    , m_block(std::move(block)) {
    workbook.invented = true;
    workbook.limitSets = {finishSet()};
    workbook.straightAim = typedUm("6.35");
    for (std::size_t i = 0; i < m_block.size(); ++i)
        workbook.block.bores.push_back(boreOf(m_block[i].stated(), static_cast<int>(i) + 1));
    const auto& stones = m_block.front().stated().stones;
    for (std::size_t i = 0; i < stones.size(); ++i)
        workbook.hone.stones.push_back(stoneOf(stones[i], i));
    measure(std::vector<int>{});
}

const SimulatedBench& HoneShop::bench(int bore) const {
    return m_block[static_cast<std::size_t>(bore - 1)];
}

std::vector<Station> HoneShop::stationsOf(int bore) const {
    std::vector<Station> stations;
    for (const Station& station : plannedStations(workbook.block))
        if (station.bore == bore) stations.push_back(station);
    return stations;
}

void HoneShop::measure(const std::vector<int>& bores) {
    std::vector<Station> stations;
    for (const Station& station : plannedStations(workbook.block))
        if (bores.empty() || std::ranges::find(bores, station.bore) != bores.end())
            stations.push_back(station);
    measure(stations);
}

void HoneShop::measure(const std::vector<Station>& stations) {
    pass_min(30);
    Survey survey;
    survey.header.id = freshSurveyId(workbook);
    survey.header.kind = workbook.surveys.empty() ? SurveyKind::asFound : SurveyKind::check;
    survey.header.name = fmt::format("check {}", workbook.surveys.size());
    survey.header.time = m_now;
    survey.header.gauge.entry = Entry::diameter;
    survey.header.gauge.dial = micrometreDial();
    survey.header.gauge.stoodTogether = true;
    survey.header.asked = stations;
    for (SimulatedBench& bench : m_block)
        bench.beginReading();
    for (const Station& station : stations) {
        SimulatedBench& bench = m_block[static_cast<std::size_t>(station.bore - 1)];
        const double read_um =
            bench.read(station.depth.in(Unit::millimetre), station.axis == "A" ? 0 : 1);
        Reading reading;
        reading.station = station;
        reading.typed = millimetres(finish_mm + read_um / 1000, 3);
        reading.time = m_now;
        survey.readings.push_back(std::move(reading));
    }
    workbook.surveys.push_back(std::move(survey));
}

void HoneShop::stroke(int bore, const PlannedSetUp& setUp) {
    const Stone& stone = *findStone(workbook.hone, setUp.stone);
    const auto place = static_cast<std::size_t>(&stone - workbook.hone.stones.data());
    for (const PlannedWindow& window : setUp.windows)
        m_block[static_cast<std::size_t>(bore - 1)].stroke(
            place, {window.from.value().in(Unit::millimetre),
                    window.to.value().in(Unit::millimetre), window.strokes, window.holdSeconds});
}

void HoneShop::log(int bore, const PlannedSetUp& setUp) {
    pass_min(2);
    Pass pass;
    pass.id = freshPassId(workbook.hone);
    pass.bore = bore;
    pass.stone = setUp.stone;
    pass.time = m_now;
    pass.after = workbook.surveys.back().header.id;
    for (const PlannedWindow& window : setUp.windows) {
        StrokeWindow done;
        done.from = window.from;
        done.to = window.to;
        done.strokes = window.strokes;
        done.holdSeconds = window.holdSeconds;
        pass.windows.push_back(done);
    }
    workbook.hone.passes.push_back(std::move(pass));
}

void HoneShop::hone(int bore, const PlannedSetUp& setUp) {
    stroke(bore, setUp);
    log(bore, setUp);
}

Results HoneShop::results() const {
    return compute(workbook, DisplayUnits::metric());
}

HoneOutlook HoneShop::outlook(const HoneWishes& wishes, const std::shared_ptr<HoneMemory>& memory,
                              const std::vector<int>& bores) const {
    return honeOutlook(workbook, results(), DisplayUnits::metric(), wishes, bores, false, {},
                       memory);
}

} // namespace borewright::test
