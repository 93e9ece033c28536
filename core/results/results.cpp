// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/results/results.h"

#include "core/results/words.h"

#include <algorithm>
#include <set>

namespace borewright {
namespace {

// Computes one survey of a workbook.
class SurveyComputer {
public:
    SurveyComputer(const Workbook& workbook, const Survey& survey, const DisplayUnits& units)
        : m_workbook(workbook)
        , m_survey(survey)
        , m_units(units) {
        for (const Axis& axis : workbook.block.axes)
            m_axisOrder.push_back(axis.id);
        for (const Station& station : askedStations(workbook, survey.header))
            m_asked.insert(station);
    }

    SurveyResult compute() {
        SurveyResult result;
        result.survey = m_survey.header.id;
        const auto set = judgingSet(m_workbook, m_survey.header);
        m_set = set ? *set : nullptr;
        result.hasLimits = m_set != nullptr;
        result.judgedBy = set ? m_set->name : set.error().what;
        result.temperatureCorrected = correctsTemperature(m_survey.header.gauge);
        for (Gauged& gauged : gauge(m_workbook, m_survey)) {
            if (result.bores.empty() || result.bores.back().bore != gauged.station.bore)
                startBore(result, gauged.station.bore);
            addStation(result.bores.back(), std::move(gauged));
        }
        for (BoreResult& bore : result.bores) {
            finish(bore);
            result.asked += bore.asked;
            result.measured += bore.measured;
            result.verdict = worse(result.verdict, bore.verdict);
        }
        return result;
    }

private:
    void startBore(SurveyResult& result, int number) {
        BoreResult bore;
        bore.bore = number;
        m_bore = findBore(m_workbook.block, number);
        if (m_set != nullptr && m_bore != nullptr && m_set->purpose == LimitPurpose::finish)
            bore.finishSize = finishSizeFor(*m_set, *m_bore);
        result.bores.push_back(std::move(bore));
    }

    void addStation(BoreResult& bore, Gauged gauged) {
        StationResult station;
        station.station = gauged.station;
        if (m_bore != nullptr) {
            station.zone = zoneAt(*m_bore, gauged.station.depth);
            station.judged = isJudged(*m_bore, gauged.station.depth);
            station.wall = hasWall(*m_bore, gauged.station.depth, gauged.station.axis);
        }
        station.asked = m_asked.contains(gauged.station);
        station.diameter = gauged.diameter;
        station.repeats = gauged.repeats;
        station.odd = std::move(gauged.odd);
        station.refused = std::move(gauged.refused);
        if (bore.finishSize && station.diameter) {
            station.toGo = *bore.finishSize - *station.diameter;
            bore.leastToGo = std::min(bore.leastToGo.value_or(*station.toGo), *station.toGo);
            bore.mostToGo = std::max(bore.mostToGo.value_or(*station.toGo), *station.toGo);
        }
        if (station.asked && station.wall) {
            ++bore.asked;
            if (station.diameter) ++bore.measured;
        }
        bore.stations.push_back(std::move(station));
    }

    void finish(BoreResult& bore) const {
        std::vector<Diameter> judged, all;
        bool missing = false;
        for (const StationResult& s : bore.stations) {
            if (!s.diameter) {
                missing = missing || (s.asked && s.wall && s.judged);
                continue;
            }
            all.push_back({s.station.depth, s.station.axis, *s.diameter});
            if (s.judged) judged.push_back(all.back());
        }
        const bool underWay = m_survey.header.kind == SurveyKind::check;
        const TaperRule rule = m_set != nullptr ? m_set->taperRule : TaperRule::largestLessSmallest;
        bore.form = formOf(judged, m_axisOrder, rule);
        const Limits none;
        bore.judgements = judge(bore.form, m_set != nullptr ? limitsFor(*m_set, bore.bore) : none,
                                missing, underWay);
        bore.verdict = overall(bore.judgements);
        bore.straightness = straightness(all);
        answerAim(bore);
        bore.word = wordFor(bore, underWay, m_units);
        bore.why = whyOf(bore);
    }

    void answerAim(BoreResult& bore) const {
        if (!m_workbook.straightAim || purposeOf(m_survey.header.kind) != LimitPurpose::finish)
            return;
        bore.straight = AimAnswer::notMeasured;
        if (!bore.straightness) return;
        if (*bore.straightness > m_workbook.straightAim->value())
            bore.straight = AimAnswer::notYet;
        else if (bore.measured == bore.asked)
            bore.straight = AimAnswer::met;
    }

    const Workbook& m_workbook;
    const Survey& m_survey;
    const DisplayUnits& m_units;
    std::vector<std::string> m_axisOrder;
    std::set<Station> m_asked;
    const LimitSet* m_set = nullptr;
    const Bore* m_bore = nullptr;
};

bool hasRead(const SurveyResult& survey, int bore) {
    const BoreResult* result = findBoreResult(survey, bore);
    return result != nullptr && result->measured > 0;
}

BoreStory storyOf(const Workbook& workbook, const Results& results, int bore) {
    BoreStory story;
    story.bore = bore;
    const SurveyHeader* was = nullptr;
    const SurveyHeader* now = nullptr;
    for (std::size_t i = 0; i < workbook.surveys.size(); ++i) {
        const SurveyHeader& header = workbook.surveys[i].header;
        if (!hasRead(results.surveys[i], bore)) continue;
        if (purposeOf(header.kind) == LimitPurpose::worn) {
            if (was == nullptr) was = &header;
        } else if (now == nullptr || header.kind == SurveyKind::final ||
                   now->kind == SurveyKind::check) {
            now = &header;
        }
    }
    if (was != nullptr) story.wasSurvey = was->id;
    if (now != nullptr) story.nowSurvey = now->id;
    story.plateDiffers = was != nullptr && now != nullptr && was->plate != now->plate;
    return story;
}

void tellStories(const Workbook& workbook, const DisplayUnits& units, Results& results) {
    std::set<int> numbers;
    for (const Bore& bore : workbook.block.bores)
        numbers.insert(bore.number);
    results.stories.clear();
    for (const int number : numbers)
        results.stories.push_back(storyOf(workbook, results, number));
    results.summary = suggestSummary(workbook, results, units);
}

} // namespace

Results compute(const Workbook& workbook, const DisplayUnits& units) {
    Results results;
    for (const Survey& survey : workbook.surveys)
        results.surveys.push_back(SurveyComputer(workbook, survey, units).compute());
    tellStories(workbook, units, results);
    return results;
}

Results computeAgain(const Workbook& workbook, const DisplayUnits& units, Results before,
                     const std::string& survey) {
    if (before.surveys.size() != workbook.surveys.size()) return compute(workbook, units);
    for (std::size_t i = 0; i < workbook.surveys.size(); ++i)
        if (workbook.surveys[i].header.id == survey)
            before.surveys[i] = SurveyComputer(workbook, workbook.surveys[i], units).compute();
    tellStories(workbook, units, before);
    return before;
}

const SurveyResult* findResult(const Results& results, const std::string& survey) {
    const auto found = std::ranges::find(results.surveys, survey, &SurveyResult::survey);
    return found == results.surveys.end() ? nullptr : &*found;
}

const BoreResult* findBoreResult(const SurveyResult& survey, int bore) {
    const auto found = std::ranges::find(survey.bores, bore, &BoreResult::bore);
    return found == survey.bores.end() ? nullptr : &*found;
}

const StationResult* findStation(const BoreResult& bore, Length depth, const std::string& axis) {
    for (const StationResult& station : bore.stations)
        if (station.station.depth == depth && station.station.axis == axis) return &station;
    return nullptr;
}

} // namespace borewright
