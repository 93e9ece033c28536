// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/gauging/slip_judge.h"

#include "core/gauging/slip_parts.h"

#include <algorithm>
#include <cmath>
#include <deque>
#include <iterator>

namespace borewright::slips {
namespace {

// How much likelier than a clean bore all stories about a reading must be together.
constexpr double accusingOdds = 0.25;
// Only a story that is surer than that changes what the bore says of its other readings, and what
// it says of other bores.
constexpr double correctingOdds = 100;
// A kept reading that is this far off its bore says nothing about the others.
constexpr double keptAside = 7;
constexpr int mostSlipsABore = 4;
constexpr std::size_t mostStories = 4;
constexpr double leastWeight = 0.01;
// Where either of two columns may be the wrong one, both are accused.
constexpr double alsoAccused = 0.25;

class SurveyJudge {
public:
    SurveyJudge(const Workbook* workbook, const Survey& survey)
        : m_workbook(workbook)
        , m_survey(survey)
        , m_grid(survey)
        , m_noise_um(ownNoise_um(survey.header.gauge)) {}

    std::vector<Suspicion> take() {
        std::vector<BoreCells> others = m_grid.bores;
        std::vector<Suspicion> found = judgeAll(others);
        // Slips in other bores have disturbed the block's pattern: judge once more without them.
        if (!found.empty() && others.size() > 1) {
            std::vector<BoreCells> again = others;
            found = judgeAll(again);
        }
        return found;
    }

private:
    // `bores` give the pattern as they come in, and are corrected as they go out.
    std::vector<Suspicion> judgeAll(std::vector<BoreCells>& bores) {
        std::vector<Suspicion> found;
        std::vector<BoreCells> corrected = bores;
        for (std::size_t b = 0; b < bores.size(); ++b) {
            corrected[b].cells = m_grid.bores[b].cells;
            judgeBore(bores, b, corrected[b].cells, found);
        }
        bores = std::move(corrected);
        return found;
    }

    const BoreModel& modelFor(const std::vector<Spot>& spots) {
        for (const BoreModel& model : m_models)
            if (model.spots() == spots) return model;
        return m_models.emplace_back(spots, m_noise_um);
    }

    BoreFit fitOf(const std::vector<BoreCells>& bores, std::size_t b,
                  const std::vector<Cell>& cells) {
        std::vector<Spot> spots;
        std::vector<double> x_um;
        spots.reserve(cells.size());
        x_um.reserve(cells.size());
        for (const Cell& cell : cells) {
            spots.push_back(cell.spot);
            x_um.push_back(cell.x_um);
        }
        return {modelFor(spots), std::move(x_um), patternsFor(bores, b, spots)};
    }

    void judgeBore(const std::vector<BoreCells>& bores, std::size_t b, std::vector<Cell>& cells,
                   std::vector<Suspicion>& found) {
        for (int round = 0; round < mostSlipsABore && cells.size() > 1; ++round) {
            const BoreFit fit = fitOf(bores, b, cells);
            if (putKeptAside(fit, cells)) continue;
            const Weighed weighed =
                weigh({m_workbook, &m_survey, &bores, b, &cells, &fit, &m_grid, m_noise_um});
            const auto best = std::ranges::max_element(weighed.slips, {}, &Hypothesis::log);
            if (best == weighed.slips.end()) return;
            std::vector<const Hypothesis*> stories;
            std::vector<double> logs;
            for (const Hypothesis& slip : weighed.slips)
                if (rivals(slip, *best)) {
                    stories.push_back(&slip);
                    logs.push_back(slip.log);
                }
            const double odds = std::exp(std::min(logSum(logs) - weighed.clean, 700.0));
            if (odds < accusingOdds) return;
            found.push_back(told(stories, *best));
            if (odds < correctingOdds) return;
            correct(cells, *best, bores[b].middle_um);
        }
    }

    static bool putKeptAside(const BoreFit& fit, std::vector<Cell>& cells) {
        for (std::size_t i = 0; i < cells.size(); ++i)
            if (cells[i].settled && fit.mostGain(i) > keptAside) {
                cells.erase(cells.begin() + static_cast<std::ptrdiff_t>(i));
                return true;
            }
        return false;
    }

    // Two stories of which one at most is true. That one axis runs against the other can lie with
    // either.
    static bool rivals(const Hypothesis& a, const Hypothesis& b) {
        if (a.slip == Slip::columnReversed && b.slip == Slip::columnReversed) return true;
        return std::ranges::any_of(a.accused, [&](std::size_t reading) {
            return std::ranges::find(b.accused, reading) != b.accused.end();
        });
    }

    static Suspicion told(std::vector<const Hypothesis*>& stories, const Hypothesis& best) {
        std::ranges::stable_sort(stories, std::ranges::greater(), &Hypothesis::log);
        if (stories.size() > mostStories) stories.resize(mostStories);
        double sum = 0;
        for (const Hypothesis* story : stories)
            sum += std::exp(story->log - best.log);
        Suspicion suspicion{best.accused, {}};
        for (const Hypothesis* story : stories) {
            const double weight = std::exp(story->log - best.log) / sum;
            if (weight < leastWeight) break;
            if (weight > alsoAccused && story->slip == Slip::columnReversed)
                std::ranges::copy(story->accused, std::back_inserter(suspicion.readings));
            SlipStory told{story->slip,           weight,       story->words,
                           reasonOf(story->slip), story->fixes, {}};
            for (const SlipFix& fix : story->fixes)
                if (!fix.value) told.toRead.push_back(fix.station);
            suspicion.stories.push_back(std::move(told));
        }
        std::ranges::sort(suspicion.readings);
        const auto twice = std::ranges::unique(suspicion.readings);
        suspicion.readings.erase(twice.begin(), twice.end());
        return suspicion;
    }

    // The bore as the story has it; its readings are evidence from now on, and accused no more.
    void correct(std::vector<Cell>& cells, const Hypothesis& story, double middle_um) {
        std::erase_if(cells, [&](const Cell& cell) {
            const bool replaced = std::ranges::any_of(
                story.fixes, [&](const SlipFix& fix) { return fix.replaces == cell.reading; });
            return replaced ||
                   std::ranges::find(story.accused, cell.reading) != story.accused.end();
        });
        for (const SlipFix& fix : story.fixes)
            if (fix.value)
                cells.push_back({fix.source, m_grid.spotOf(fix.station),
                                 size_um(*fix.value, m_survey.header.gauge) - middle_um, true});
        std::ranges::stable_sort(cells, {}, [](const Cell& c) { return placeOf(c.spot); });
    }

    const Workbook* m_workbook;
    const Survey& m_survey;
    Grid m_grid;
    double m_noise_um;
    std::deque<BoreModel> m_models; // of every set of spots met so far
};

} // namespace

std::vector<Suspicion> judgeBores(const Workbook* workbook, const Survey& survey) {
    return SurveyJudge(workbook, survey).take();
}

} // namespace borewright::slips
