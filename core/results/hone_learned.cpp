// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/results/hone_learned.h"

#include "core/results/hone_memory.h"

#include <algorithm>
#include <cmath>

namespace borewright {
namespace {

// Two surveys with no pass logged between that differ by more than this on the mean were not of
// the same wall: something was cut that the log does not know of (common practice, no source).
constexpr double sameWall_um = 8;

std::optional<double> meanGrowth(const std::vector<BoreReading>& before,
                                 const std::vector<BoreReading>& behind) {
    double sum = 0;
    int count = 0;
    for (const BoreReading& now : behind)
        for (const BoreReading& was : before)
            if (now.look.depth_mm == was.look.depth_mm && now.look.axis == was.look.axis) {
                sum += now.size_um - was.size_um;
                ++count;
            }
    if (count == 0) return std::nullopt;
    return sum / count;
}

// The steps of one group of bores.
class Steps {
public:
    Steps(const Workbook& workbook, const Results& results, LearnedGroup& group)
        : m_workbook(workbook)
        , m_results(results)
        , m_group(group) {
        for (const int number : group.group.bores) {
            group.bores.push_back({});
            group.bores.back().bore = number;
        }
        m_last.resize(group.bores.size());
        m_passes.resize(group.bores.size(), 0);
    }

    std::vector<LearnedStep> take(const std::vector<LogEvent>& events) {
        for (const LogEvent& event : events) {
            if (event.kind == LogEvent::Kind::survey)
                for (std::size_t i = 0; i < m_group.bores.size(); ++i)
                    survey(i, event.index);
            else if (event.kind == LogEvent::Kind::pass)
                pass(m_workbook.hone.passes[event.index]);
            else
                care(m_workbook.hone.care[event.index]);
        }
        return std::move(m_steps);
    }
    [[nodiscard]] std::size_t places() const { return m_places; }

private:
    void survey(std::size_t i, std::size_t index) {
        LearnedBore& bore = m_group.bores[i];
        const auto size = honeSize(m_workbook, bore.bore);
        if (!size || index >= m_results.surveys.size()) return;
        const SurveyResult& survey = m_results.surveys[index];
        HoneReadings read = honeReadings(m_workbook, survey, bore.bore, *size);
        if (read.readings.empty()) {
            if (read.leftOut > 0) bore.leftOut = read.leftOut;
            return;
        }
        const auto grown =
            bore.place && !bore.passSince ? meanGrowth(m_last[i], read.readings) : std::nullopt;
        if (grown && std::abs(*grown) > sameWall_um) {
            if (m_passes[i] > 0) bore.unlogged.push_back({survey.survey, *grown});
            bore.place.reset();
        }
        if (!bore.place) bore.place = m_places++;
        LearnedStep step;
        step.bore = *bore.place;
        step.survey = survey.survey;
        step.readings = read.readings;
        step.shared_um = read.shared_um;
        step.check = bore.passSince;
        m_steps.push_back(std::move(step));
        m_last[i] = std::move(read.readings);
        bore.survey = survey.survey;
        bore.leftOut = read.leftOut;
        bore.passSince = false;
    }

    void pass(const Pass& pass) {
        const auto i = m_group.group.placeOf(pass.bore);
        if (!i) return;
        LearnedBore& bore = m_group.bores[*i];
        bore.passSince = bore.place.has_value();
        ++m_passes[*i];
        const auto stone = stoneOf(pass.stone);
        if (!stone || !bore.place) return; // said among the oddities of the log
        LearnedStep step;
        step.kind = LearnedStep::Kind::pass;
        step.bore = *bore.place;
        step.setUp = setUpOf(pass, m_workbook.hone.hone, *stone);
        m_steps.push_back(std::move(step));
    }

    void care(const StoneCare& care) {
        const auto stone = stoneOf(care.stone);
        if (!stone) return;
        LearnedStep step;
        step.kind = care.kind == StoneCare::Kind::turnedEndForEnd ? LearnedStep::Kind::turned
                    : care.kind == StoneCare::Kind::dressed       ? LearnedStep::Kind::dressed
                                                                  : LearnedStep::Kind::reversed;
        step.stone = *stone;
        m_steps.push_back(std::move(step));
    }

    [[nodiscard]] std::optional<std::size_t> stoneOf(const std::string& id) const {
        const auto found = std::ranges::find(m_workbook.hone.stones, id, &Stone::id);
        if (found == m_workbook.hone.stones.end()) return std::nullopt;
        return m_group.group.stoneAt(
            static_cast<std::size_t>(found - m_workbook.hone.stones.begin()));
    }

    const Workbook& m_workbook;
    const Results& m_results;
    LearnedGroup& m_group;
    std::vector<std::vector<BoreReading>> m_last; // as read last, by bore of the group
    std::vector<int> m_passes;
    std::size_t m_places = 0;
    std::vector<LearnedStep> m_steps;
};

void tell(LearnedGroup& group, const LearnedStep& step) {
    switch (step.kind) {
    case LearnedStep::Kind::survey: {
        Found found = group.learner.survey(step.bore, step.readings, step.shared_um);
        if (step.check)
            group.checks[step.bore] = {step.survey, std::move(found)};
        else
            group.checks.erase(step.bore);
        break;
    }
    case LearnedStep::Kind::pass:
        group.learner.pass(step.bore, step.setUp);
        break;
    case LearnedStep::Kind::turned:
        group.learner.turned(step.stone);
        break;
    case LearnedStep::Kind::dressed:
        group.learner.dressed(step.stone);
        break;
    case LearnedStep::Kind::reversed:
        group.learner.reversed(step.stone);
        break;
    }
}

void learn(LearnedGroup& group, const std::vector<LearnedStep>& steps, std::size_t places,
           HoneMemory* memory) {
    const std::string bench = keyOf(group.group.bench) + "#" + std::to_string(places);
    std::vector<std::string> keys;
    for (const LearnedStep& step : steps)
        keys.push_back(keyOf(step));
    std::size_t done = 0;
    const auto before = memory != nullptr ? memory->longestBeginning(bench, keys) : std::nullopt;
    if (before) {
        group.learner = before->learner;
        group.checks = before->checks;
        done = before->steps.size();
    } else {
        group.learner = HoneLearner(group.group.bench, places);
    }
    const bool more = done < steps.size();
    for (; done < steps.size(); ++done)
        tell(group, steps[done]);
    group.key = bench;
    for (const std::string& key : keys)
        group.key += "\n" + key;
    if (memory != nullptr && (more || !before))
        memory->keep({bench, std::move(keys), group.learner, group.checks});
}

} // namespace

const LearnedBore* LearnedGroup::find(int bore) const {
    const auto found = std::ranges::find(bores, bore, &LearnedBore::bore);
    return found == bores.end() ? nullptr : &*found;
}

std::vector<LearnedGroup> learnFrom(const Workbook& workbook, const Results& results,
                                    HoneMemory* memory) {
    std::vector<LearnedGroup> groups;
    const std::vector<LogEvent> events = orderOfWork(workbook);
    for (BenchGroup& bench : benchGroups(workbook)) {
        groups.push_back({});
        LearnedGroup& group = groups.back();
        group.group = std::move(bench);
        Steps steps(workbook, results, group);
        const std::vector<LearnedStep> taken = steps.take(events);
        if (!group.group.bench.stones.empty() && steps.places() > 0)
            learn(group, taken, steps.places(), memory);
    }
    return groups;
}

} // namespace borewright
