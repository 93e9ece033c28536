// SPDX-License-Identifier: GPL-3.0-or-later
// A bore honed stroke by stroke and position by position on a grid of half a millimetre: what the
// planner of the hone is judged by. It shares no code with what it judges. At each position the
// stone settles on the wall (stone_press.h) and both give way at once, in proportion to pressure
// and path (Preston, J. Soc. Glass Technol. 11 (1927) 214). All figures are invented.
#pragma once

#include "core/statistics/random.h"
#include "tests/support/bench_gauge.h"
#include "tests/support/hone_bench.h"
#include "tests/support/stone_press.h"

#include <memory>
#include <vector>

namespace borewright::test {

inline constexpr double benchCell_mm = 0.5;

// What a stone really is.
struct TrueStone {
    double length_mm = 0;   // of the abrasive, from the same lower end
    double rate_um = 1;     // off the diameter a stroke, under nominal pressure
    double wear = 0.03;     // of the face, as a share of the radial stock under it
    double loadingLoss = 0; // ln of the rate, lost when wholly loaded
    double loadingStrokes = 60;
    double loaded = 0; // strokes
    double drift = 0;  // ln of the rate, wandering
    double complianceFactor = 1;
    std::vector<double> face; // worn, radial µm, lower end first
};

// The hone, the hand, and the stones that all bores of a block share.
struct HoneKit {
    Holding holding;
    double pressureLaw = 1;   // removal ∝ pressure to this power
    double scatter = 0.08;    // of a window, ln
    double drift = 0;         // a set-up, ln
    double reversal_mm = 1;   // a pass is so much longer at each end, spent there
    double unsteady_mm = 0.4; // of each reversal
    double endError_mm = 0;   // of a window's ends, at most
    int countError = 0;       // strokes, at most
    double step_mm = 1;       // positions of a stroke, reckoned one after another
    double sine = 0;          // share of the speed that goes as a sine
    double edgeShare = 0;     // of 1/land − 1: how much harder lands between ports are pressed
    double fallIn_um = 0;     // how far the stone falls in where two fifths are missing
    std::vector<TrueStone> stones;
    Random chance{0};
};

struct TrueBore {
    std::vector<double> diameter; // mean of the axes, a cell of half a millimetre each
    std::vector<double> oval;     // axis A less axis B
    std::vector<double> hardness; // ln
    std::vector<double> land;     // share of the turn with wall
};

class SimulatedBench final : public HoneBench {
public:
    SimulatedBench(BoreAsStated stated, TrueBore bore, std::shared_ptr<HoneKit> kit,
                   BenchGauge gauge, std::uint64_t seed);
    // A bench like this one, its stones apart from it.
    [[nodiscard]] SimulatedBench copy() const;

    void stroke(std::size_t stone, const HoneWindow& window) override;
    void dress(std::size_t stone) override;
    void beginReading() override;
    double read(double depth_mm, int axis) override;
    [[nodiscard]] double truth(double depth_mm, int axis) const override;

    [[nodiscard]] HoneKit& kit() { return *m_kit; }
    [[nodiscard]] const HoneKit& kit() const { return *m_kit; }
    [[nodiscard]] const TrueBore& bore() const { return m_bore; }

private:
    struct Ends {
        double from_mm, to_mm;
    };
    [[nodiscard]] Ends ends(std::size_t stone, const HoneWindow& window);
    [[nodiscard]] bool atStop(std::size_t stone, double place_mm) const;
    [[nodiscard]] double counted(double strokes);
    [[nodiscard]] double within(std::size_t stone, double place_mm) const;
    void travel(TrueStone& stone, double from_mm, double to_mm, double share);
    // Stays with the lower end there for a share of a stroke.
    void stay(TrueStone& stone, double lowerEnd_mm, double share);
    void giveWay(TrueStone& stone, double share, std::size_t lowerEnd);

    TrueBore m_bore;
    std::shared_ptr<HoneKit> m_kit;
    BenchGauge m_gauge;
    Random m_readings;
    double m_warm_um = 0;
    StonePress m_press;
    std::vector<double> m_gap, m_bears; // kept for their memory
};

} // namespace borewright::test
