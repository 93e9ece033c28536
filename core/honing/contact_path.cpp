// SPDX-License-Identifier: GPL-3.0-or-later
// Positions of a stroking by linear shares, and the coverage that follows from them.
#include "core/honing/contact_path.h"

#include "core/honing/contact.h"

#include <algorithm>
#include <cmath>

namespace borewright {
namespace {

// A hone turns round in no less; keeps the shares of a window without length.
constexpr double shortestReversal_mm = 1e-6;
constexpr double rounding = 1e-9;

// An end of the window in cells: where it is, and whether it may move to either side.
struct End {
    double at = 0;
    bool moves = true; // not beyond the reach
    bool up = true, down = true;
};

End endOf(double wanted_mm, const WallGrid& grid, const StoneOnGrid& stone) {
    const double at_mm = std::clamp(wanted_mm, stone.highest_mm, stone.lowest_mm);
    const double room = rounding * grid.height_mm;
    return {at_mm / grid.height_mm, at_mm == wanted_mm, at_mm > stone.highest_mm + room,
            at_mm < stone.lowest_mm - room};
}

// The hat functions' values and slopes at one end.
struct Shares {
    long below = 0;
    double upper = 0, lower = 0;            // of positions below and below + 1
    double slopeBefore = 0, slopeUpper = 0; // of positions below − 1 and below
    double slopeLower = 0;                  // of position below + 1
};

Shares sharesOf(const End& end) {
    Shares s;
    const double nearest = std::round(end.at);
    const bool onEdge = std::abs(end.at - nearest) < rounding;
    s.below = static_cast<long>(onEdge ? nearest : std::floor(end.at));
    s.lower = onEdge ? 0 : end.at - static_cast<double>(s.below);
    s.upper = 1 - s.lower;
    if (!end.moves) return s;
    const double up = onEdge && end.up ? (end.down ? 0.5 : 1) : 0;
    s.slopeBefore = -up;
    s.slopeLower = 1 - up;
    s.slopeUpper = 2 * up - 1;
    return s;
}

class PathMaker {
public:
    PathMaker(const WallGrid& grid, const StoneOnGrid& stone, double reversal_mm,
              const Stroking& stroking)
        : height_(grid.height_mm)
        , from_(endOf(stroking.from_mm, grid, stone))
        , to_(endOf(std::max(stroking.from_mm, stroking.to_mm), grid, stone))
        , atFrom_(sharesOf(from_))
        , atTo_(sharesOf(to_))
        , halfReversal_(std::max(reversal_mm, shortestReversal_mm) / height_ / 2)
        , strokes_(std::max(0.0, stroking.strokes))
        , held_(std::max(0.0, stroking.held)) {
        path_.first = atFrom_.below - 1;
        const auto count = static_cast<std::size_t>(atTo_.below + 2 - path_.first);
        for (auto* values :
             {&path_.strokes, &path_.byFrom, &path_.byTo, &path_.byStrokes, &path_.byHeld})
            values->assign(count, 0);
    }

    Path make() {
        travel();
        addHats(path_.byStrokes, atFrom_, halfReversal_);
        addHats(path_.byStrokes, atTo_, halfReversal_);
        addHats(path_.byHeld, atTo_, 1);
        const double length = to_.at - from_.at + 2 * halfReversal_;
        for (double& share : path_.byStrokes)
            share /= length;
        derive(path_.byFrom, atFrom_, from_.moves ? -1 : 0, 0, length);
        derive(path_.byTo, atTo_, to_.moves ? 1 : 0, held_, length);
        for (std::size_t p = 0; p < path_.count(); ++p)
            path_.strokes[p] = strokes_ * path_.byStrokes[p] + held_ * path_.byHeld[p];
        return std::move(path_);
    }

private:
    [[nodiscard]] std::size_t index(long position) const {
        return static_cast<std::size_t>(position - path_.first);
    }
    void addHats(std::vector<double>& to, const Shares& s, double times) const {
        to[index(s.below)] += times * s.upper;
        to[index(s.below + 1)] += times * s.lower;
    }
    void addSlopes(std::vector<double>& to, const Shares& s, double times) const {
        to[index(s.below - 1)] += times * s.slopeBefore;
        to[index(s.below)] += times * s.slopeUpper;
        to[index(s.below + 1)] += times * s.slopeLower;
    }
    // ∫ of the hats between the ends, cell by cell, in cells.
    void travel() {
        for (long cell = atFrom_.below; cell <= atTo_.below; ++cell) {
            const double low = std::max(from_.at, static_cast<double>(cell));
            const double high = std::min(to_.at, static_cast<double>(cell + 1));
            if (high <= low) continue;
            const double lower = (low + high) / 2 - static_cast<double>(cell);
            path_.byStrokes[index(cell)] += (high - low) * (1 - lower);
            path_.byStrokes[index(cell + 1)] += (high - low) * lower;
        }
    }
    // d/d(end) of strokes·(∫hats + reversal·hats at the ends)/length + held·hats at `to`, where the
    // end's moving out lengthens the travel by `sign`.
    void derive(std::vector<double>& by, const Shares& at, int sign, double held,
                double length) const {
        if (sign == 0) return;
        addHats(by, at, sign);
        addSlopes(by, at, halfReversal_);
        for (std::size_t p = 0; p < by.size(); ++p)
            by[p] = strokes_ * (by[p] - sign * path_.byStrokes[p]) / length;
        addSlopes(by, at, held);
        for (double& value : by)
            value /= height_;
    }

    double height_;
    End from_, to_;
    Shares atFrom_, atTo_;
    double halfReversal_;
    double strokes_, held_;
    Path path_;
};

} // namespace

Path pathOf(const WallGrid& grid, const StoneOnGrid& stone, double reversal_mm,
            const Stroking& stroking) {
    return PathMaker(grid, stone, reversal_mm, stroking).make();
}

Eigen::VectorXd coverage(const WallGrid& grid, const StoneOnGrid& stone, double reversal_mm,
                         const Stroking& stroking) {
    const Path path = pathOf(grid, stone, reversal_mm, stroking);
    Eigen::VectorXd covered = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(grid.cells));
    double all = 0;
    for (const double strokes : path.strokes)
        all += strokes;
    if (!(all > 0)) return covered;
    for (std::size_t p = 0; p < path.count(); ++p) {
        const long lowerEnd = path.first + static_cast<long>(p);
        for (std::size_t j = 0; j < stone.cells; ++j) {
            const long cell = lowerEnd - 1 - static_cast<long>(j);
            if (cell < 0 || cell >= covered.size()) continue;
            const double share = j + 1 == stone.cells ? stone.topShare : 1;
            covered[cell] += share * path.strokes[p] / all;
        }
    }
    return covered;
}

} // namespace borewright
