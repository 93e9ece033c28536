// SPDX-License-Identifier: GPL-3.0-or-later
// Tools that several bores share, and what care of a stone does to what is known of it.
#include "core/honing/learning.h"

#include "tests/core/honing/learning_bore.h"

#include <gtest/gtest.h>

namespace borewright::test {
namespace {

// Two bores honed with the same stones.
struct TwoBores {
    std::vector<LearningBore> bores{LearningBore(learningBench(), 1),
                                    LearningBore(learningBench(), 2)};
    HoneLearner learner{learningBench(), 2};

    TwoBores() {
        bores[1].tools = bores[0].tools;
        for (std::size_t bore = 0; bore < 2; ++bore)
            survey(bore);
    }
    void pass(std::size_t bore, const SetUp& setUp) {
        bores[bore].hone(setUp);
        bores[1 - bore].tools = bores[bore].tools;
        learner.pass(bore, setUp);
    }
    Found survey(std::size_t bore) {
        return learner.survey(bore, bores[bore].read(sixDepths()), 0);
    }
};

double doubtOfRate(const HoneLearner& learner, std::size_t bore) {
    return figureFound(learner, 0, ToolFigure::rate, bore).deviation;
}

TEST(LearningShared, WhatOneBoreTaughtTheOtherKnows) {
    TwoBores it;
    const double before = doubtOfRate(it.learner, 1);
    it.pass(0, firstPass(it.learner.bench()));
    it.survey(0);
    EXPECT_LT(doubtOfRate(it.learner, 1), before / 2);
    EXPECT_DOUBLE_EQ(doubtOfRate(it.learner, 0), doubtOfRate(it.learner, 1));
    // The other bore's first pass is then foretold within a band that one blind pass is not.
    it.pass(1, firstPass(it.learner.bench()));
    const Found found = it.survey(1);
    EXPECT_GE(found.inside, 10) << "of 12";
    for (const Found::At& at : found.readings)
        EXPECT_LT(at.expected.deviation_um, 10) << at.look.depth_mm << " mm";
}

TEST(LearningShared, ABoreWaitingForItsSurveyLearnsFromTheOthers) {
    // Both are honed, then both are read: what the first reading teaches of the rate tells already
    // what the second bore must have become.
    TwoBores it;
    it.pass(0, firstPass(it.learner.bench()));
    it.pass(1, firstPass(it.learner.bench()));
    const WallGrid& grid = it.learner.bench().grid;
    const Expected before = expectedAt(it.learner.belief(1), grid, {50, 0});
    it.survey(0);
    const Expected after = expectedAt(it.learner.belief(1), grid, {50, 0});
    EXPECT_LT(after.deviation_um, before.deviation_um / 1.5);
    EXPECT_NEAR(after.mean_um, it.bores[1].sizeAt(50), 3 * after.deviation_um);
    EXPECT_GE(it.survey(1).inside, 10) << "of 12";
    EXPECT_EQ(it.learner.passes(0), 2);
}

TEST(LearningShared, ABoreBesideIsNoDifferentFromNone) {
    // The second bore is never touched: the first learns as if it were alone.
    LearningBore one(learningBench(), 5), same(learningBench(), 5);
    HoneLearner alone(learningBench(), 1), beside(learningBench(), 2);
    const auto step = [](LearningBore& bore, HoneLearner& learner, std::size_t stone) {
        const borewright::SetUp setUp = firstPass(learner.bench(), stone);
        bore.hone(setUp);
        learner.pass(0, setUp);
        learner.survey(0, bore.read(sixDepths()), 0.5);
    };
    alone.survey(0, one.read(sixDepths()), 0.5);
    beside.survey(0, same.read(sixDepths()), 0.5);
    for (const std::size_t stone : {0U, 1U, 0U, 1U}) {
        step(one, alone, stone);
        step(same, beside, stone);
    }
    EXPECT_LT((alone.belief(0).mean - beside.belief(0).mean).cwiseAbs().maxCoeff(), 1e-6);
    EXPECT_LT((alone.belief(0).covariance - beside.belief(0).covariance).cwiseAbs().maxCoeff(),
              1e-6);
    EXPECT_FALSE(beside.surveyed(1));
}

TEST(LearningCare, ATurnedFaceIsReversed) {
    LearningBore bore(learningBench(), 3);
    HoneLearner learner(learningBench(), 1);
    learner.survey(0, bore.read(sixDepths()), 0);
    for (int pass = 0; pass < 2; ++pass) {
        bore.hone(firstPass(learner.bench(), 1, 20));
        learner.pass(0, firstPass(learner.bench(), 1, 20));
        learner.survey(0, bore.read(sixDepths()), 0);
    }
    HoneLearner turned = learner;
    const std::size_t full = 0;
    turned.turned(full);
    const Eigen::VectorXd before = learner.belief(0).face(full);
    const Eigen::VectorXd after = turned.belief(0).face(full);
    // 75 mm on cells of 2 mm: the top cell is half there, so cells fall between.
    const auto cells = before.size();
    for (Eigen::Index i = 1; i < cells - 1; ++i) {
        const double between = (before[cells - 1 - i] + before[cells - 2 - i]) / 2;
        EXPECT_NEAR(after[i], between, 1e-9) << "cell " << i;
    }
    turned.turned(full);
    EXPECT_NEAR(turned.belief(0).face(full)[3], before[3], 0.05) << "µm, turned back";
}

TEST(LearningCare, ADressedFaceIsStraightAndItsRateLessKnown) {
    LearningBore bore(learningBench(), 4);
    HoneLearner learner(learningBench(), 1);
    learner.survey(0, bore.read(sixDepths()), 0);
    for (int pass = 0; pass < 3; ++pass) {
        bore.hone(firstPass(learner.bench(), 0, 20));
        learner.pass(0, firstPass(learner.bench(), 0, 20));
        learner.survey(0, bore.read(sixDepths()), 0);
    }
    const FigureFound before = figureFound(learner, 0, ToolFigure::rate);
    EXPECT_GT(learner.belief(0).face(0).cwiseAbs().maxCoeff(), 0.3) << "µm worn";
    HoneLearner reversed = learner;
    learner.dressed(0);
    const Belief belief = learner.belief(0);
    EXPECT_LT(belief.face(0).cwiseAbs().maxCoeff(), 1e-9);
    const Eigen::Index lowest = belief.layout.face(0, 0);
    EXPECT_NEAR(std::sqrt(belief.covariance(lowest, lowest)),
                std::hypot(learner.options().faceWedge_um, 0.4), 0.1);
    const FigureFound after = figureFound(learner, 0, ToolFigure::rate);
    EXPECT_DOUBLE_EQ(after.mean, before.mean);
    EXPECT_GT(after.deviation, before.deviation + 0.1);

    reversed.reversed(0);
    const FigureFound freed = figureFound(reversed, 0, ToolFigure::rate);
    EXPECT_GT(freed.deviation, before.deviation);
    EXPECT_LT(freed.deviation, after.deviation) << "running in reverse renews less than dressing";
}

} // namespace
} // namespace borewright::test
