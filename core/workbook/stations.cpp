// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/workbook/stations.h"

#include <algorithm>
#include <tuple>

namespace borewright {
namespace {

bool insidePorts(const Bore& bore, Length depth) {
    return std::ranges::any_of(bore.map.ports, [&](const PortBand& band) {
        return band.from.value() <= depth && depth <= band.to.value();
    });
}

// Rounds to the step, `up` or to nearest.
Length toStep(Length length, Length step, bool up) {
    const std::int64_t s = step.picometres();
    const std::int64_t l = length.picometres();
    return Length::fromPicometres((up ? (l + s - 1) / s : (l + s / 2) / s) * s);
}

// Collects proposed levels, keeping them apart, inside the bore and off the port bands.
class Proposal {
public:
    Proposal(const Bore& bore, Unit unit, Length step)
        : m_bore(bore)
        , m_unit(unit)
        , m_step(step) {}

    void add(Length depth) {
        const auto reach = gaugeReach(m_bore);
        if (depth <= Length() || depth > reach.value_or(m_bore.depth->value())) return;
        if (insidePorts(m_bore, depth)) return;
        const bool close = std::ranges::any_of(m_levels, [&](const Level& level) {
            return (level.depth.value() - depth).magnitude() < 2 * m_step;
        });
        if (!close) m_levels.push_back({typedFrom(depth, m_unit), Judging::byMap});
    }

    std::vector<Level> take() {
        std::ranges::sort(m_levels, {}, [](const Level& l) { return l.depth.value(); });
        return std::move(m_levels);
    }

private:
    const Bore& m_bore;
    Unit m_unit;
    Length m_step;
    std::vector<Level> m_levels;
};

struct Travel {
    Length from;
    Length to;
};

// Ring travel as depths from the open end, bounded by the bore where a line is not given.
Travel ringTravel(const Bore& bore) {
    const auto& map = bore.map;
    const auto& upper = bore.combustionEnd == End::open ? map.topRingLine : map.lowestRingLine;
    const auto& lower = bore.combustionEnd == End::open ? map.lowestRingLine : map.topRingLine;
    return {upper ? upper->value() : Length(), lower        ? lower->value()
                                               : bore.depth ? bore.depth->value()
                                                            : Length::largest()};
}

bool hasMap(const Bore& bore) {
    return bore.map.topRingLine || bore.map.lowestRingLine || !bore.map.ports.empty();
}

std::vector<Level> evenLevels(const Bore& bore, Unit unit, Length step) {
    Proposal proposal(bore, unit, step);
    const Length deepest = Length::fromPicometres(bore.depth->value().picometres() * 9 / 10);
    const Length last = gaugeReach(bore).value_or(
        Length::fromPicometres(deepest.picometres() / step.picometres() * step.picometres()));
    const Length first =
        std::max(step, toStep(Length::fromPicometres(last.picometres() / 8), step, false));
    proposal.add(last);
    for (int i = 0; i < 4; ++i)
        proposal.add(toStep(first + Length::fromPicometres((last - first).picometres() * i / 4),
                            step, false));
    return proposal.take();
}

} // namespace

Zone zoneAt(const Bore& bore, Length depth) {
    if (!hasMap(bore)) return Zone::unmapped;
    const Travel travel = ringTravel(bore);
    const bool combustionOpen = bore.combustionEnd == End::open;
    if (depth < travel.from) return combustionOpen ? Zone::ridgeLand : Zone::skirtOnly;
    if (depth > travel.to) return combustionOpen ? Zone::skirtOnly : Zone::ridgeLand;
    return insidePorts(bore, depth) ? Zone::portBand : Zone::ringTravel;
}

bool isJudged(const Bore& bore, Length depth) {
    for (const Level& level : bore.levels)
        if (level.depth.value() == depth && level.judging != Judging::byMap)
            return level.judging == Judging::always;
    const Zone zone = zoneAt(bore, depth);
    return zone != Zone::ridgeLand && zone != Zone::skirtOnly;
}

bool hasWall(const Bore& bore, Length depth, const std::string& axis) {
    for (const WallMark& mark : bore.wallMarks)
        if (mark.depth == depth && mark.axis == axis) return mark.wall;
    return std::ranges::none_of(bore.map.ports, [&](const PortBand& band) {
        return band.from.value() <= depth && depth <= band.to.value() &&
               std::ranges::find(band.axes, axis) != band.axes.end();
    });
}

std::optional<Length> gaugeReach(const Bore& bore) {
    if (!bore.depth || !bore.map.gaugeFoot) return std::nullopt;
    return bore.depth->value() - bore.map.gaugeFoot->value();
}

std::vector<Level> proposeLevels(const Bore& bore) {
    if (!bore.depth || bore.depth->value() <= Length()) return {};
    const bool inch = isInchFamily(bore.depth->unit());
    const Unit unit = inch ? Unit::inch : Unit::millimetre;
    const Length step = inch ? Length::whole(50, Unit::thou) : Length::whole(1, Unit::millimetre);
    const Length margin = 3 * step;
    if (!hasMap(bore)) return evenLevels(bore, unit, step);

    const Travel travel = ringTravel(bore);
    const Length end = gaugeReach(bore).value_or(bore.depth->value() - margin);
    Proposal proposal(bore, unit, step);
    if (end > Length()) proposal.add(end);
    const Length top = toStep(travel.from + margin, step, true);
    proposal.add(top);
    Length above = top;
    for (const PortBand& band : bore.map.ports) {
        const Length before = toStep(band.from.value() - margin, step, false);
        proposal.add(before);
        proposal.add(toStep(band.to.value() + margin, step, false));
        if (above == top) above = before;
    }
    if (above == top) above = std::min(end, travel.to);
    proposal.add(toStep(Length::fromPicometres((top + above).picometres() / 2), step, true));
    if (travel.from > Length())
        proposal.add(toStep(Length::fromPicometres(travel.from.picometres() / 2), step, true));
    if (travel.to < bore.depth->value()) proposal.add(toStep(travel.to - margin, step, false));
    return proposal.take();
}

std::vector<Station> plannedStations(const Block& block) {
    std::vector<const Bore*> bores;
    for (const Bore& bore : block.bores)
        bores.push_back(&bore);
    std::ranges::sort(bores, {}, &Bore::number);
    std::vector<Station> stations;
    for (const Bore* bore : bores)
        for (const Level& level : bore->levels)
            for (const Axis& axis : block.axes)
                if (hasWall(*bore, level.depth.value(), axis.id))
                    stations.push_back({bore->number, level.depth.value(), axis.id});
    return stations;
}

std::vector<Station> inOrder(const Block& block, std::vector<Station> stations, Order order) {
    const auto axisRank = [&](const Station& s) {
        const auto found = std::ranges::find(block.axes, s.axis, &Axis::id);
        return static_cast<std::int64_t>(found - block.axes.begin());
    };
    using Key = std::tuple<std::int64_t, std::int64_t, std::int64_t, std::int64_t>;
    const auto keyOf = [&](const Station& s) -> Key {
        const std::int64_t depth = s.depth.picometres();
        const std::int64_t axis = axisRank(s);
        switch (order) {
        case Order::downAndUp:
            return {s.bore, axis, axis % 2 == 0 ? depth : -depth, 0};
        case Order::downEach:
            return {s.bore, axis, depth, 0};
        case Order::levelByLevel:
            return {s.bore, depth, axis, 0};
        case Order::acrossBlock:
            return {depth, axis, s.bore, 0};
        }
        return {};
    };
    std::ranges::sort(stations, {}, keyOf);
    return stations;
}

} // namespace borewright
