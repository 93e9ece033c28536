// SPDX-License-Identifier: GPL-3.0-or-later
// Stones that are longer or shorter than stated: found where they are, left alone where they are
// not. Bores honed by the contact model itself, with readings of 1 µm and windows that scatter.
#include "core/honing/learning.h"
#include "tests/core/honing/learning_bore.h"

#include <gtest/gtest.h>

namespace borewright::test {
namespace {

constexpr std::size_t fullStone = 0, shortStone = 1;

Bench benchOf(double full_mm, double short_mm) {
    Bench bench;
    bench.grid = wallGrid(100, 1);
    for (const double length : {full_mm, short_mm}) {
        borewright::BenchStone stone;
        // How far a stone may stand out is the user's, so it goes by what is stated.
        stone.grid = stoneOnGrid(bench.grid, length, length < 50 ? 17 : 50, 98);
        stone.logRate = std::log(1.0);
        stone.logRateDoubt = 0.7;
        bench.stones.push_back(stone);
    }
    return bench;
}

// A job as it goes: the full stone, then the short one low, with its upper end here and there.
HoneLearner learnedFrom(const Bench& truth, std::uint64_t seed) {
    LearningBore bore(truth, seed);
    HoneLearner learner(benchOf(75, 25), 1);
    learner.survey(0, bore.read(sixDepths()), 0);
    const std::vector<borewright::SetUp> job{
        {fullStone, {{50, 98, 20, 0}}},  {shortStone, {{82, 98, 12, 0}, {65, 70, 8, 0}}},
        {fullStone, {{60, 90, 15, 0}}},  {shortStone, {{95, 98, 10, 0}, {48, 52, 8, 0}}},
        {shortStone, {{80, 83, 15, 0}}}, {fullStone, {{85, 98, 12, 0}}},
    };
    for (const borewright::SetUp& setUp : job) {
        bore.hone(setUp);
        learner.pass(0, setUp);
        learner.survey(0, bore.read(sixDepths()), 0);
    }
    return learner;
}

TEST(LearningLengths, AShortStoneLongerOrShorterThanStatedIsFound) {
    for (const double off_mm : {-3.0, 3.0}) {
        int found = 0;
        for (std::uint64_t seed = 1; seed <= 6; ++seed) {
            const HoneLearner learner = learnedFrom(benchOf(75, 25 + off_mm), seed);
            const double longer_mm = learner.longer_mm(shortStone);
            found += std::abs(longer_mm - off_mm) <= 1 ? 1 : 0;
            EXPECT_GE(longer_mm * off_mm, 0) << "the wrong way, seed " << seed;
        }
        EXPECT_GE(found, 5) << "of 6 stones found that are " << off_mm << " mm longer";
    }
}

TEST(LearningLengths, StonesAsStatedStayAsTheyAre) {
    int moved = 0;
    for (std::uint64_t seed = 11; seed <= 22; ++seed) {
        const HoneLearner learner = learnedFrom(benchOf(75, 25), seed);
        for (const std::size_t stone : {fullStone, shortStone}) {
            moved += learner.longer_mm(stone) != 0 ? 1 : 0;
            EXPECT_LE(std::abs(learner.longer_mm(stone)), 1) << "mm; seed " << seed;
        }
    }
    EXPECT_LE(moved, 4) << "of 24 stones that are as stated";
}

TEST(LearningLengths, ThePlannerIsGivenTheLengthThatWasFound) {
    const HoneLearner learner = learnedFrom(benchOf(75, 28), 1);
    const double longer_mm = learner.longer_mm(shortStone);
    ASSERT_GT(longer_mm, 0);
    const borewright::BenchStone& stone = learner.bench().stones[shortStone];
    EXPECT_DOUBLE_EQ(stone.grid.length_mm, 25 + longer_mm);
    EXPECT_DOUBLE_EQ(stone.grid.lowest_mm, 98) << "its lower end stays where it was stated";
    EXPECT_DOUBLE_EQ(stone.grid.highest_mm, 17);
    EXPECT_EQ(learner.belief(0).layout.faceCells[shortStone], stone.grid.cells);
}

TEST(LearningLengths, TheSameLogGivesTheSameAnswerToTheLastBit) {
    const HoneLearner one = learnedFrom(benchOf(75, 28), 3);
    const HoneLearner other = learnedFrom(benchOf(75, 28), 3);
    EXPECT_EQ(one.longer_mm(shortStone), other.longer_mm(shortStone));
    EXPECT_EQ(one.belief(0).mean, other.belief(0).mean);
    EXPECT_EQ(one.belief(0).covariance, other.belief(0).covariance);
}

TEST(LearningLengths, AStoneThatIsNotThereIsNoLonger) {
    const HoneLearner learner(benchOf(75, 25), 1);
    EXPECT_EQ(learner.longer_mm(7), 0);
}

} // namespace
} // namespace borewright::test
