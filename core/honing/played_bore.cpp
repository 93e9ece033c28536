// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/honing/played_bore.h"

#include "core/gauging/gauging.h"
#include "core/honing/contact.h"
#include "core/honing/log.h"
#include "core/statistics/random.h"

#include <algorithm>
#include <cmath>

namespace borewright {
namespace {

constexpr double finest_mm = 1;
constexpr double noise_um = 1.3;
constexpr double windowScatter = 0.08;
constexpr double ownWaves_um = 0.8;
constexpr double landsGiveWay = 0.15; // so much faster between ports, ln; invented
constexpr int secondsApart = 7;
constexpr double secondsAMinute = 60;

// FNV-1a, so that a seed is the same everywhere.
std::uint64_t seedOf(const std::string& text) {
    std::uint64_t hash = 0xcbf29ce484222325U;
    for (const char c : text)
        hash = (hash ^ static_cast<unsigned char>(c)) * 0x100000001b3U;
    return hash;
}

// A line through points that rise in depth, straight beyond them.
struct Knots {
    std::vector<double> at, value;
    [[nodiscard]] double operator()(double x) const {
        if (at.size() == 1) return value.front();
        const auto above = std::upper_bound(at.begin() + 1, at.end() - 1, x);
        const auto i = static_cast<std::size_t>(above - at.begin());
        const double share = (x - at[i - 1]) / (at[i] - at[i - 1]);
        return value[i - 1] + share * (value[i] - value[i - 1]);
    }
};

std::size_t placeOf(const Workbook& workbook, const std::string& survey) {
    const auto found = std::ranges::find(workbook.surveys, survey,
                                         [](const Survey& each) { return each.header.id; });
    return static_cast<std::size_t>(found - workbook.surveys.begin());
}

// The last sizes read in a bore before its first pass; empty where there are none.
std::vector<Gauged> readBefore(const Workbook& workbook, int bore) {
    std::size_t end = workbook.surveys.size();
    for (const Pass& pass : workbook.hone.passes)
        if (pass.bore == bore && !pass.struck)
            end = std::min(end, pass.after.empty() ? 0 : placeOf(workbook, pass.after) + 1);
    while (end-- > 0) {
        std::vector<Gauged> found = gauge(workbook, workbook.surveys[end]);
        std::erase_if(found,
                      [&](const Gauged& one) { return one.station.bore != bore || !one.diameter; });
        if (!found.empty()) return found;
    }
    return {};
}

Knots knotsOf(const std::map<Length, std::pair<double, int>>& sums) {
    Knots knots;
    for (const auto& [depth, sum] : sums) {
        knots.at.push_back(depth.in(Unit::millimetre));
        knots.value.push_back(sum.first / sum.second);
    }
    return knots;
}

ContactSettings settingsOf(const Stone& stone) {
    Random chance(seedOf(stone.id + stone.name));
    const double rate_um = stone.kind == StoneKind::rough ? 1.5 : 0.45; // a stroke; invented
    ContactSettings settings;
    settings.logRate = std::log(rate_um) + 0.3 * chance.normal();
    settings.logCompliance = std::log(18.0);
    settings.logWear = -3.5 + 0.3 * chance.normal();
    settings.logLooseness = -2.3;
    return settings;
}

// The wall with its ports.
WallGround groundOf(const Bore& bore, const WallGrid& grid) {
    WallGround ground{{}, landOf(bore, grid)};
    if (ground.land.size() > 0)
        ground.hardness = -landsGiveWay * (ground.land.array() < 1).cast<double>();
    return ground;
}

// A face on another number of cells.
Eigen::VectorXd resampled(const Eigen::VectorXd& face, Eigen::Index cells) {
    Eigen::VectorXd made(cells);
    for (Eigen::Index i = 0; i < cells; ++i)
        made[i] = face[std::min(face.size() - 1, i * face.size() / cells)];
    return made;
}

} // namespace

// All bores of a block with the stones they share, pass by pass.
class PlayedBlock {
public:
    explicit PlayedBlock(const Workbook& workbook)
        : m_workbook(workbook) {}

