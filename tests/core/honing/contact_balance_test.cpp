// SPDX-License-Identifier: GPL-3.0-or-later
// The balance of one position, on walls no bore ever had.
#include "core/honing/contact_balance.h"

#include "core/statistics/random.h"
#include "tests/support/printed.h"

#include <vector>

namespace borewright {
namespace {

using test::near;

struct Odd {
    std::vector<double> weight, gap, x, overlap;
    double force = 1, stiffness = -1;

    explicit Odd(Random& random) {
        const auto cells = 1 + static_cast<std::size_t>(40 * random.uniform());
        const double length = static_cast<double>(cells) + 40 * random.uniform();
        const double rough_um = std::pow(10, 4 * random.uniform() - 1);
        for (std::size_t k = 0; k < cells; ++k) {
            const double kind = random.uniform();
            weight.push_back((kind < 0.1 ? 0 : kind < 0.2 ? 1e-4 : 1) / length);
            gap.push_back(rough_um * random.normal() - 1000 * random.uniform());
            x.push_back(-1 + 2 * (static_cast<double>(k) + 0.5) / length);
        }
        overlap.resize(cells);
        force = std::pow(10, 2.7 * random.uniform()); // 1 … 500 µm
        if (random.uniform() < 0.7) stiffness = std::exp(6 - 13 * random.uniform());
    }
    bool settles(Seat& seat) {
        return settle({gap.size(), weight.data(), gap.data(), x.data()}, force, stiffness, seat,
                      overlap.data());
    }
    [[nodiscard]] double moment(bool withX) const {
        double sum = 0;
        for (std::size_t k = 0; k < gap.size(); ++k)
            sum += weight[k] * overlap[k] * (withX ? x[k] : 1);
        return sum;
    }
};

TEST(ContactBalance, IsFoundOnAnyWall) {
    Random random(1);
    int found = 0;
    for (int i = 0; i < 20000; ++i) {
        Odd odd(random);
        Seat seat;
        for (int again = 0; again < 2; ++again) {
            if (!odd.settles(seat)) break;
            ++found;
            const double room = 1e-9 * odd.force + 1e-13 * std::abs(seat.advance);
            EXPECT_TRUE(near(odd.moment(false), odd.force, room, "µm of force"));
            const double turned = odd.stiffness < 0 ? odd.moment(true) : -odd.stiffness * seat.tilt;
            EXPECT_TRUE(near(odd.moment(true), turned, room, "of moment"));
            for (double& gap : odd.gap)
                gap += 0.3 * odd.force * random.normal(); // as after a step
        }
    }
    EXPECT_GT(found, 35000);
}

TEST(ContactBalance, OneCellBearsAllOfTheForce) {
    const double weight = 0.02, gap = -40, x = 0.9;
    double overlap = 0;
    Seat seat;
    EXPECT_TRUE(settle({1, &weight, &gap, &x}, 20, -1, seat, &overlap));
    EXPECT_TRUE(near(overlap, 1000, 1e-9, "µm"));
    EXPECT_TRUE(near(seat.advance, 960, 1e-9, "µm"));
}

TEST(ContactBalance, NothingBearsWithoutWall) {
    const double weight = 0, gap = -40, x = 0;
    double overlap = 7;
    Seat seat;
    EXPECT_FALSE(settle({1, &weight, &gap, &x}, 20, 0.5, seat, &overlap));
    EXPECT_EQ(overlap, 0);
    EXPECT_FALSE(seat.known);
    EXPECT_FALSE(settle({}, 20, -1, seat, nullptr));
}

// Linear gap m·x over a stone that bears all along: the two balances give
// t·(s2 + stiffness) = m·s2 with s2 = Σ weight·x².
TEST(ContactBalance, ATaperTurnsTheStoneAsFarAsItsHolderGives) {
    std::vector<double> weight(40, 1.0 / 40), gap, x, overlap(40);
    double s2 = 0;
    for (int k = 0; k < 40; ++k) {
        x.push_back(-1 + (k + 0.5) / 20);
        gap.push_back(6 * x.back());
        s2 += x.back() * x.back() / 40;
    }
    for (const double stiffness : {0.01, 1.0, 30.0}) {
        Seat seat;
        EXPECT_TRUE(
            settle({40, weight.data(), gap.data(), x.data()}, 50, stiffness, seat, overlap.data()));
        EXPECT_TRUE(near(seat.tilt, 6 * s2 / (s2 + stiffness), 1e-10, "µm"));
        EXPECT_TRUE(near(seat.advance, 50, 1e-10, "µm"));
    }
}

} // namespace
} // namespace borewright
