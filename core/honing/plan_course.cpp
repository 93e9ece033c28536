// SPDX-License-Identifier: GPL-3.0-or-later
// How good the end of a course is, as a sum of squares with derivatives.
#include "core/honing/plan_course.h"

#include <algorithm>
#include <cmath>

namespace borewright {

namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::RowVectorXd;
using Eigen::VectorXd;

// Weights of what is not the wall's own distance from the aim, trials on simulated benches.
constexpr double forbidding = 6; // a micrometre where none may be
constexpr double highHurts_um = 2;
constexpr double lowHurts_um = 4;
constexpr double leftShare = 1.4;
constexpr double tooMuchLeft = 0.6;   // a micrometre that the finish stone is slow to take
constexpr double strokesCost = 0.002; // µm² a micrometre of dose
constexpr double shortCost = 0.02;    // µm² a micrometre of dose in a window of no length
// What a set-up leaves out of line, the next ones put right but for such a share of it.
constexpr double notPutRight = 0.1;
// How much more or less a window may take than meant, and what of that, and of where its ends lay,
// later set-ups will not put right: stations see the one, but hardly the other.
constexpr double doseDoubt = 0.1;
constexpr double doseUnseen = 0.35;
constexpr double endsUnseen = 0.7;
// How far below its cap a wall is kept, in standard doubts of now: less than the step's own rule
// asks, as measuring on the way takes off some.
constexpr double roughSigmas = 0.8;
constexpr double finishSigmas = 1.6;
// As much of what stands out within a few millimetres: a stone cannot follow that.
constexpr double marksLeft = 0;
constexpr double marksOver_mm = 6;

// Residuals and their derivatives, row by row.
class Rows {
public:
    Rows(Index most, Index variables, bool jacobian)
        : m_values(VectorXd::Zero(most))
        , m_jacobian(jacobian ? MatrixXd::Zero(most, variables) : MatrixXd()) {}

    void add(double value) { m_values[m_next++] = value; }
    // After add(): its derivatives by the first variables.
    template<typename Row>
    void by(double scale, const Row& row) {
        if (m_jacobian.size() > 0) m_jacobian.row(m_next - 1).head(row.size()) += scale * row;
    }
    void by(Index variable, double slope) {
        if (m_jacobian.size() > 0) m_jacobian(m_next - 1, variable) += slope;
    }
    void give(CourseEnd& end) {
        end.residuals = m_values.head(m_next);
        if (m_jacobian.size() > 0) end.jacobian = m_jacobian.topRows(m_next);
    }

private:
    VectorXd m_values;
    MatrixXd m_jacobian;
    Index m_next = 0;
};

// How a cell's distance from the aim counts: what stands out counts more than its square, and on
// the large side most, as it stops all others short of the aim.
struct Felt {
    double value = 0;
    double slope = 1;
};
Felt feltOf(double off) {
    const double scale = off > 0 ? highHurts_um : lowHurts_um;
    const double ratio = std::fabs(off) / scale;
    constexpr double most = 2.5; // beyond it goes on straight
    const auto root = [](double r) { return std::sqrt(1 + r * r); };
    const auto slope = [&](double r) { return (1 + 2 * r * r) / root(r); };
    if (ratio <= most) return {off * root(ratio), slope(ratio)};
    const double value = scale * (most * root(most) + slope(most) * (ratio - most));
    return {off > 0 ? value : -value, slope(most)};
}

class Squares {
public:
    Squares(const PlanGround& ground, const Course& course, bool jacobian, Index rows,
            Index variables)
        : m_ground(ground)
        , m_course(course)
        , m_rows(rows, variables, jacobian)
        , m_jacobian(jacobian) {}

    CourseEnd of(const CourseWalls& walls) {
        m_walls = &walls;
        m_end.wall = walls.wall.back();
        offAim();
        for (std::size_t k = 0; k < m_course.size(); ++k)
            passed(k);
        for (std::size_t k = 0; k + 1 < m_course.size(); ++k)
            outOfLine(k), marked(k);
        straying();
        foundTooMuch();
        forWindows();
        return m_end;
    }
    void otherTools(const CourseWalls& walls, double share) {
        const std::size_t last = m_course.size() - 1;
        for (Index i = 0; i < m_end.wall.size(); ++i) {
            const double scale = share * std::sqrt(m_ground.weight[i]);
            const double off = scale * (walls.wall[last][i] - m_end.wall[i]);
            m_rows.add(off);
            m_end.unsure_um2 += off * off;
            if (!m_jacobian) continue;
            m_rows.by(scale, walls.by[last].row(i));
            m_rows.by(-scale, m_walls->by[last].row(i));
        }
    }
    CourseEnd end() {
        m_rows.give(m_end);
        return std::move(m_end);
    }

private:
    void offAim() {
        for (Index i = 0; i < m_end.wall.size(); ++i) {
            const double scale = std::sqrt(m_ground.weight[i]);
            const double off = m_end.wall[i] - m_ground.level_um;
            const Felt felt = feltOf(off);
            m_end.offAim_um2 += scale * scale * off * off;
            m_rows.add(scale * felt.value);
            if (m_jacobian) m_rows.by(scale * felt.slope, m_walls->by.back().row(i));
        }
    }