    Result<void> play() {
        care({});
        for (const Pass& pass : m_workbook.hone.passes) {
            if (auto done = stroke(pass); !done) return done;
            care(pass.id);
        }
        return {};
    }

    Result<PlayedBore*> bore(int number) {
        if (const auto known = m_bores.find(number); known != m_bores.end()) return &known->second;
        const Bore* bore = findBore(m_workbook.block, number);
        const std::string where = "bore " + std::to_string(number);
        if (bore == nullptr || !bore->depth || bore->depth->value() <= Length())
            return refuse(where, "without its depth it cannot be played");
        const auto read = readBefore(m_workbook, number);
        if (read.empty()) return refuse(where, "nothing was read there yet, so nothing is played");
        return &m_bores.emplace(number, made(*bore, read)).first->second;
    }

private:
    static PlayedBore made(const Bore& bore, const std::vector<Gauged>& read) {
        PlayedBore played;
        played.m_from = *read.front().diameter;
        std::map<Length, std::pair<double, int>> all;
        std::map<std::string, std::map<Length, std::pair<double, int>>> byAxis;
        for (const Gauged& one : read) {
            const double size_um = (*one.diameter - played.m_from).in(Unit::micrometre);
            for (auto* sums : {&all, &byAxis[one.station.axis]}) {
                auto& [sum, count] = (*sums)[one.station.depth];
                sum += size_um;
                ++count;
            }
        }
        const Knots mean = knotsOf(all);
        const WallGrid grid = wallGrid(bore.depth->value().in(Unit::millimetre), finest_mm);
        played.m_cell_mm = grid.height_mm;
        Random chance(seedOf("bore " + std::to_string(bore.number)));
        const double turn = 6.28 * chance.uniform(), wave_mm = 22 + 10 * chance.uniform();
        for (std::size_t i = 0; i < grid.cells; ++i)
            played.m_wall_um.push_back(mean(grid.middle_mm(i)) +
                                       ownWaves_um *
                                           std::sin(turn + 6.28 * grid.middle_mm(i) / wave_mm));
        for (const auto& [axis, sums] : byAxis) {
            const Knots knots = knotsOf(sums);
            auto& differs = played.m_axes[axis];
            for (std::size_t i = 0; i < grid.cells; ++i)
                differs.push_back(knots(grid.middle_mm(i)) - mean(grid.middle_mm(i)));
        }
        return played;
    }

    Result<void> stroke(const Pass& pass) {
        if (pass.struck) return {};
        const Stone* stone = findStone(m_workbook.hone, pass.stone);
        const Bore* map = findBore(m_workbook.block, pass.bore);
        if (stone == nullptr || map == nullptr) return refuse("pass " + pass.id, "has no stone");
        const auto played = bore(pass.bore);
        if (!played) return tl::unexpected(played.error());
        const auto reach = reachOf(*stone, *map);
        if (!reach) return tl::unexpected(reach.error());
        const WallGrid grid{(*played)->m_cell_mm, (*played)->m_wall_um.size()};
        const StoneOnGrid shape =
            stoneOnGrid(grid, (stone->ends.value() - stone->begins.value()).in(Unit::millimetre),
                        reach->highest.in(Unit::millimetre), reach->lowest.in(Unit::millimetre));
        WallAndFace state = stateOf(**played, pass.stone, shape);
        strokeWindows(pass, *stone, groundOf(*map, grid), grid, shape, state);
        (*played)->m_wall_um.assign(state.diameter.begin(), state.diameter.end());
        m_faces[pass.stone] = state.face;
        return {};
    }

    WallAndFace stateOf(const PlayedBore& bore, const std::string& stone,
                        const StoneOnGrid& shape) {
        const auto cells = static_cast<Eigen::Index>(shape.cells);
        WallAndFace state;
        state.diameter = Eigen::Map<const Eigen::VectorXd>(
            bore.m_wall_um.data(), static_cast<Eigen::Index>(bore.m_wall_um.size()));
        Eigen::VectorXd& face = m_faces[stone];
        if (face.size() == 0) face = Eigen::VectorXd::Zero(cells);
        state.face = face.size() == cells ? face : resampled(face, cells);
        return state;
    }

