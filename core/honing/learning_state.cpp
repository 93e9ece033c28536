// SPDX-License-Identifier: GPL-3.0-or-later
// What each entry of the log does to what is known.
#include "core/honing/learning_state.h"

#include "core/honing/learning_prior.h"

#include <algorithm>
#include <cmath>

namespace borewright {

namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr auto figures = static_cast<Index>(toolFigures);
// So many set-ups between two surveys of a bore are looked back at; more only widen the doubt.
constexpr std::size_t mostCarried = 6;
// What care does to the logarithm of a rate, standard.
constexpr double dressedRate = 0.25, reversedRate = 0.15;

ToolStar starOf(const Bench& bench, std::size_t bores, const LearningOptions& options) {
    const BorePrior bore = borePrior(bench, options);
    const ToolPrior tools = toolPrior(bench, options);
    return {bore.mean, bore.covariance, tools.mean, tools.covariance,
            std::max<std::size_t>(bores, 1)};
}

void dropCarried(Joint& joint) {
    const Index size = joint.bore + joint.tools;
    joint.mean.conservativeResize(size);
    joint.covariance.conservativeResize(size, size);
}

// Cells counted from the other end; a top cell that is cut through shifts them by what it lacks.
MatrixXd turnedFace(const StoneOnGrid& stone) {
    const auto cells = static_cast<Index>(stone.cells);
    MatrixXd turn = MatrixXd::Zero(cells, cells);
    for (Index i = 0; i < cells; ++i) {
        const Index upper = cells - 1 - i;
        turn(i, upper) += stone.topShare;
        turn(i, std::max<Index>(0, upper - 1)) += 1 - stone.topShare;
    }
    return turn;
}

} // namespace

LearningState::LearningState(const Bench& bench, std::size_t bores, const LearningOptions& options)
    : m_star(starOf(bench, bores, options))
    , m_bores(std::max<std::size_t>(bores, 1))
    , m_faces(bench.stones.size())
    , m_passes(bench.stones.size(), 0) {}

void LearningState::pass(const Bench& bench, const LearningOptions& options, LearningEvent& event,
                         std::size_t place) {
    BoreNotes& notes = m_bores[event.place];
    const std::size_t stone = event.setUp.stone;
    Joint& joint = m_star.at(event.place);
    const BeliefLayout layout(bench);
    if (event.about.figures.size() == 0)
        event.about.figures = joint.mean.segment(layout.figure(stone, ToolFigure::rate), figures);
    const Index strays = straysOfWindow * static_cast<Index>(event.setUp.windows.size());
    if (event.about.strayed.size() != strays) event.about.strayed = VectorXd::Zero(strays);

    Pending pending{place, stone, joint.carried(), strays, notes.pending.size() < mostCarried};
    if (notes.pending.empty()) notes.factors = factors();
    PushedJoint pushed =
        pushJoint(bench, event.setUp, options, notes.factors, event.about,
                  {notes.wall, m_faces[stone]}, notes.added, pending.carried, joint);
    m_star.follow(pushed.step);
    notes.added = std::move(pushed.added);
    notes.wall = std::move(pushed.shape.wall);
    m_faces[stone] = std::move(pushed.shape.face);
    if (pushed.cut)
        notes.pending.push_back(pending);
    else if (pending.carried) {
        joint.mean.conservativeResize(joint.mean.size() - figures - strays);
        joint.covariance.conservativeResize(joint.mean.size(), joint.mean.size());
    }
}

Found LearningState::survey(const Bench& bench, const LearningOptions& options,
                            const LearningEvent& event, std::vector<Smoothed>* seen) {
    BoreNotes& notes = m_bores[event.place];
    Joint& joint = m_star.at(event.place);
    CorrectionInput input{event.readings, event.shared_um, {}, {}, false, notes.odd};
    if (!notes.surveyed) {
        input.added.error = borePrior(bench, options).shape;
    } else if (!notes.pending.empty()) {
        input.added = notes.added;
        input.factors = notes.factors;
        input.remembers = true;
    }
    Found found = correctJoint(bench.grid, options, input, m_memory, joint);
    if (event.readings.empty()) return found;
    m_likelihood += found.likelihood;
    bound(BeliefLayout(bench), joint);
    if (seen) *seen = smoothed();

    dropCarried(joint);
    for (const Pending& pending : notes.pending)
        ++m_passes[pending.stone];
    notes = {};
    notes.surveyed = true;
    for (const Found::At& at : found.readings)
        if (at.odd) notes.odd.push_back(at.look);
    for (VectorXd& face : m_faces)
        face.resize(0);
    return found;
}

std::vector<Smoothed> LearningState::smoothed() const {
    std::vector<Smoothed> all;
    for (std::size_t bore = 0; bore < m_bores.size(); ++bore) {
        if (m_bores[bore].pending.empty()) continue;
        const VectorXd mean = m_star.carriedMean(bore);
        for (const Pending& pending : m_bores[bore].pending)
            if (pending.carried)
                all.push_back({pending.event,
                               {mean.segment(pending.first, figures),
                                mean.segment(pending.first + figures, pending.strays)}});
    }
    return all;
}

// Beyond these no spring, stone or iron is found, and the exponentials stay harmless.
void LearningState::bound(const BeliefLayout& layout, Joint& joint) const {
    const auto keep = [&](std::size_t stone, ToolFigure figure, double least, double most) {
        double& value = joint.mean[layout.figure(stone, figure)];
        value = std::clamp(value, least, most);
    };
    for (std::size_t s = 0; s < layout.faceCells.size(); ++s) {
        keep(s, ToolFigure::rate, -7, 4);
        keep(s, ToolFigure::compliance, 0, 6.5);
        keep(s, ToolFigure::wear, -9, 0);
        keep(s, ToolFigure::looseness, -7, 4);
    }
}

void LearningState::care(const Bench& bench, const LearningOptions& options,
                         const LearningEvent& event) {
    const BeliefLayout layout(bench);
    const StoneOnGrid& stone = bench.stones[event.place].grid;
    const auto cells = static_cast<Index>(stone.cells);
    const Index own = cells + figures;
    MatrixXd turn = MatrixXd::Identity(own, own);
    MatrixXd noise = MatrixXd::Zero(own, own);
    if (event.kind == LearningEvent::Kind::turned) {
        turn.topLeftCorner(cells, cells) = turnedFace(stone);
    } else if (event.kind == LearningEvent::Kind::dressed) {
        turn.topLeftCorner(cells, cells).setZero();
        noise.topLeftCorner(cells, cells) = freshFace(bench.grid, stone.cells, options);
        noise(cells, cells) = dressedRate * dressedRate;
    } else {
        noise(cells, cells) = reversedRate * reversedRate;
    }
    // The interpolation of a turned face must not take away every doubt of a single cell.
    noise.diagonal().head(cells).array() += 1e-4;
    m_star.care(layout.face(event.place, 0) - layout.tools(), turn, noise);
    m_faces[event.place].resize(0);
}

bool LearningState::waiting() const {
    return std::any_of(m_bores.begin(), m_bores.end(),
                       [](const BoreNotes& notes) { return !notes.pending.empty(); });
}

void LearningState::settle() {
    for (std::size_t bore = 0; bore < m_bores.size(); ++bore) {
        if (m_bores[bore].pending.empty()) continue;
        dropCarried(m_star.at(bore));
        for (Pending& pending : m_bores[bore].pending)
            pending.carried = false;
    }
}

} // namespace borewright
