// SPDX-License-Identifier: GPL-3.0-or-later
// Method. Innovation r = z − H m with S = H P Hᵀ + R. Readings have Student's t with four degrees
// of freedom, as a normal whose variance is divided by a weight of its own, found by the EM
// reweighting (Lange, Little & Taylor, J. Am. Stat. Assoc. 84 (1989) 881). A reading is odd where
// its prediction from all the others, r_i = (S⁻¹r)_i / (S⁻¹)_ii with variance 1/(S⁻¹)_ii, misses by
// too much. The factor of the model's error is weighed over steps by the likelihood of r.
#include "core/honing/learning_correct.h"

#include <Eigen/Cholesky>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace borewright {

namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr double freedom = 4; // of the readings' t
constexpr double inside95 = 1.959964;
// Of an odd reading's miss, what the wall may yet have of it, over so many millimetres; but a turn
// of the dial misread says no more of the wall than a smaller slip does.
constexpr double perhapsTrue = 0.15, perhapsAtMost_um = 2, perhapsOver_mm = 6;
constexpr double samePlace_mm = 2;
constexpr double noWeight = 1e-6;

using Logs = ErrorMemory::Logs;

struct Innovation {
    MatrixXd h;                 // readings × (wall, oval)
    VectorXd missed;            // r
    VectorXd own;               // variances of the readings
    MatrixXd spread;            // H P Hᵀ + what is shared, without own
    MatrixXd byError, byStrays; // H E Hᵀ, the same of the strays
};

MatrixXd rowsOf(const WallGrid& grid, const Joint& joint,
                const std::vector<BoreReading>& readings) {
    Belief frame;
    frame.layout.cells = grid.cells;
    frame.mean = joint.mean.head(joint.bore);
    MatrixXd h(static_cast<Index>(readings.size()), static_cast<Index>(2 * grid.cells));
    for (std::size_t i = 0; i < readings.size(); ++i)
        h.row(static_cast<Index>(i)) = lookRow(frame, grid, readings[i].look).head(h.cols());
    return h;
}

Innovation innovationOf(const WallGrid& grid, const CorrectionInput& input, const Joint& joint) {
    Innovation in;
    in.h = rowsOf(grid, joint, input.readings);
    const Index count = in.h.rows(), seen = in.h.cols();
    in.missed.resize(count);
    in.own.resize(count);
    for (Index i = 0; i < count; ++i) {
        const BoreReading& reading = input.readings[static_cast<std::size_t>(i)];
        in.missed[i] = reading.size_um;
        in.own[i] = std::max(reading.doubt_um * reading.doubt_um, 1e-6);
    }
    in.missed -= in.h * joint.mean.head(seen);
    in.spread = in.h * joint.covariance.topLeftCorner(seen, seen) * in.h.transpose();
    in.spread.array() += input.shared_um * input.shared_um;
    const auto wall = in.h.leftCols(static_cast<Index>(grid.cells));
    const auto seenOf = [&](const MatrixXd& added) -> MatrixXd {
        if (added.size() == 0) return MatrixXd::Zero(count, count);
        return wall * added * wall.transpose();
    };
    in.byError = seenOf(input.added.error);
    in.byStrays = seenOf(input.added.strays);
    return in;
}

struct Weighed {
    VectorXd weight;
    double score = 0; // logarithm of the likelihood, up to a constant
};

// Weights of the readings for a given spread, and how likely the innovation is with them.
Weighed weigh(const Innovation& in, const MatrixXd& spread, const VectorXd& believed,
              const VectorXd& start, int rounds) {
    const Index count = in.missed.size();
    Weighed result;
    result.weight = start;
    for (int round = 0; round < rounds; ++round) {
        const VectorXd noise = in.own.cwiseQuotient(result.weight);
        const Eigen::LLT<MatrixXd> root(spread + MatrixXd(noise.asDiagonal()));
        const MatrixXd inverse = root.solve(MatrixXd::Identity(count, count));
        const VectorXd pull = inverse * in.missed;
        const double logDet = 2 * root.matrixLLT().diagonal().array().log().sum();
        result.score =
            -0.5 * (logDet + in.missed.dot(pull)) +
            freedom / 2 * (result.weight.array().log() - result.weight.array() + 1).sum();
        for (Index i = 0; i < count; ++i) {
            const double rest = noise[i] * pull[i];
            const double doubt = noise[i] - noise[i] * noise[i] * inverse(i, i);
            const double weight =
                (freedom + 1) / (freedom + (rest * rest + std::max(0.0, doubt)) / in.own[i]);
            result.weight[i] = believed[i] > 0 ? 1 : std::clamp(weight, noWeight, 1.25);
        }
    }
    return result;
}