    void strokeWindows(const Pass& pass, const Stone& stone, const WallGround& ground,
                       const WallGrid& grid, const StoneOnGrid& shape, WallAndFace& state) const {
        Random chance(seedOf(pass.id + " in " + std::to_string(pass.bore)));
        const Hone& how = m_workbook.hone.hone;
        for (const StrokeWindow& window : pass.windows) {
            const double worth = std::exp(windowScatter * chance.normal());
            const double held = window.holdSeconds * how.beatsPerMinute / secondsAMinute;
            hone(grid, shape, settingsOf(stone), ground,
                 {window.from.value().in(Unit::millimetre), window.to.value().in(Unit::millimetre),
                  worth * strokesOf(window, how), worth * held},
                 state);
        }
    }

    void care(const std::string& afterPass) {
        for (const StoneCare& care : m_workbook.hone.care) {
            if (care.afterPass != afterPass || care.struck) continue;
            Eigen::VectorXd& face = m_faces[care.stone];
            if (care.kind == StoneCare::Kind::turnedEndForEnd) face.reverseInPlace();
            if (care.kind == StoneCare::Kind::dressed) face.setZero();
        }
    }

    const Workbook& m_workbook;
    std::map<int, PlayedBore> m_bores;
    std::map<std::string, Eigen::VectorXd> m_faces; // by stone
};

Result<PlayedBore> PlayedBore::replay(const Workbook& workbook, int bore) {
    PlayedBlock block(workbook);
    if (auto done = block.play(); !done) return tl::unexpected(done.error());
    auto played = block.bore(bore);
    if (!played) return tl::unexpected(played.error());
    return **played;
}

Length PlayedBore::sizeAt(Length depth, const std::string& axis) const {
    const double place = depth.in(Unit::millimetre) / m_cell_mm;
    const auto cell =
        std::min(static_cast<std::size_t>(std::max(place, 0.0)), m_wall_um.size() - 1);
    const auto differs = m_axes.find(axis);
    const double size_um = m_wall_um[cell] + (differs == m_axes.end() ? 0 : differs->second[cell]);
    return m_from + Length::nearest(size_um, Unit::micrometre);
}

namespace {

// The dial's nearest division, or the size to a division where sizes are typed.
TypedLength shownAs(Length size, const GaugeSetting& gauge) {
    const Length division = gauge.dial.graduation.value();
    const Length set = gauge.setSize ? gauge.setSize->value() : Length();
    Length shown = gauge.entry == Entry::diameter ? size : size - set;
    if (gauge.entry == Entry::deviation && gauge.dial.larger == Dial::Larger::minus) shown = -shown;
    const double steps = std::round(static_cast<double>(shown.picometres()) /
                                    static_cast<double>(division.picometres()));
    const Unit unit = gauge.entry == Entry::diameter && gauge.setSize
                          ? gauge.setSize->unit()
                          : gauge.dial.graduation.unit();
    return typedFrom(static_cast<std::int64_t>(steps) * division, unit);
}

} // namespace

Result<std::vector<Reading>> playedReadings(const Workbook& workbook, const SurveyHeader& header,
                                            const std::vector<Station>& stations) {
    PlayedBlock block(workbook);
    if (auto done = block.play(); !done) return tl::unexpected(done.error());
    std::vector<Reading> readings;
    Random chance(seedOf(header.id + " of " + std::to_string(workbook.hone.passes.size())));
    for (const Station& station : stations) {
        const auto bore = block.bore(station.bore);
        if (!bore) return tl::unexpected(bore.error());
        const Length size = (*bore)->sizeAt(station.depth, station.axis) +
                            Length::nearest(noise_um * chance.normal(), Unit::micrometre);
        Reading reading;
        reading.station = station;
        reading.typed = shownAs(size, header.gauge);
        reading.time = header.time;
        reading.time.secondsSinceEpoch +=
            secondsApart * static_cast<std::int64_t>(readings.size() + 1);
        readings.push_back(std::move(reading));
    }
    return readings;
}

} // namespace borewright