    void outOfLine(std::size_t k) {
        const VectorXd& wall = m_walls->wall[k];
        const double mean = m_ground.weight.dot(wall);
        RowVectorXd meanBy;
        if (m_jacobian) meanBy = m_ground.weight.transpose() * m_walls->by[k];
        for (Index i = 0; i < wall.size(); ++i) {
            const double scale = notPutRight * std::sqrt(m_ground.weight[i]);
            m_rows.add(scale * (wall[i] - mean));
            if (!m_jacobian) continue;
            m_rows.by(scale, m_walls->by[k].row(i));
            m_rows.by(-scale, meanBy);
        }
    }

    // What the end is off by, in shape, where a window took more or less than meant or lay
    // elsewhere: a residual each, that grows with the window's dose.
    void straying() {
        const MatrixXd& by = m_walls->by.back();
        const double endsDoubt = m_ground.learning.strokeEnds_mm;
        Index variable = 0;
        for (std::size_t k = 0; k < m_course.size(); ++k) {
            const bool last = k + 1 == m_course.size();
            const double rate = m_ground.rate(m_course[k].stone);
            for (const Stroking& window : m_course[k].windows) {
                const double dose = window.strokes * rate, held = window.held * rate;
                const double all = std::max(0.1, dose + held);
                const double unseen = last ? 1 : endsUnseen, seen = last ? 1 : doseUnseen;
                for (const Index end : {variable, variable + 1}) {
                    const double off = unseen * endsDoubt * unevenness(by.col(end));
                    stray(off);
                    m_rows.by(variable + 2, off / all);
                    m_rows.by(variable + 3, off / all);
                }
                const VectorXd more = by.col(variable + 2) * dose + by.col(variable + 3) * held;
                const double off = seen * doseDoubt * unevenness(more);
                stray(off);
                m_rows.by(variable + 2, off / all);
                m_rows.by(variable + 3, off / all);
                variable += windowVariables;
            }
        }
    }
    void stray(double off) {
        m_rows.add(off);
        m_end.unsure_um2 += off * off;
    }
    // Root mean square from its own mean.
    template<typename Column>
    double unevenness(const Column& column) const {
        const double mean = m_ground.weight.dot(column);
        const double square = m_ground.weight.dot(column.cwiseAbs2());
        return std::sqrt(std::max(0.0, square - mean * mean));
    }

    // How far a depth stands out from the mean of those some millimetres on either side.
    void marked(std::size_t k) {
        const VectorXd& wall = m_walls->wall[k];
        const auto apart = static_cast<Index>(
            std::max(1.0, std::round(marksOver_mm / m_ground.bench.grid.height_mm)));
        for (Index i = apart; i + apart < wall.size(); ++i) {
            if (!m_ground.reached[static_cast<std::size_t>(i - apart)] ||
                !m_ground.inside[static_cast<std::size_t>(i + apart)])
                continue;
            const double scale = marksLeft * std::sqrt(m_ground.weight[i]);
            m_rows.add(scale * (wall[i] - (wall[i - apart] + wall[i + apart]) / 2));
            if (!m_jacobian) continue;
            const MatrixXd& by = m_walls->by[k];
            m_rows.by(scale, by.row(i));
            m_rows.by(-scale / 2, by.row(i - apart));
            m_rows.by(-scale / 2, by.row(i + apart));
        }
    }

