// SPDX-License-Identifier: GPL-3.0-or-later
// How likely a set of readings is as a bore: the yardstick of a slip's story.
//
// A bore is a Gaussian field over its stations (Rasmussen & Williams, Gaussian Processes for
// Machine Learning, 2006, ch. 2 and 5.4.2 for leaving one out):
//   x(level, axis) = size + profile(depth) + kink(level) + oval(axis) + leaning(axis, depth)
//                    + own(station) + noise
// with a profile that bends smoothly, kinks that all axes share (ridge, bell), an ovality that
// changes slowly with depth, and a little of each station's own. How much of each there is differs
// from a honed bore to a worn one, so the field is a mixture of "manners", from straight and round
// to worn by seven thou; each bore chooses its own by its readings. Half of the manners expect the
// bore to go like the others of its block: pattern, more or less of it, and a remainder.
#pragma once

#include <array>
#include <cstddef>
#include <span>
#include <utility>
#include <vector>

namespace borewright::slips {

// Where a reading was taken: level and axis by number, depth as a share of the depths surveyed.
struct Spot {
    int level = 0;
    int axis = 0;
    double depth = 0;
    friend bool operator==(const Spot&, const Spot&) = default;
};

// By axis, then level: the order that a bore's spots are kept in.
inline std::pair<int, int> placeOf(const Spot& spot) {
    return {spot.axis, spot.level};
}

// Deviations in µm that the block's other bores suggest at each spot, none or several.
using Patterns = std::vector<std::vector<double>>;

constexpr std::size_t mannerCount = 10;

// The manners at one set of spots; shared by all bores that were read at the same.
class BoreModel {
public:
    // `noise_um`, > 0: standard deviation of one reading by itself.
    BoreModel(std::vector<Spot> spots, double noise_um);
    struct Manner {
        std::vector<double> precision; // inverse of the covariance, by rows, per µm²
        double logNorm = 0;            // ½ log |precision| − n/2 log 2π
    };
    [[nodiscard]] const std::vector<Spot>& spots() const { return m_spots; }
    [[nodiscard]] std::size_t size() const { return m_spots.size(); }
    [[nodiscard]] const Manner& manner(std::size_t index) const { return m_manners[index]; }

private:
    std::vector<Spot> m_spots;
    std::array<Manner, mannerCount> m_manners;
};

// Another value for one reading.
struct Change {
    std::size_t cell = 0;
    double x_um = 0;
};

// One bore's readings seen through the model. All results are natural logarithms of densities per
// µm. Model must outlive the fit; `x_um` are deviations from about the bore's own middle.
class BoreFit {
public:
    BoreFit(const BoreModel& model, std::vector<double> x_um, Patterns patterns);

    [[nodiscard]] double value(std::size_t cell) const { return m_x[cell]; }
    // Of all readings as they stand.
    [[nodiscard]] double logEvidence() const { return m_logEvidence; }
    // Of all but one.
    [[nodiscard]] double logWithout(std::size_t cell) const;
    // More than any other value of this one reading could add to the evidence.
    [[nodiscard]] double mostGain(std::size_t cell) const;
    // With some readings changed; the second is never less, and quick.
    [[nodiscard]] double logChanged(std::span<const Change> changes) const;
    [[nodiscard]] double logChangedAtMost(std::span<const Change> changes) const;
    // With a wall that is worn or scored at this station alone, by an excess of which larger is
    // rarer: density exp(−e/s)/s for e > 0, s two thou.
    [[nodiscard]] double logScored(std::size_t cell) const;
    // What the others say of this reading: its value by them, in the likeliest manner.
    [[nodiscard]] double expected(std::size_t cell) const;
    // What the block's other bores do there; 0 where they tell nothing.
    [[nodiscard]] double pattern(std::size_t cell) const {
        return m_patterns.empty() ? 0 : m_patterns.front()[cell];
    }

private:
    struct Seen {
        const BoreModel::Manner* manner = nullptr;
        double logDensity = 0;    // of all readings, with the manner's share
        double patternFactor = 0; // precision is manner's less this times its row and column below
        std::vector<double> pulled;    // precision · x
        std::vector<double> patterned; // manner's precision · pattern
    };
    [[nodiscard]] Seen see(const BoreModel::Manner& manner,
                           const std::vector<double>* pattern_um) const;
    [[nodiscard]] double precision(const Seen& seen, std::size_t i, std::size_t j) const;
    [[nodiscard]] double logChanged(const Seen& seen, std::span<const Change> changes) const;

    std::size_t m_size;
    std::vector<double> m_x;
    Patterns m_patterns;
    std::vector<Seen> m_seen;
    double m_logEvidence = 0;
};

// log(exp a + exp b + …) without overflow; −∞ of nothing.
double logSum(std::span<const double> logs);

} // namespace borewright::slips
