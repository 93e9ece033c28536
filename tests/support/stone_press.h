// SPDX-License-Identifier: GPL-3.0-or-later
// How a stone lies against a wall: a body that can go forward, turn and bend, pressed on by a
// constant force, its face an elastic bed. It settles where the energy
//     ½·Σ b·o² + ½·n·(t²/(3·loose) + c²/(5·soft)) − n·κ·a,
//     o = max(0, a + t·x + c·(3x² − 1)/2 − g)
// is least, which Newton's method finds in a few rounds as it is convex and piecewise quadratic.
// x runs from −1 at the upper end to 1 at the lower, g is the gap of each cell in µm of radius, b
// how much of that ring bears (0 = no wall), n the number of cells, κ the overlap that the force
// makes on a whole flat wall.
#pragma once

#include <array>
#include <cstddef>
#include <vector>

namespace borewright::test {

struct Holding {
    double compliance_um = 20; // κ
    double loose = 0;          // 0: cannot turn
    double soft = 0;           // 0: cannot bend
};

class StonePress {
public:
    // Settles the stone on the gaps; the last answer is where the search begins.
    // gap and bears: one for each cell of the face, lower end first.
    void settle(const Holding& holding, const std::vector<double>& gap,
                const std::vector<double>& bears);
    [[nodiscard]] const std::vector<double>& overlap() const { return m_overlap; }
    [[nodiscard]] double advance() const { return m_place[0]; }
    [[nodiscard]] double tilt() const { return m_place[1]; }

private:
    using Place = std::array<double, 3>; // a, t, c
    void shape(std::size_t cells);
    bool step(const Holding& holding, const std::vector<double>& gap,
              const std::vector<double>& bears, double share);

    Place m_place{};
    std::vector<double> m_turn, m_bow; // what t and c add at each cell
    std::vector<double> m_overlap;
};

} // namespace borewright::test
