// SPDX-License-Identifier: GPL-3.0-or-later
// What is learned from passes and surveys where the truth is known: rates, faces, bad readings.
#include "core/honing/learning.h"

#include "tests/core/honing/learning_bore.h"

#include <Eigen/Eigenvalues>
#include <gtest/gtest.h>

namespace borewright::test {
namespace {

struct Learned {
    LearningBore bore;
    HoneLearner learner;
    Found last;

    explicit Learned(std::uint64_t seed, std::size_t bores = 1)
        : bore(learningBench(), seed)
        , learner(learningBench(), bores) {
        last = learner.survey(0, bore.read(sixDepths()), 0);
    }
    // Two passes, the second not yet measured.
    void honedTwice() {
        set(firstPass(learner.bench()));
        bore.hone(firstPass(learner.bench()));
        learner.pass(0, firstPass(learner.bench()));
    }
    void set(const SetUp& setUp) {
        bore.hone(setUp);
        learner.pass(0, setUp);
        last = learner.survey(0, bore.read(sixDepths()), 0);
    }
};

TEST(Learning, AFirstPassOfFifteenSecondsHalvesTheDoubtOfTheRate) {
    Learned it(1);
    const double before = figureFound(it.learner, 0, ToolFigure::rate).deviation;
    it.set(firstPass(it.learner.bench()));
    EXPECT_LT(figureFound(it.learner, 0, ToolFigure::rate).deviation, before / 2);
    EXPECT_EQ(it.learner.passes(0), 1);
    EXPECT_EQ(it.learner.passes(1), 0);
}

TEST(Learning, TheRateIsFoundWithinWhatIsSaid) {
    int within = 0, all = 0;
    double worst = 0;
    for (std::uint64_t seed = 1; seed <= 40; ++seed) {
        Learned it(seed);
        for (int pass = 0; pass < 4; ++pass)
            it.set(firstPass(it.learner.bench()));
        const FigureFound rate = figureFound(it.learner, 0, ToolFigure::rate);
        const double off = std::abs(rate.mean - it.bore.tools[0].settings.logRate);
        within += off < 1.96 * rate.deviation ? 1 : 0;
        worst = std::max(worst, off);
        ++all;
    }
    EXPECT_GE(within, 36) << "of " << all << " rates within their 95 %";
    EXPECT_LT(worst, 0.35) << "ln; the rate was unknown by a factor of two";
}

TEST(Learning, TheBandHoldsTheReadings) {
    int inside = 0, all = 0;
    for (std::uint64_t seed = 101; seed <= 125; ++seed) {
        Learned it(seed);
        for (int pass = 0; pass < 6; ++pass) {
            const std::size_t stone = pass % 3 == 1 ? 1 : 0;
            borewright::SetUp setUp =
                firstPass(it.learner.bench(), stone, 10 + 10 * it.bore.random.uniform());
            setUp.windows[0].from_mm =
                std::round(setUp.windows[0].from_mm + 15 * it.bore.random.uniform());
            it.set(setUp);
            inside += it.last.inside;
            all += static_cast<int>(it.last.readings.size());
        }
    }
    const double share = 100.0 * inside / all;
    EXPECT_GE(share, 93) << "% of " << all;
    EXPECT_LE(share, 99.8) << "% of " << all;
}

TEST(Learning, AWedgeOfTheFaceIsFoundFromTwoSetUps) {
    // One side of the stone is worn 6 µm further back than the other, ± 6 µm about its middle.
    LearningBore bore(learningBench(), 7);
    const auto cells = bore.tools[0].face.size();
    bore.tools[0].face = Eigen::VectorXd::LinSpaced(cells, -6, 6);
    LearningOptions options;
    options.faceWedge_um = 5;
    HoneLearner learner(learningBench(), 1, options);
    learner.survey(0, bore.read(sixDepths()), 0);
    for (int pass = 0; pass < 2; ++pass) {
        const borewright::SetUp setUp = firstPass(learner.bench(), 0, 30);
        bore.hone(setUp);
        learner.pass(0, setUp);
        learner.survey(0, bore.read(sixDepths()), 0);
    }
    const Belief belief = learner.belief(0);
    const Eigen::VectorXd face = belief.face(0);
    const double wedge = face[cells - 1] - face[0];
    EXPECT_GT(wedge, 4) << "µm; it is " << bore.tools[0].face[cells - 1] - bore.tools[0].face[0];
    EXPECT_LT(wedge, 16);
}

TEST(Learning, OneBadReadingIsCalledOddAndSpoilsNothing) {
    Learned it(11);
    it.honedTwice();
    HoneLearner without = it.learner;
    std::vector<BoreReading> readings = it.bore.read(sixDepths());
    without.survey(0, readings, 0);
    readings[4].size_um += 25.4; // a thou misread
    const Found found = it.learner.survey(0, readings, 0);
    for (std::size_t i = 0; i < readings.size(); ++i)
        EXPECT_EQ(found.readings[i].odd, i == 4) << "reading " << i;
    EXPECT_FALSE(found.surprised) << "an odd reading alone is no surprise";
    const Eigen::VectorXd moved = it.learner.belief(0).wall() - without.belief(0).wall();
    EXPECT_LT(moved.cwiseAbs().maxCoeff(), 1.5) << "µm";
    // Read the same again, it is believed.
    const Found again = it.learner.survey(0, readings, 0);
    EXPECT_FALSE(again.readings[4].odd);
}

// What a pass took otherwise than thought shows on neighbouring readings; slips do not agree.
TEST(Learning, OddReadingsSideBySideThatAgreeAreTheWall) {
    const auto oddOnes = [](std::size_t one, double off_um, std::size_t other, double otherOff_um,
                            double* moved_um = nullptr) {
        Learned it(11);
        it.honedTwice();
        std::vector<BoreReading> readings = it.bore.read(sixDepths());
        const double really = readings[one].size_um;
        readings[one].size_um += off_um;
        readings[other].size_um += otherOff_um;
        const Found found = it.learner.survey(0, readings, 0);
        if (moved_um)
            *moved_um =
                expectedAt(it.learner.belief(0), it.learner.bench().grid, readings[one].look)
                    .mean_um -
                really;
        int odd = 0;
        for (const Found::At& at : found.readings)
            odd += at.odd ? 1 : 0;
        return odd;
    };
    double moved = 0;
    EXPECT_EQ(oddOnes(2, 22, 3, 18, &moved), 0) << "both axes at 23 mm";
    EXPECT_GT(moved, 15) << "µm of the 22 that it read larger";
    EXPECT_EQ(oddOnes(2, 22, 3, -18), 2) << "one larger, one smaller";
    EXPECT_EQ(oddOnes(2, 22, 8, 18), 2) << "at 23 and 74 mm, others between";
    EXPECT_EQ(oddOnes(2, 254, 3, 250), 2) << "a turn of the dial, twice";
}

TEST(Learning, LandsBetweenPortsAreFoundToGiveWayFaster) {
    Bench bench = learningBench();
    const auto cells = static_cast<Eigen::Index>(bench.grid.cells);
    bench.land = Eigen::VectorXd::Ones(cells);
    bench.land.segment(cells / 2 - 6, 12).setConstant(0.6);
    LearningBore bore(bench, 5);
    HoneLearner learner(bench, 1);
    const auto hardnessAt = [&](Eigen::Index cell) { return learner.belief(0).hardness()[cell]; };
    EXPECT_LT(hardnessAt(cells / 2), -0.05) << "ln: expected before anything was honed";
    EXPECT_EQ(hardnessAt(2), 0) << "away from the ports as ever";
    // Really twice as far from the rest as expected.
    const double really = -0.3;
    bore.hardness = Eigen::VectorXd::Zero(cells);
    bore.hardness.segment(cells / 2 - 6, 12).setConstant(really);
    std::vector<double> looks = sixDepths();
    looks.push_back(50);
    learner.survey(0, bore.read(looks), 0);
    for (int pass = 0; pass < 4; ++pass) {
        const borewright::SetUp setUp = firstPass(bench, 0, 25);
        bore.hone(setUp);
        learner.pass(0, setUp);
        learner.survey(0, bore.read(looks), 0);
    }
    EXPECT_NEAR(hardnessAt(cells / 2), really, 0.1) << "ln";
}

TEST(Learning, ATurnOfTheDialMisreadLeavesHardlyMoreDoubtThanNoReading) {
    Learned it(11);
    it.honedTwice();
    HoneLearner without = it.learner;
    std::vector<BoreReading> readings = it.bore.read(sixDepths());
    const Look there = readings[4].look;
    readings[4].size_um += 254; // ten thou: a turn of the dial
    EXPECT_TRUE(it.learner.survey(0, readings, 0).readings[4].odd);
    readings.erase(readings.begin() + 4);
    without.survey(0, readings, 0);
    const WallGrid& grid = it.learner.bench().grid;
    const double unread = expectedAt(without.belief(0), grid, there).deviation_um;
    const double misread = expectedAt(it.learner.belief(0), grid, there).deviation_um;
    EXPECT_GT(misread, unread) << "µm: perhaps it was the wall all the same";
    EXPECT_LT(misread, std::hypot(unread, 2.5)) << "µm: a slip may not bring the work to a stop";
}

TEST(Learning, ASurpriseMakesItCarefulAndCalmPassesBoldAgain) {
    Learned it(13);
    for (int pass = 0; pass < 2; ++pass)
        it.set(firstPass(it.learner.bench()));
    const double calm = it.learner.errorFactor();
    EXPECT_LT(calm, 1.2);
    // The wall moves as no stone moves it.
    it.bore.hone(firstPass(it.learner.bench()));
    for (Eigen::Index i = 0; i < it.bore.wall.size(); ++i)
        it.bore.wall[i] += 7 * std::sin(0.55 * static_cast<double>(i));
    it.learner.pass(0, firstPass(it.learner.bench()));
    const Found found = it.learner.survey(0, it.bore.read(sixDepths()), 0);
    EXPECT_TRUE(found.surprised);
    EXPECT_GT(found.surprise, 1.5);
    const double alarmed = it.learner.errorFactor();
    EXPECT_GT(alarmed, 1.3 * calm);
    for (int pass = 0; pass < 6; ++pass)
        it.set(firstPass(it.learner.bench()));
    EXPECT_LT(it.learner.errorFactor(), alarmed);
}

TEST(Learning, ARateFarFromTheFirstGuessIsFoundAtOnce) {
    // Four times as fast as was guessed: one line through the guess would miss it by far.
    LearningBore bore(learningBench(), 17);
    bore.tools[0].settings.logRate = std::log(4.0);
    HoneLearner learner(learningBench(), 1);
    learner.survey(0, bore.read(sixDepths()), 0);
    bore.hone(firstPass(learner.bench()), 0);
    learner.pass(0, firstPass(learner.bench()));
    learner.survey(0, bore.read(sixDepths()), 0);
    EXPECT_NEAR(figureFound(learner, 0, ToolFigure::rate).mean, std::log(4.0), 0.25);
    for (const double depth : sixDepths()) {
        const Expected expected = expectedAt(learner.belief(0), learner.bench().grid, {depth, 0});
        EXPECT_NEAR(expected.mean_um, bore.sizeAt(depth), 3.0) << depth << " mm";
    }
}

TEST(Learning, TwoStationsLeaveMuchDoubtBetween) {
    LearningBore bore(learningBench(), 19);
    HoneLearner learner(learningBench(), 1);
    learner.survey(0, bore.read({10, 90}), 0);
    const Belief belief = learner.belief(0);
    const WallGrid& grid = learner.bench().grid;
    EXPECT_LT(expectedAt(belief, grid, {10, 0}).deviation_um, 1.5);
    EXPECT_GT(expectedAt(belief, grid, {50, 0}).deviation_um, 8);
}

TEST(Learning, TheSameLogTeachesTheSame) {
    Learned one(23), other(23);
    for (int pass = 0; pass < 3; ++pass) {
        one.set(firstPass(one.learner.bench()));
        other.set(firstPass(other.learner.bench()));
    }
    EXPECT_EQ(one.learner.belief(0).mean, other.learner.belief(0).mean);
    EXPECT_EQ(one.learner.belief(0).covariance, other.learner.belief(0).covariance);
}

TEST(Learning, NothingHappensWithNoStrokes) {
    Learned it(29);
    const Belief before = it.learner.belief(0);
    it.learner.pass(0, firstPass(it.learner.bench(), 0, 0));
    const Belief after = it.learner.belief(0);
    EXPECT_LT((after.mean - before.mean).cwiseAbs().maxCoeff(), 1e-9);
    EXPECT_LT((after.covariance - before.covariance).cwiseAbs().maxCoeff(), 1e-9);
    it.learner.survey(0, it.bore.read(sixDepths()), 0);
    EXPECT_EQ(it.learner.passes(0), 0);
}

TEST(Learning, CovarianceStaysACovarianceOverThirtySetUps) {
    Learned it(31);
    for (int pass = 0; pass < 30; ++pass) {
        it.set(firstPass(it.learner.bench(), pass % 2 == 0 ? 0 : 1, 8));
        if (pass % 10 != 9) continue;
        const Belief belief = it.learner.belief(0);
        const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> values(belief.covariance,
                                                                    Eigen::EigenvaluesOnly);
        EXPECT_GT(values.eigenvalues().minCoeff(), -1e-8) << "after " << pass + 1;
        EXPECT_TRUE(belief.mean.allFinite());
    }
}

TEST(Learning, PredictionIsWhatAPassDoes) {
    Learned it(37);
    it.set(firstPass(it.learner.bench()));
    const borewright::SetUp next = firstPass(it.learner.bench(), 1, 10);
    const Belief said = pushed(it.learner.bench(), it.learner.belief(0), next, it.learner.options(),
                               it.learner.errorFactor());
    it.learner.pass(0, next);
    const Belief done = it.learner.belief(0);
    EXPECT_LT((said.mean - done.mean).cwiseAbs().maxCoeff(), 1e-9);
    EXPECT_LT((said.covariance - done.covariance).cwiseAbs().maxCoeff(), 1e-6);
}

} // namespace
} // namespace borewright::test