    // No set-up may take a cell past its stone's cap, or further past it than it was.
    void passed(std::size_t k) {
        const double cap = m_ground.capOf(m_course[k].stone);
        const double sigmas = cap < m_ground.aim.cap_um ? roughSigmas : finishSigmas;
        const VectorXd& after = m_walls->wall[k];
        const VectorXd& before = k > 0 ? m_walls->wall[k - 1] : m_ground.wall;
        const double scale = forbidding / std::sqrt(static_cast<double>(after.size()));
        for (Index i = 0; i < after.size(); ++i) {
            const double limit =
                std::max(cap - m_ground.oval[i] - sigmas * m_ground.doubt[i], before[i]);
            const double over = std::max(0.0, after[i] - limit);
            forbid(scale * over);
            if (!m_jacobian || over <= 0) continue;
            m_rows.by(scale, m_walls->by[k].row(i));
            if (limit == before[i] && k > 0) m_rows.by(-scale, m_walls->by[k - 1].row(i));
        }
    }

    // The first finish stone after rough ones, or where rough ones would be there.
    void foundTooMuch() {
        bool roughThere = false;
        for (std::size_t s = 0; s < m_ground.may.size(); ++s)
            roughThere = roughThere || (m_ground.may[s] && m_ground.rough(s));
        if (!roughThere || !m_ground.finishes) return;
        std::size_t first = 0;
        while (first < m_course.size() && m_ground.rough(m_course[first].stone))
            ++first;
        // Where the course ends rough, the same is asked at its end.
        const VectorXd& found = first > 0 ? m_walls->wall[first - 1] : m_ground.wall;
        const double scale = tooMuchLeft / std::sqrt(static_cast<double>(found.size()));
        for (Index i = 0; i < found.size(); ++i) {
            const double left =
                m_ground.inside[static_cast<std::size_t>(i)]
                    ? std::max(0.0, -leftShare * m_ground.aim.finishStock_um - found[i])
                    : 0.0;
            forbid(scale * left);
            if (m_jacobian && left > 0 && first > 0)
                m_rows.by(-scale, m_walls->by[first - 1].row(i));
        }
    }

    void forbid(double residual) {
        m_rows.add(residual);
        m_end.forbidden_um2 += residual * residual;
    }

    void forWindows() {
        Index variable = 0;
        for (const SetUp& setUp : m_course) {
            const double room = std::max(1.0, windowBounds(m_ground, setUp.stone).room_mm());
            const double rate = m_ground.rate(setUp.stone);
            for (const Stroking& window : setUp.windows) {
                const double dose = window.strokes * rate, held = window.held * rate;
                const double cost = std::sqrt(strokesCost * (dose + held + 1));
                m_rows.add(cost);
                m_rows.by(variable + 2, strokesCost / (2 * cost));
                m_rows.by(variable + 3, strokesCost / (2 * cost));
                const double missing = 1 - (window.to_mm - window.from_mm) / room;
                const double dear = std::sqrt(shortCost * (dose + 0.1));
                m_rows.add(dear * missing);
                m_rows.by(variable, dear / room);
                m_rows.by(variable + 1, -dear / room);
                m_rows.by(variable + 2, missing * shortCost / (2 * dear));
                const double standing = std::sqrt(shortCost * (held + 0.1));
                m_rows.add(standing);
                m_rows.by(variable + 3, shortCost / (2 * standing));
                variable += windowVariables;
            }
        }
    }

    const PlanGround& m_ground;
    const Course& m_course;
    const CourseWalls* m_walls = nullptr;
    Rows m_rows;
    bool m_jacobian;
    CourseEnd m_end;
};

// What of the doubt about the tools is left when a course ends: measuring on the way settles part.
double leftOfDoubt(const Course& course) {
    return course.size() > 1 ? 0.6 : 1.0;
}

} // namespace

double feltSquare(const PlanGround& ground, const VectorXd& wall) {
    double square = 0;
    for (Index i = 0; i < wall.size(); ++i) {
        const double felt = feltOf(wall[i] - ground.level_um).value;
        square += ground.weight[i] * felt * felt;
    }
    return square;
}

CourseEnd endOf(const PlanGround& ground, const Course& course, double step, bool jacobian,
                const std::vector<ToolShift>& shifts) {
    Index windows = 0;
    for (const SetUp& setUp : course)
        windows += static_cast<Index>(setUp.windows.size());
    const Index cells = ground.wall.size();
    const auto blocks = static_cast<Index>(3 + 3 * course.size() + shifts.size());
    const CourseWalls walls = walkCourse(ground, course, step, true);
    Squares squares(ground, course, jacobian, blocks * cells + 6 * windows,
                    windowVariables * windows);
    squares.of(walls);
    for (const ToolShift& shift : shifts)
        squares.otherTools(walkCourse(ground, course, step, jacobian, shift),
                           leftOfDoubt(course) / std::sqrt(static_cast<double>(shifts.size())));
    return squares.end();
}

} // namespace borewright
