// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/honing/log.h"

#include <algorithm>
#include <cmath>

namespace borewright {
namespace {

double mm(Length length) {
    return length.in(Unit::millimetre);
}

// Before anything was measured: a rough stone takes 1 µm off the diameter a stroke, a finish stone
// 0.3, each known within a factor of three or so (common practice, no source).
constexpr double finishRate_um = 0.3;
constexpr double logRateDoubt = 1.0;

BenchStone benchStone(const Stone& stone, const StoneReach& reach, const WallGrid& grid) {
    BenchStone result;
    result.grid = stoneOnGrid(grid, mm(stone.ends.value() - stone.begins.value()),
                              mm(reach.highest), mm(reach.lowest));
    result.finish = stone.kind == StoneKind::finish;
    result.logRate = result.finish ? std::log(finishRate_um) : 0;
    result.logRateDoubt = logRateDoubt;
    if (stone.experience) {
        result.logRate = stone.experience->logRate;
        result.logRateDoubt = stone.experience->logRateDoubt;
        result.proven = stone.experience->passes > 0;
    }
    return result;
}

BenchGroup groupOf(const HoneRecord& record, const Bore& bore) {
    BenchGroup group;
    double stop = 0;
    for (const Stone& stone : record.stones)
        if (const auto reach = reachOf(stone, bore)) stop = std::max(stop, mm(reach->lowest));
    group.bench.grid = wallGridToStop(mm(bore.depth->value()), stop);
    group.bench.land = landOf(bore, group.bench.grid);
    group.landAssumed = group.bench.land.size() > 0;
    group.bores = {bore.number};
    for (std::size_t i = 0; i < record.stones.size(); ++i) {
        const auto reach = reachOf(record.stones[i], bore);
        if (!reach) {
            group.refused.push_back(reach.error().what);
            continue;
        }
        group.bench.stones.push_back(benchStone(record.stones[i], *reach, group.bench.grid));
        group.stones.push_back(i);
    }
    return group;
}

bool sameGeometry(const BenchGroup& a, const BenchGroup& b) {
    const auto sameStone = [](const BenchStone& x, const BenchStone& y) {
        return x.grid.length_mm == y.grid.length_mm && x.grid.highest_mm == y.grid.highest_mm &&
               x.grid.lowest_mm == y.grid.lowest_mm;
    };
    return a.bench.grid.cells == b.bench.grid.cells &&
           a.bench.grid.height_mm == b.bench.grid.height_mm &&
           a.bench.land.size() == b.bench.land.size() && a.bench.land == b.bench.land &&
           a.stones == b.stones && std::ranges::equal(a.bench.stones, b.bench.stones, sameStone);
}

class WorkOrder {
public:
    explicit WorkOrder(const Workbook& workbook)
        : m_workbook(workbook)
        , m_placed(workbook.hone.passes.size(), false)
        , m_cared(workbook.hone.care.size(), false) {}

    std::vector<LogEvent> work() {
        careAfter({});
        passesAfter({});
        for (std::size_t i = 0; i < m_workbook.surveys.size(); ++i) {
            m_events.push_back({LogEvent::Kind::survey, i});
            passesAfter(m_workbook.surveys[i].header.id);
        }
        for (std::size_t i = 0; i < m_placed.size(); ++i)
            place(i);
        for (std::size_t i = 0; i < m_cared.size(); ++i)
            care(i);
        return std::move(m_events);
    }

private:
    void passesAfter(const std::string& survey) {
        for (std::size_t i = 0; i < m_placed.size(); ++i)
            if (m_workbook.hone.passes[i].after == survey) place(i);
    }
    // One struck out still places the care that was logged behind it.
    void place(std::size_t i) {
        if (m_placed[i]) return;
        m_placed[i] = true;
        const Pass& pass = m_workbook.hone.passes[i];
        if (!pass.struck) m_events.push_back({LogEvent::Kind::pass, i});
        careAfter(pass.id);
    }
    void careAfter(const std::string& pass) {
        for (std::size_t i = 0; i < m_cared.size(); ++i)
            if (m_workbook.hone.care[i].afterPass == pass) care(i);
    }
    void care(std::size_t i) {
        if (m_cared[i]) return;
        m_cared[i] = true;
        if (!m_workbook.hone.care[i].struck) m_events.push_back({LogEvent::Kind::care, i});
    }

    const Workbook& m_workbook;
    std::vector<bool> m_placed;
    std::vector<bool> m_cared;
    std::vector<LogEvent> m_events;
};

} // namespace

std::vector<LogEvent> orderOfWork(const Workbook& workbook) {
    return WorkOrder(workbook).work();
}

std::optional<std::size_t> BenchGroup::placeOf(int bore) const {
    const auto found = std::ranges::find(bores, bore);
    if (found == bores.end()) return std::nullopt;
    return static_cast<std::size_t>(found - bores.begin());
}

std::optional<std::size_t> BenchGroup::stoneAt(std::size_t recorded) const {
    const auto found = std::ranges::find(stones, recorded);
    if (found == stones.end()) return std::nullopt;
    return static_cast<std::size_t>(found - stones.begin());
}

std::string cannotHone(const Bore& bore) {
    if (bore.surface == Surface::plated)
        return "its surface is plated: ordinary stones would break the plating. It is honed only "
               "as the plater says, or plated anew";
    if (!bore.depth || bore.depth->value() <= Length())
        return "its depth is not entered, so nobody can say how far a stone may go";
    return {};
}

std::vector<BenchGroup> benchGroups(const Workbook& workbook) {
    std::vector<BenchGroup> groups;
    for (const Bore& bore : workbook.block.bores) {
        if (!cannotHone(bore).empty()) continue;
        BenchGroup group = groupOf(workbook.hone, bore);
        const auto known = std::ranges::find_if(
            groups, [&](const BenchGroup& other) { return sameGeometry(other, group); });
        if (known == groups.end())
            groups.push_back(std::move(group));
        else
            known->bores.push_back(bore.number);
    }
    return groups;
}

SetUp setUpOf(const Pass& pass, const Hone& hone, std::size_t benchStone) {
    constexpr double secondsAMinute = 60;
    const bool faster = pass.speedRpm && hone.speedRpm && *hone.speedRpm > 0;
    const double share = faster ? *pass.speedRpm / *hone.speedRpm : 1;
    SetUp setUp;
    setUp.stone = benchStone;
    for (const StrokeWindow& window : pass.windows)
        setUp.windows.push_back(
            {mm(window.from.value()), mm(window.to.value()), share * strokesOf(window, hone),
             share * window.holdSeconds * hone.beatsPerMinute / secondsAMinute});
    return setUp;
}

Eigen::VectorXd landOf(const Bore& bore, const WallGrid& grid) {
    constexpr double cutByAxis = 0.2;
    constexpr double least = 0.4;
    Eigen::VectorXd land;
    for (const PortBand& band : bore.map.ports) {
        if (land.size() == 0) land = Eigen::VectorXd::Ones(static_cast<Eigen::Index>(grid.cells));
        const double left = std::max(least, 1 - cutByAxis * static_cast<double>(band.axes.size()));
        for (std::size_t cell = 0; cell < grid.cells; ++cell) {
            const double at = grid.middle_mm(cell);
            double& here = land[static_cast<Eigen::Index>(cell)];
            if (at >= mm(band.from.value()) && at <= mm(band.to.value()))
                here = std::min(here, left);
        }
    }
    return land;
}

} // namespace borewright