// Deviations by which each reading misses what all the others say.
VectorXd missesOfOthers(const Innovation& in, const MatrixXd& spread, const VectorXd& weight) {
    const Index count = in.missed.size();
    VectorXd misses(count);
    for (Index i = 0; i < count; ++i) {
        VectorXd noise = in.own.cwiseQuotient(weight);
        noise[i] = in.own[i];
        const MatrixXd inverse =
            (spread + MatrixXd(noise.asDiagonal())).llt().solve(MatrixXd::Identity(count, count));
        misses[i] = inverse.row(i).dot(in.missed) / std::sqrt(inverse(i, i));
    }
    return misses;
}

MatrixXd spreadAt(const Innovation& in, const AddedFactors& was, const AddedFactors& squares) {
    return in.spread + (squares.error - was.error * was.error) * in.byError +
           (squares.strays - was.strays * was.strays) * in.byStrays;
}

Logs likelihoods(const Innovation& in, const AddedFactors& was, const VectorXd& believed) {
    constexpr int atFirst = 10, thenOn = 3;
    Logs logs{};
    VectorXd weight = VectorXd::Ones(in.missed.size());
    overAll([&](std::size_t e, std::size_t s) {
        const AddedFactors squares{std::pow(ErrorMemory::errorFactor(e), 2),
                                   std::pow(ErrorMemory::strayFactor(s), 2)};
        const Weighed weighed =
            weigh(in, spreadAt(in, was, squares), believed, weight, e + s == 0 ? atFirst : thenOn);
        weight = weighed.weight;
        logs[e][s] = weighed.score;
    });
    return logs;
}

struct ErrorSeen {
    AddedFactors squares; // of the factors after this survey, not smaller than was thought
    double likelihood = 0;
};

ErrorSeen errorSeen(const CorrectionInput& input, const Innovation& in, const VectorXd& believed,
                    ErrorMemory& memory) {
    ErrorSeen seen;
    const AddedFactors was{input.factors.error * input.factors.error,
                           input.factors.strays * input.factors.strays};
    seen.squares = was;
    if (input.added.error.size() == 0) {
        seen.likelihood =
            weigh(in, in.spread, believed, VectorXd::Ones(in.missed.size()), 10).score;
        return seen;
    }
    const Logs said = likelihoods(in, input.factors, believed);
    Logs chance{};
    overAll([&](std::size_t e, std::size_t s) {
        chance[e][s] = input.remembers ? memory.logChance()[e][s] : priorOf(e, s);
    });
    normalise(chance);
    overAll([&](std::size_t e, std::size_t s) { chance[e][s] += said[e][s]; });
    seen.likelihood = normalise(chance);
    if (input.remembers) memory.learn(said);
    const AddedFactors now = meanSquares(chance);
    seen.squares = {std::max(now.error, was.error), std::max(now.strays, was.strays)};
    return seen;
}

// A reading as odd as the one there before is the wall.
VectorXd believedOf(const CorrectionInput& input) {
    VectorXd believed = VectorXd::Zero(static_cast<Index>(input.readings.size()));
    for (std::size_t i = 0; i < input.readings.size(); ++i)
        for (const Look& odd : input.oddBefore)
            if (std::abs(odd.depth_mm - input.readings[i].look.depth_mm) < samePlace_mm &&
                std::abs(odd.axis - input.readings[i].look.axis) < 0.5)
                believed[static_cast<Index>(i)] = 1;
    return believed;
}

Found expectedAndFound(const CorrectionInput& input, const Innovation& in) {
    Found found;
    for (std::size_t i = 0; i < input.readings.size(); ++i) {
        const auto k = static_cast<Index>(i);
        Found::At at;
        at.look = input.readings[i].look;
        at.found_um = input.readings[i].size_um;
        at.expected = {at.found_um - in.missed[k], std::sqrt(in.spread(k, k) + in.own[k])};
        found.inside += std::abs(in.missed[k]) <= inside95 * at.expected.deviation_um ? 1 : 0;
        found.readings.push_back(at);
    }
    return found;
}

void judgeSurprise(const LearningOptions& options, const Innovation& in, Found& found) {
    std::vector<Index> taken;
    for (std::size_t i = 0; i < found.readings.size(); ++i)
        if (!found.readings[i].odd) taken.push_back(static_cast<Index>(i));
    if (taken.empty()) return;
    const MatrixXd s = (in.spread + MatrixXd(in.own.asDiagonal()))(taken, taken);
    const VectorXd r = in.missed(taken);
    found.surprise = r.dot(s.llt().solve(r)) / static_cast<double>(taken.size());
    found.surprised = found.surprise > options.surpriseBeyond;
}

