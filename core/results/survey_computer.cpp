// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/results/survey_computer.h"

#include "core/gauging/warmth.h"
#include "core/results/words.h"
#include "core/verdict/prospect.h"

#include <algorithm>

namespace borewright {

SurveyComputer::SurveyComputer(const Workbook& workbook, const Survey& survey,
                               const DisplayUnits& units, DoubtMemory& memory, Reckoning reckoning)
    : m_workbook(workbook)
    , m_survey(survey)
    , m_units(units)
    , m_memory(memory)
    , m_reckoning(reckoning) {
    for (const Axis& axis : workbook.block.axes)
        m_axisOrder.push_back(axis.id);
    for (const Station& station : askedStations(workbook, survey.header))
        m_asked.insert(station);
}

SurveyResult SurveyComputer::compute() {
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
    doubt(result);
    for (BoreResult& bore : result.bores) {
        finish(bore);
        result.asked += bore.asked;
        result.measured += bore.measured;
        result.verdict = worse(result.verdict, bore.verdict);
    }
    tellWhatSettles(result);
    result.suspicions = findSlips(m_workbook, m_survey);
    markOdd(result);
    return result;
}

// The likeliest story of each accused reading, at its station.
void SurveyComputer::markOdd(SurveyResult& result) const {
    for (const Suspicion& suspicion : result.suspicions)
        for (const std::size_t reading : suspicion.readings) {
            const Station& at = m_survey.readings[reading].station;
            for (BoreResult& bore : result.bores)
                for (StationResult& station : bore.stations)
                    if (station.station == at)
                        station.odd.push_back(suspicion.stories.front().words);
        }
}

void SurveyComputer::startBore(SurveyResult& result, int number) {
    BoreResult bore;
    bore.bore = number;
    m_bore = findBore(m_workbook.block, number);
    if (m_set != nullptr && m_bore != nullptr && m_set->purpose == LimitPurpose::finish)
        bore.finishSize = finishSizeFor(m_workbook, *m_set, *m_bore);
    result.bores.push_back(std::move(bore));
}

void SurveyComputer::addStation(BoreResult& bore, Gauged gauged) {
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
    station.refused = std::move(gauged.refused);
    if (station.diameter) m_read.push_back({gauged.station, std::move(gauged.times)});
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

void SurveyComputer::finish(BoreResult& bore) const {
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
    bore.judgements =
        judge(bore.form, m_set != nullptr ? limitsFor(*m_set, bore.bore) : none, missing, underWay,
              bore.doubt.get(), m_set != nullptr ? m_set->decision : DecisionRule());
    bore.verdict = overall(bore.judgements);
    bore.straightness = straightness(all);
    answerStraight(bore);
    bore.word = wordFor(bore, underWay, m_units);
    bore.why = whyOf(bore);
}

void SurveyComputer::answerStraight(BoreResult& bore) const {
    if (!m_workbook.straightAim || purposeOf(m_survey.header.kind) != LimitPurpose::finish) return;
    bore.straight = AimAnswer::notMeasured;
    if (!bore.straightness) return;
    const FigureDoubt* doubt = bore.doubt != nullptr && bore.doubt->of(Figure::straightness)
                                   ? &*bore.doubt->of(Figure::straightness)
                                   : nullptr;
    const AimAnswer answer = answerAim(*bore.straightness, m_workbook.straightAim->value(), doubt,
                                       m_set != nullptr ? m_set->decision : DecisionRule());
    // What was not read could still be worse.
    if (answer == AimAnswer::notYet || bore.measured == bore.asked) bore.straight = answer;
}

} // namespace borewright
