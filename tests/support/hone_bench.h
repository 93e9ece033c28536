// SPDX-License-Identifier: GPL-3.0-or-later
// A bore that can be honed and measured on a bench of our own making, to judge what plans the
// honing. Depths in mm from the open end, sizes in µm of the diameter beyond the finish size: to go
// counts as minus.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace borewright::test {

// A stone as its owner states it.
struct StatedStone {
    std::string name;
    bool finish = false;  // else rough
    double length_mm = 0; // of the abrasive
    double dead_mm = 0;   // of the carrier below it
};

// One stroking: the abrasive's lower end travels between from and to.
struct HoneWindow {
    double from_mm = 0;
    double to_mm = 0;
    double strokes = 0; // down and back
    double held = 0;    // standing at `to`, counted in strokes
};

// Ports cut into the wall between two depths.
struct StatedPorts {
    double from_mm = 0, to_mm = 0;
};

// All that the user of a bore knows of it beforehand.
struct BoreAsStated {
    double depth_mm = 0;
    std::vector<StatedStone> stones;
    std::vector<double> stations; // depths where it is measured, on two axes
    std::vector<StatedPorts> ports;
    // Common practice: a third of the stone may stand out of the open end; none of the closed one.
    [[nodiscard]] double highest_mm(std::size_t stone) const {
        return stones[stone].length_mm * 2 / 3;
    }
    [[nodiscard]] double lowest_mm(std::size_t stone) const {
        return depth_mm - stones[stone].dead_mm;
    }
};

inline constexpr int benchAxes = 2;

class HoneBench {
public:
    virtual ~HoneBench() = default;

    [[nodiscard]] const BoreAsStated& stated() const { return m_stated; }

    // Strokes a window. Ends out of the stone's reach stop where the reach ends.
    virtual void stroke(std::size_t stone, const HoneWindow& window) = 0;
    // A stone made sharp and true again.
    virtual void dress(std::size_t stone) = 0;
    // Honing is over for now and the gauge is taken up: warmth and rest are drawn anew.
    virtual void beginReading() = 0;
    // What the user reads, in µm beyond the finish size.
    virtual double read(double depth_mm, int axis) = 0;

    // The truth, known to nobody in the shop.
    [[nodiscard]] virtual double truth(double depth_mm, int axis) const = 0;
    // Largest less smallest along the depths given; the worse axis.
    [[nodiscard]] double spreadOver(const std::vector<double>& depths_mm) const;
    [[nodiscard]] double spreadOverStations() const { return spreadOver(m_stated.stations); }
    // From 3 mm below the open end down to 3 mm above the closed end, but not so near what no stone
    // reaches.
    [[nodiscard]] double spreadOverAll(double aboveStop_mm = 1) const;
    // Anywhere between the two ends, on either axis.
    [[nodiscard]] double largest() const;
    // Over the stations.
    [[nodiscard]] double smallest() const;

protected:
    explicit HoneBench(BoreAsStated stated)
        : m_stated(std::move(stated)) {}
    HoneBench(const HoneBench&) = default;

private:
    BoreAsStated m_stated;
};

// Six depths spread evenly from 6 mm down to 9 mm above the closed end.
std::vector<double> usualStations(double depth_mm);

} // namespace borewright::test
