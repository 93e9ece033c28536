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
constexpr double tooMuchLeft = 0.6;
constexpr double strokesCost = 0.0005;
constexpr double shortCost = 0.002;
constexpr double standingCost = 0.05;
// What a set-up leaves out of line, the next ones put right but for such a share of it.
constexpr double notPutRight = 0.05;
// The same of what stands out within a few millimetres: a stone cannot follow that.
constexpr double marksLeft = 0.1;
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
        offAtStations();
        for (std::size_t k = 0; k < m_course.size(); ++k)
            passed(k);
        for (std::size_t k = 0; k + 1 < m_course.size(); ++k)
            outOfLine(k), marked(k);
        foundTooMuch();
        strays();
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
            const double off = scale * (m_end.wall[i] - m_ground.level_um);
            m_end.offAim_um2 += off * off;
            m_rows.add(off);
            if (m_jacobian) m_rows.by(scale, m_walls->by.back().row(i));
        }
    }

    void offAtStations() {
        const double scale = std::sqrt(m_ground.weightOfStation());
        for (const PlanStation& station : m_ground.stations) {
            m_rows.add(scale * (station.at.of(m_end.wall) - m_ground.level_um));
            if (!m_jacobian) continue;
            const MatrixXd& by = m_walls->by.back();
            const auto lower = static_cast<Index>(station.at.lower);
            m_rows.by(scale * (1 - station.at.share), by.row(lower));
            if (station.at.share > 0) m_rows.by(scale * station.at.share, by.row(lower + 1));
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
        const VectorXd& after = m_walls->wall[k];
        const VectorXd& before = k > 0 ? m_walls->wall[k - 1] : m_ground.wall;
        const double scale = forbidding / std::sqrt(static_cast<double>(after.size()));
        for (Index i = 0; i < after.size(); ++i) {
            const double limit =
                std::max(cap - m_ground.oval[i] - sigmasBelow * m_ground.doubt[i], before[i]);
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
            const double left = m_ground.inside[static_cast<std::size_t>(i)]
                                    ? std::max(0.0, m_ground.mostLeft() - found[i])
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

    void strays() {
        for (Index i = 0; i < m_end.wall.size(); ++i) {
            const double variance = m_walls->strayed[i] + 1e-6;
            const double scale = std::sqrt(m_ground.weight[i]);
            m_rows.add(scale * std::sqrt(variance));
            if (m_jacobian) m_rows.by(scale / (2 * std::sqrt(variance)), m_walls->strayedBy.row(i));
        }
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
                const double standing = std::sqrt(standingCost * (held + 0.1));
                m_rows.add(standing);
                m_rows.by(variable + 3, standingCost / (2 * standing));
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

CourseEnd endOf(const PlanGround& ground, const Course& course, double step, bool jacobian,
                const std::vector<ToolShift>& shifts) {
    Index windows = 0;
    for (const SetUp& setUp : course)
        windows += static_cast<Index>(setUp.windows.size());
    const Index cells = ground.wall.size();
    const auto blocks = static_cast<Index>(3 + 3 * course.size() + shifts.size());
    const CourseWalls walls = walkCourse(ground, course, step, jacobian);
    const auto stations = static_cast<Index>(ground.stations.size());
    Squares squares(ground, course, jacobian, blocks * cells + stations + 3 * windows,
                    windowVariables * windows);
    squares.of(walls);
    for (const ToolShift& shift : shifts)
        squares.otherTools(walkCourse(ground, course, step, jacobian, shift),
                           leftOfDoubt(course) / std::sqrt(static_cast<double>(shifts.size())));
    return squares.end();
}

} // namespace borewright
