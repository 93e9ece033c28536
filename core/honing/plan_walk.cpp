// SPDX-License-Identifier: GPL-3.0-or-later
// The wall along a course, with derivatives by every window on the way.
#include "core/honing/plan_course.h"

#include <algorithm>
#include <cmath>

namespace borewright {

namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::RowVectorXd;

// A shorter stroke than this nobody can drive, and it leaves the marks of the stone's ends in the
// wall; only at the stop, which is felt, a short one brings the last millimetres along. Of 40
// gentle bores that were looked at 98 % come out straight, with windows of 1 mm anywhere 92 %.
constexpr double shortestAbove_mm = 4, shortestAtStop_mm = 1;
// A stone that stands still at the stop cuts a step at its upper end that nothing takes away again:
// it is not planned, though a hold that was done is reckoned with.
constexpr bool holdsAllowed = false;

void widen(MatrixXd& matrix, Index rows, Index columns) {
    const Index before = matrix.rows() == rows ? matrix.cols() : 0;
    matrix.conservativeResize(rows, columns);
    matrix.rightCols(columns - before).setZero();
}

// Of what a window strays, what is found by measuring is put right later but for such a share.
constexpr double openOnTheWay = 0.5;

// Marks where windows meet are narrow: no later stone can follow them.
constexpr double openMarks = 0.5;

class Walk {
public:
    Walk(const PlanGround& ground, double step, bool derivatives, const ToolShift& shift)
        : m_ground(ground)
        , m_derivatives(derivatives)
        , m_lower(shift.lower_mm)
        , m_settings(ground.settings)
        , m_faces(ground.faces)
        , m_faceBy(ground.faces.size()) {
        m_state.diameter = ground.wall;
        m_strayed = Eigen::VectorXd::Zero(ground.wall.size());
        const Belief& belief = ground.belief;
        for (std::size_t s = 0; s < m_settings.size(); ++s) {
            const auto doubt = [&](ToolFigure figure) {
                const Index at = belief.layout.figure(s, figure);
                return std::sqrt(std::max(0.0, belief.covariance(at, at)));
            };
            m_settings[s].largestStep = step;
            m_settings[s].logCompliance += shift.compliance * doubt(ToolFigure::compliance);
            m_settings[s].logLooseness += shift.looseness * doubt(ToolFigure::looseness);
        }
    }

    // `open`: how much of what its windows stray stays open.
    void setUp(const SetUp& setUp, double open) {
        const std::size_t s = setUp.stone;
        m_state.face = m_faces[s];
        for (const Stroking& window : setUp.windows) {
            const Eigen::VectorXd before = m_state.diameter;
            const MatrixXd byBefore = m_by;
            stroke(s, window);
            stray(before, byBefore, open);
        }
        m_faces[s] = m_state.face;
    }
    [[nodiscard]] const Eigen::VectorXd& wall() const { return m_state.diameter; }
    [[nodiscard]] const MatrixXd& by() const { return m_by; }
    [[nodiscard]] const Eigen::VectorXd& strayed() const { return m_strayed; }
    [[nodiscard]] const MatrixXd& strayedBy() const { return m_strayedBy; }

private:
    // Its strokes are worth more or less, and its ends lie a little off.
    void stray(const Eigen::VectorXd& before, const MatrixXd& byBefore, double open) {
        const double worth = open * m_ground.learning.windowScatter;
        const double off = std::max(open, openMarks) * m_ground.learning.strokeEnds_mm;
        const Eigen::VectorXd taken = m_state.diameter - before;
        const Eigen::VectorXd slope = slopes(taken);
        m_strayed += worth * worth * taken.cwiseAbs2() + off * off * slope.cwiseAbs2();
        if (!m_derivatives) return;
        widen(m_strayedBy, m_strayed.size(), m_by.cols());
        MatrixXd takenBy = m_by;
        if (byBefore.size() > 0) takenBy.leftCols(byBefore.cols()) -= byBefore;
        m_strayedBy += (2 * worth * worth * taken).asDiagonal() * takenBy;
        m_strayedBy += (2 * off * off * slope).asDiagonal() * slopes(takenBy);
    }
    // A millimetre, down the columns.
    [[nodiscard]] MatrixXd slopes(const MatrixXd& taken) const {
        const Index n = taken.rows();
        MatrixXd slope = MatrixXd::Zero(n, taken.cols());
        if (n > 2)
            slope.middleRows(1, n - 2) = (taken.bottomRows(n - 2) - taken.topRows(n - 2)) /
                                         (2 * m_ground.bench.grid.height_mm);
        return slope;
    }

    void stroke(std::size_t s, Stroking window) {
        window.from_mm += m_lower;
        window.to_mm += m_lower;
        const BenchStone& stone = m_ground.bench.stones[s];
        if (!m_derivatives) {
            hone(m_ground.bench.grid, stone.grid, m_settings[s], m_ground.ground, window, m_state);
            return;
        }
        const Index count = m_by.cols() + windowVariables;
        Directions directions;
        widen(m_by, m_state.diameter.size(), count);
        widen(m_faceBy[s], m_state.face.size(), count);
        directions.diameter = std::move(m_by);
        directions.face = std::move(m_faceBy[s]);
        directions.from = RowVectorXd::Unit(count, count - 4);
        directions.to = RowVectorXd::Unit(count, count - 3);
        directions.strokes = RowVectorXd::Unit(count, count - 2) / m_ground.rate(s);
        directions.held = RowVectorXd::Unit(count, count - 1) / m_ground.rate(s);
        hone(m_ground.bench.grid, stone.grid, m_settings[s], m_ground.ground, window, m_state,
             &directions);
        m_by = std::move(directions.diameter);
        m_faceBy[s] = std::move(directions.face);
    }

    const PlanGround& m_ground;
    bool m_derivatives;
    double m_lower;
    std::vector<ContactSettings> m_settings;
    std::vector<Eigen::VectorXd> m_faces;
    std::vector<MatrixXd> m_faceBy;
    WallAndFace m_state;
    MatrixXd m_by;
    Eigen::VectorXd m_strayed;
    MatrixXd m_strayedBy;
};

} // namespace

CourseWalls walkCourse(const PlanGround& ground, const Course& course, double step,
                       bool derivatives, const ToolShift& shift) {
    Walk walk(ground, step, derivatives, shift);
    CourseWalls walls;
    for (const SetUp& setUp : course) {
        const bool last = &setUp == &course.back();
        walk.setUp(setUp, last ? 1.0 : openOnTheWay);
        walls.wall.push_back(walk.wall());
        if (derivatives) walls.by.push_back(walk.by());
    }
    walls.strayed = walk.strayed();
    if (derivatives) walls.strayedBy = walk.strayedBy();
    return walls;
}

WindowBounds windowBounds(const PlanGround& ground, std::size_t stone) {
    const StoneOnGrid& on = ground.bench.stones[stone].grid;
    WindowBounds bounds;
    bounds.highest_mm = std::max(0.0, on.highest_mm);
    bounds.lowest_mm = on.lowest_mm;
    // Where the stone stands out of the far end there is no stop to feel.
    const bool blind = on.lowest_mm <= ground.bench.grid.depth_mm();
    bounds.shortestAtStop_mm =
        std::min(blind ? shortestAtStop_mm : shortestAbove_mm, bounds.room_mm());
    bounds.shortestAbove_mm = std::min(shortestAbove_mm, bounds.room_mm());
    bounds.mostDose_um = 900;
    bounds.holds = holdsAllowed && blind;
    return bounds;
}

} // namespace borewright
