// SPDX-License-Identifier: GPL-3.0-or-later
// Method: with T the tools, a resting bore is B = m + K (T − t) + e, cov e = C. Data elsewhere
// change T alone. Where the tools themselves change, T → T′, B's dependence follows through the
// backward regression of T on T′ (as in a fixed-interval smoother: Rauch, Tung & Striebel, AIAA J.
// 3 (1965) 1445): T = t + G (T′ − t′) + ε, so K′ = K G and C′ = C + K cov(ε) Kᵀ.
#include "core/honing/learning_star.h"

#include <Eigen/Cholesky>

namespace borewright {

namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

auto toolBlock(const Joint& joint) {
    return joint.covariance.block(joint.bore, joint.bore, joint.tools, joint.tools);
}

} // namespace

ToolStar::ToolStar(const VectorXd& boreMean, const MatrixXd& boreCovariance,
                   const VectorXd& toolMean, const MatrixXd& toolCovariance, std::size_t bores)
    : m_resting(bores, std::make_shared<Resting>(Resting{
                           boreMean, toolMean, MatrixXd::Zero(boreMean.size(), toolMean.size()),
                           boreCovariance})) {
    m_joint.bore = boreMean.size();
    m_joint.tools = toolMean.size();
    m_joint.mean.resize(boreMean.size() + toolMean.size());
    m_joint.mean << boreMean, toolMean;
    m_joint.covariance = MatrixXd::Zero(m_joint.mean.size(), m_joint.mean.size());
    m_joint.covariance.topLeftCorner(m_joint.bore, m_joint.bore) = boreCovariance;
    m_joint.covariance.bottomRightCorner(m_joint.tools, m_joint.tools) = toolCovariance;
}

Joint ToolStar::wake(const Resting& resting) const {
    Joint joint;
    joint.bore = m_joint.bore;
    joint.tools = m_joint.tools;
    const Index carried = resting.mean.size() - joint.bore;
    const VectorXd tools = m_joint.mean.segment(joint.bore, joint.tools);
    const VectorXd own = resting.mean + resting.regression * (tools - resting.tools);
    joint.mean.resize(own.size() + joint.tools);
    joint.mean << own.head(joint.bore), tools, own.tail(carried);

    const MatrixXd withTools = resting.regression * toolBlock(m_joint);
    MatrixXd ownCovariance = resting.left;
    ownCovariance.noalias() += withTools * resting.regression.transpose();
    MatrixXd& p = joint.covariance;
    p.resize(joint.mean.size(), joint.mean.size());
    const Index behind = joint.bore + joint.tools;
    p.topLeftCorner(joint.bore, joint.bore) = ownCovariance.topLeftCorner(joint.bore, joint.bore);
    p.block(0, behind, joint.bore, carried) = ownCovariance.topRightCorner(joint.bore, carried);
    p.block(behind, behind, carried, carried) = ownCovariance.bottomRightCorner(carried, carried);
    p.block(0, joint.bore, joint.bore, joint.tools) = withTools.topRows(joint.bore);
    p.block(behind, joint.bore, carried, joint.tools) = withTools.bottomRows(carried);
    p.block(joint.bore, joint.bore, joint.tools, joint.tools) = toolBlock(m_joint);
    p.block(joint.bore, 0, joint.tools, joint.bore) = withTools.topRows(joint.bore).transpose();
    p.block(joint.bore, behind, joint.tools, carried) = withTools.bottomRows(carried).transpose();
    p.block(behind, 0, carried, joint.bore) = p.block(0, behind, joint.bore, carried).transpose();
    return joint;
}

