// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/simulated_bench.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace borewright::test {
namespace {

// Ovality falls by e with this much off the diameter: a stone takes the high sides first.
constexpr double roundedBy_um = 80;

double rateNow(const TrueStone& stone) {
    const double loading = 1 - std::exp(-stone.loaded / stone.loadingStrokes);
    return stone.rate_um * std::exp(stone.drift - stone.loadingLoss * loading);
}

} // namespace

SimulatedBench::SimulatedBench(BoreAsStated stated, TrueBore bore, std::shared_ptr<HoneKit> kit,
                               BenchGauge gauge, std::uint64_t seed)
    : HoneBench(std::move(stated))
    , m_bore(std::move(bore))
    , m_kit(std::move(kit))
    , m_gauge(gauge)
    , m_readings(seed) {
    for (TrueStone& stone : m_kit->stones)
        stone.face.resize(static_cast<std::size_t>(std::lround(stone.length_mm / benchCell_mm)));
}

SimulatedBench SimulatedBench::copy() const {
    SimulatedBench other(*this);
    other.m_kit = std::make_shared<HoneKit>(*m_kit);
    return other;
}

double SimulatedBench::within(std::size_t stone, double place_mm) const {
    return std::clamp(place_mm, stated().highest_mm(stone), stated().lowest_mm(stone));
}

// Whoever strokes down to the closed end feels the carrier touch it, each time.
bool SimulatedBench::atStop(std::size_t stone, double place_mm) const {
    return place_mm >= stated().lowest_mm(stone) - 0.25;
}

SimulatedBench::Ends SimulatedBench::ends(std::size_t stone, const HoneWindow& window) {
    const auto meant = [&](double end_mm) {
        const double error = m_kit->endError_mm * (2 * m_kit->chance.uniform() - 1);
        return within(stone, atStop(stone, end_mm) ? end_mm : end_mm + error);
    };
    const double from = meant(window.from_mm);
    const double to = meant(window.to_mm);
    return {std::min(from, to), std::max(from, to)};
}

double SimulatedBench::counted(double strokes) {
    const int most = m_kit->countError;
    const double drawn = m_kit->chance.uniform();
    if (most == 0 || strokes <= 0) return std::max(0.0, strokes);
    return std::max(0.0, strokes + std::floor(drawn * (2 * most + 1)) - most);
}

void SimulatedBench::stroke(std::size_t index, const HoneWindow& window) {
    TrueStone& stone = m_kit->stones[index];
    const Ends ends = this->ends(index, window);
    const double strokes = counted(window.strokes);
    const double today = std::exp(m_kit->scatter * m_kit->chance.normal());
    const auto reversal = [&](double place) {
        const double off = m_kit->unsteady_mm * m_kit->chance.normal();
        return within(index, atStop(index, place) ? place : place + off);
    };
    double above = reversal(ends.from_mm);
    for (double done = 0; done < strokes; done += 1) {
        const double share = std::min(1.0, strokes - done);
        const double below = reversal(ends.to_mm);
        travel(stone, above, below, today * share / 2);
        above = reversal(ends.from_mm);
        travel(stone, below, above, today * share / 2);
        stone.loaded += share;
    }
    constexpr double slice = 0.1;
    for (double done = 0; done < window.held; done += slice)
        stay(stone, ends.to_mm, today * std::min(slice, window.held - done));
    stone.loaded += std::max(0.0, window.held);
}

// One way, down or up: steps of a millimetre or so, each as long as the hand takes for it.
void SimulatedBench::travel(TrueStone& stone, double from_mm, double to_mm, double share) {
    const double way = std::fabs(to_mm - from_mm);
    const int steps = std::max(4, static_cast<int>(std::ceil(way / m_kit->step_mm)));
    const double whole = way + 2 * m_kit->reversal_mm;
    const auto passed = [&](double u) { // share of the time in which u of the way is done
        u = std::clamp(u, 0.0, 1.0);
        const double sine = std::acos(1 - 2 * u) / std::numbers::pi;
        return (1 - m_kit->sine) * u + m_kit->sine * sine;
    };
    for (int i = 0; i <= steps; ++i) {
        const double u = static_cast<double>(i) / steps;
        const double half = 0.5 / steps;
        double time = way / whole * (passed(u + half) - passed(u - half));
        if (i == 0 || i == steps) time += m_kit->reversal_mm / whole;
        stay(stone, from_mm + (to_mm - from_mm) * u, share * time);
    }
}