void update(const Innovation& in, const MatrixXd& spread, const VectorXd& weight, Joint& joint) {
    const MatrixXd seen = joint.covariance.leftCols(in.h.cols()) * in.h.transpose();
    const VectorXd noise = in.own.cwiseQuotient(weight);
    const Eigen::LLT<MatrixXd> root(spread + MatrixXd(noise.asDiagonal()));
    joint.mean += seen * root.solve(in.missed);
    const MatrixXd half = root.matrixL().solve(seen.transpose());
    joint.covariance.noalias() -= half.transpose() * half;
    joint.covariance = (0.5 * (joint.covariance + joint.covariance.transpose())).eval();
}

// Perhaps an odd reading was the wall all the same: until it is read again, more doubt there.
void doubtThere(const WallGrid& grid, const Innovation& in, const Found::At& at, Index reading,
                Joint& joint) {
    const double rest = at.found_um - in.h.row(reading).dot(joint.mean.head(in.h.cols()));
    const double perhaps_um = std::min(perhapsAtMost_um, perhapsTrue * std::abs(rest));
    VectorXd bump(static_cast<Index>(grid.cells));
    for (std::size_t i = 0; i < grid.cells; ++i) {
        const double apart = (grid.middle_mm(i) - at.look.depth_mm) / perhapsOver_mm;
        bump[static_cast<Index>(i)] = perhaps_um * std::exp(-0.5 * apart * apart);
    }
    joint.covariance.topLeftCorner(bump.size(), bump.size()) += bump * bump.transpose();
}

// A slip comes alone: odd readings side by side that miss the same way and about as much are the
// wall, since the pass took otherwise than thought there. A turn of the dial misread is none of it.
// What is believed already stays so.
VectorXd agreeing(const CorrectionInput& input, const LearningOptions& options,
                  const Innovation& in, const MatrixXd& spread, VectorXd believed) {
    constexpr double likeEachOther = 3, lessThanATurn_um = 100;
    const Index count = in.missed.size();
    const VectorXd weight = weigh(in, spread, believed, VectorXd::Ones(count), 10).weight;
    const VectorXd misses = missesOfOthers(in, spread, weight);
    const auto depth = [&](Index i) {
        return input.readings[static_cast<std::size_t>(i)].look.depth_mm;
    };
    const auto odd = [&](Index i) {
        return std::abs(misses[i]) > options.oddBeyond && std::abs(in.missed[i]) < lessThanATurn_um;
    };
    const auto neighbours = [&](Index i, Index k) {
        const auto [upper, lower] = std::minmax({depth(i), depth(k)});
        for (Index j = 0; j < count; ++j)
            if (depth(j) > upper + samePlace_mm && depth(j) < lower - samePlace_mm) return false;
        return true;
    };
    for (Index i = 0; i < count; ++i)
        for (Index k = 0; k < i; ++k) {
            if (!odd(i) || !odd(k) || !neighbours(i, k)) continue;
            const double ratio = misses[i] / misses[k];
            if (ratio > 1 / likeEachOther && ratio < likeEachOther) believed[i] = believed[k] = 1;
        }
    return believed;
}

} // namespace

Found correctJoint(const WallGrid& grid, const LearningOptions& options,
                   const CorrectionInput& input, ErrorMemory& memory, Joint& joint) {
    const Innovation in = innovationOf(grid, input, joint);
    Found found = expectedAndFound(input, in);
    if (input.readings.empty()) return found;
    VectorXd believed = believedOf(input);

    const ErrorMemory before = memory;
    ErrorSeen seen = errorSeen(input, in, believed, memory);
    const VectorXd agreed =
        agreeing(input, options, in, spreadAt(in, input.factors, seen.squares), believed);
    if (agreed != believed) {
        believed = agreed;
        memory = before;
        seen = errorSeen(input, in, believed, memory);
    }
    const AddedFactors& squares = seen.squares;
    found.likelihood = seen.likelihood;
    const auto cells = static_cast<Index>(grid.cells);
    const auto enlarge = [&](const MatrixXd& added, double square, double factor) {
        if (added.size() > 0)
            joint.covariance.topLeftCorner(cells, cells) += (square - factor * factor) * added;
    };
    enlarge(input.added.error, squares.error, input.factors.error);
    enlarge(input.added.strays, squares.strays, input.factors.strays);
    const MatrixXd spread = spreadAt(in, input.factors, squares);
    VectorXd weight = weigh(in, spread, believed, VectorXd::Ones(in.missed.size()), 10).weight;
    const VectorXd misses = missesOfOthers(in, spread, weight);
    for (Index i = 0; i < misses.size(); ++i) {
        if (std::abs(misses[i]) <= options.oddBeyond || believed[i] > 0) continue;
        found.readings[static_cast<std::size_t>(i)].odd = true;
        weight[i] = noWeight;
    }
    judgeSurprise(options, in, found);
    update(in, spread, weight, joint);
    for (std::size_t i = 0; i < found.readings.size(); ++i)
        if (found.readings[i].odd)
            doubtThere(grid, in, found.readings[i], static_cast<Index>(i), joint);
    return found;
}

} // namespace borewright