ToolStar::Resting ToolStar::laidDown() const {
    const Joint& joint = m_joint;
    const Index carried = joint.carried();
    const Index size = joint.bore + carried;
    const Index behind = joint.bore + joint.tools;
    const MatrixXd& p = joint.covariance;
    Resting resting;
    resting.mean.resize(size);
    resting.mean << joint.mean.head(joint.bore), joint.mean.tail(carried);
    resting.tools = joint.mean.segment(joint.bore, joint.tools);
    MatrixXd toolsWithOwn(joint.tools, size);
    toolsWithOwn << p.block(joint.bore, 0, joint.tools, joint.bore),
        p.block(joint.bore, behind, joint.tools, carried);
    resting.regression = toolBlock(joint).ldlt().solve(toolsWithOwn).transpose();
    resting.left.resize(size, size);
    resting.left << p.topLeftCorner(joint.bore, joint.bore),
        p.block(0, behind, joint.bore, carried), p.block(behind, 0, carried, joint.bore),
        p.block(behind, behind, carried, carried);
    resting.left.noalias() -= resting.regression * toolsWithOwn;
    return resting;
}

Joint& ToolStar::at(std::size_t bore) {
    if (bore != m_working) {
        m_resting[m_working] = std::make_shared<Resting>(laidDown());
        m_joint = wake(*m_resting[bore]);
        m_working = bore;
    }
    return m_joint;
}

Joint ToolStar::look(std::size_t bore) const {
    return bore == m_working ? m_joint : wake(*m_resting[bore]);
}

VectorXd ToolStar::carriedMean(std::size_t bore) const {
    if (bore == m_working) return m_joint.mean.tail(m_joint.carried());
    const Resting& resting = *m_resting[bore];
    const Index carried = resting.mean.size() - m_joint.bore;
    return resting.mean.tail(carried) +
           resting.regression.bottomRows(carried) *
               (m_joint.mean.segment(m_joint.bore, m_joint.tools) - resting.tools);
}

void ToolStar::follow(const ToolStep& step) {
    if (m_resting.size() < 2) return;
    const Index own = step.before.rows();
    const MatrixXd back = toolBlock(m_joint).ldlt().solve(step.beforeAfter.transpose()).transpose();
    MatrixXd lost = step.before - back * step.beforeAfter.transpose();
    lost = 0.5 * (lost + lost.transpose()).eval();
    const VectorXd now = m_joint.mean.segment(m_joint.bore, m_joint.tools);
    for (std::size_t bore = 0; bore < m_resting.size(); ++bore) {
        if (bore == m_working) continue;
        const MatrixXd onStone = m_resting[bore]->regression.middleCols(step.first, own);
        if (onStone.isZero(0)) continue; // nothing of this bore hangs on that stone
        Resting resting = *m_resting[bore];
        resting.mean += resting.regression * (step.meanBefore - resting.tools);
        resting.tools = now;
        resting.left.noalias() += (onStone * lost) * onStone.transpose();
        resting.regression.middleCols(step.first, own).setZero();
        resting.regression.noalias() += onStone * back;
        m_resting[bore] = std::make_shared<Resting>(std::move(resting));
    }
}

void ToolStar::care(Index first, const MatrixXd& turn, const MatrixXd& noise) {
    const Index own = turn.rows();
    const Index at = m_joint.bore + first;
    ToolStep step;
    step.first = first;
    step.meanBefore = m_joint.mean.segment(m_joint.bore, m_joint.tools);
    step.before = m_joint.covariance.block(at, at, own, own);
    m_joint.mean.segment(at, own) = (turn * m_joint.mean.segment(at, own)).eval();
    MatrixXd& p = m_joint.covariance;
    const MatrixXd rows = turn * p.middleRows(at, own);
    const MatrixXd both = rows.middleCols(at, own) * turn.transpose() + noise;
    step.beforeAfter = p.block(at, m_joint.bore, own, m_joint.tools);
    step.beforeAfter.middleCols(first, own) = rows.middleCols(at, own).transpose();
    p.middleRows(at, own) = rows;
    p.middleCols(at, own) = rows.transpose();
    p.block(at, at, own, own) = 0.5 * (both + both.transpose());
    follow(step);
}

} // namespace borewright