void SimulatedBench::stay(TrueStone& stone, double lowerEnd_mm, double share) {
    const auto lowerEnd = static_cast<std::size_t>(std::min(
        std::lround(lowerEnd_mm / benchCell_mm), static_cast<long>(m_bore.diameter.size())));
    const std::size_t cells = stone.face.size();
    m_gap.assign(cells, 0);
    m_bears.assign(cells, 0);
    for (std::size_t j = 0; j < cells && j < lowerEnd; ++j) {
        const std::size_t ring = lowerEnd - 1 - j;
        const double missing = 1 - m_bore.land[ring];
        m_gap[j] = m_bore.diameter[ring] / 2 + stone.face[j] - m_kit->fallIn_um * missing / 0.4;
        m_bears[j] = m_bore.land[ring];
    }
    Holding holding = m_kit->holding;
    holding.compliance_um *= stone.complianceFactor;
    m_press.settle(holding, m_gap, m_bears);
    giveWay(stone, share / holding.compliance_um, lowerEnd);
}

void SimulatedBench::giveWay(TrueStone& stone, double share, std::size_t lowerEnd) {
    const double rate = rateNow(stone);
    const double nominal = m_kit->holding.compliance_um * stone.complianceFactor;
    for (std::size_t j = 0; j < stone.face.size() && j < lowerEnd; ++j) {
        double pressed = m_press.overlap()[j];
        if (pressed <= 0) continue;
        if (m_kit->pressureLaw != 1) // in the same unit, so that nominal pressure cuts as before
            pressed = nominal * std::pow(pressed / nominal, m_kit->pressureLaw);
        const std::size_t ring = lowerEnd - 1 - j;
        const double land = m_bore.land[ring];
        const double taken = rate * share * pressed;
        const double onLand = 1 + m_kit->edgeShare * (1 / land - 1);
        const double off = taken * onLand * std::exp(-m_bore.hardness[ring]);
        m_bore.diameter[ring] += off;
        m_bore.oval[ring] *= 1 - off / roundedBy_um;
        stone.face[j] += stone.wear * taken / 2 * land;
    }
}

void SimulatedBench::dress(std::size_t stone) {
    TrueStone& dressed = m_kit->stones[stone];
    dressed.loaded = 0;
    dressed.drift = 0;
    std::ranges::fill(dressed.face, 0.0);
}

void SimulatedBench::beginReading() {
    for (TrueStone& stone : m_kit->stones) {
        stone.loaded *= 0.8; // brushed and washed while waiting
        stone.drift = 0.95 * stone.drift + m_kit->drift * m_kit->chance.normal();
    }
    m_warm_um = m_gauge.warm_um * m_readings.uniform();
}

double SimulatedBench::read(double depth_mm, int axis) {
    return readOff(m_gauge, truth(depth_mm, axis) + m_warm_um, m_readings);
}

double SimulatedBench::truth(double depth_mm, int axis) const {
    const double place = depth_mm / benchCell_mm - 0.5;
    const auto last = static_cast<double>(m_bore.diameter.size() - 1);
    const double cell = std::clamp(std::floor(place), 0.0, last - 1);
    const auto i = static_cast<std::size_t>(cell);
    const double part = std::clamp(place - cell, 0.0, 1.0);
    const double side = axis == 0 ? 0.5 : -0.5;
    const auto at = [&](std::size_t k) { return m_bore.diameter[k] + side * m_bore.oval[k]; };
    return at(i) + part * (at(i + 1) - at(i));
}

} // namespace borewright::test
