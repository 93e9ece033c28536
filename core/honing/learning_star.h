// SPDX-License-Identifier: GPL-3.0-or-later
// Several bores around the tools they share. Given the tools, bores are taken as independent: each
// is kept as its regression on the tools and the covariance that is left, so that what one bore
// teaches of the tools reaches the others when they are looked at. The bore at work is kept whole
// beside the tools; with one bore nothing is ever taken apart.
#pragma once

#include "core/honing/learning_push.h"

#include <cstddef>
#include <memory>
#include <vector>

namespace borewright {

class ToolStar {
public:
    ToolStar() = default;
    // The same prior for each of the bores (≥ 1).
    ToolStar(const Eigen::VectorXd& boreMean, const Eigen::MatrixXd& boreCovariance,
             const Eigen::VectorXd& toolMean, const Eigen::MatrixXd& toolCovariance,
             std::size_t bores);

    // Brings a bore to work: its joint with the tools, to be changed in place.
    Joint& at(std::size_t bore);
    // A copy of the same, without bringing it to work.
    [[nodiscard]] Joint look(std::size_t bore) const;
    // Means of what the bore carries, as of now.
    [[nodiscard]] Eigen::VectorXd carriedMean(std::size_t bore) const;
    // The tools have been changed by work in the present bore: the others' regressions follow.
    void follow(const ToolStep& step);
    // Tools changed by care, not by cutting: rows of a stone become turn·(what they were), and
    // noise is added.
    void care(Eigen::Index first, const Eigen::MatrixXd& turn, const Eigen::MatrixXd& noise);

private:
    struct Resting {
        Eigen::VectorXd mean;       // bore, then what it carries
        Eigen::VectorXd tools;      // tools' mean to which that belongs
        Eigen::MatrixXd regression; // on the tools
        Eigen::MatrixXd left;       // covariance given the tools
    };
    [[nodiscard]] Joint wake(const Resting& resting) const;
    [[nodiscard]] Resting laidDown() const;

    std::vector<std::shared_ptr<const Resting>> m_resting; // that of the bore at work is stale
    std::size_t m_working = 0;
    Joint m_joint;
};

} // namespace borewright
