// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/results/hone_log.h"

#include "core/honing/crosshatch.h"
#include "core/honing/log.h"
#include "core/results/hone_aim.h"
#include "core/results/hone_words.h"
#include "core/results/results.h"

#include <algorithm>
#include <fmt/format.h>
#include <set>

namespace borewright {
namespace {

std::optional<Length> leadOf(const BoreResult* bore) {
    return bore != nullptr && bore->form ? bore->form->lead : std::nullopt;
}

// Mean of what was read at the same stations before and after.
std::optional<Length> meanGrowth(const BoreResult& before, const BoreResult& behind) {
    std::vector<Length> grown;
    for (const StationResult& at : behind.stations) {
        const StationResult* was = findStation(before, at.station.depth, at.station.axis);
        if (at.diameter && was != nullptr && was->diameter)
            grown.push_back(*at.diameter - *was->diameter);
    }
    if (grown.empty()) return std::nullopt;
    return mean(grown);
}

// One bore's way through the work.
class BoreLog {
public:
    BoreLog(const Workbook& workbook, const Results& results, const DisplayUnits& units, int bore)
        : m_workbook(workbook)
        , m_results(results)
        , m_units(units) {
        m_log.bore = bore;
    }

    BoreHoneLog write(const std::vector<LogEvent>& events) {
        for (const LogEvent& event : events) {
            if (event.kind == LogEvent::Kind::survey && event.index < m_results.surveys.size())
                survey(m_results.surveys[event.index]);
            else if (event.kind == LogEvent::Kind::pass)
                pass(m_workbook.hone.passes[event.index]);
        }
        struckPasses();
        m_log.waitsForSurvey = m_open > 0;
        m_log.oddities = logOddities(m_workbook, m_log.bore);
        tick();
        crosshatch();
        return std::move(m_log);
    }

private:
    void survey(const SurveyResult& survey) {
        const BoreResult* read = findBoreResult(survey, m_log.bore);
        if (read == nullptr || read->measured == 0) return;
        for (std::size_t i = m_log.passes.size() - m_open; i < m_log.passes.size(); ++i) {
            LoggedPass& pass = m_log.passes[i];
            pass.behind = survey.survey;
            pass.leadBehind = leadOf(read);
            if (m_open == 1 && m_read != nullptr) pass.tookOff = meanGrowth(*m_read, *read);
        }
        m_open = 0;
        m_read = read;
        m_survey = survey.survey;
    }

    LoggedPass worded(const Pass& pass) const {
        const Stone* stone = findStone(m_workbook.hone, pass.stone);
        LoggedPass logged;
        logged.pass = pass.id;
        logged.stone = stone != nullptr ? stone->name : pass.stone;
        logged.words = strokingWords(pass.windows, m_workbook.hone.hone, m_units);
        logged.simulated = pass.simulated;
        logged.struck = pass.struck.has_value();
        return logged;
    }

    void pass(const Pass& pass) {
        if (pass.bore != m_log.bore) return;
        LoggedPass logged = worded(pass);
        logged.before = m_survey;
        logged.leadBefore = leadOf(m_read);
        m_log.passes.push_back(std::move(logged));
        m_log.lastPass = pass.time;
        ++m_open;
    }

    // What was struck out stays readable, behind the rest.
    void struckPasses() {
        for (const Pass& pass : m_workbook.hone.passes)
            if (pass.bore == m_log.bore && pass.struck) m_log.passes.push_back(worded(pass));
    }

    void tick() {
        const bool honed =
            std::ranges::any_of(m_log.passes, [](const LoggedPass& pass) { return !pass.struck; });
        const Bore* bore = findBore(m_workbook.block, m_log.bore);
        if (!honed || bore == nullptr) return;
        const auto found = m_workbook.hone.ticks.find(m_log.bore);
        const BoreTicks ticks = found == m_workbook.hone.ticks.end() ? BoreTicks() : found->second;
        if (!ticks.portsChamfered && !bore->map.ports.empty())
            m_log.toTick.emplace_back("ports chamfered");
        if (!ticks.washed) m_log.toTick.emplace_back("washed");
    }

    void crosshatch();
    [[nodiscard]] std::optional<Length> finishedSize() const;

    const Workbook& m_workbook;
    const Results& m_results;
    const DisplayUnits& m_units;
    BoreHoneLog m_log;
    const BoreResult* m_read = nullptr; // the last survey that read this bore
    std::string m_survey;
    std::size_t m_open = 0; // passes since
};

// Of the last pass, where that was a finish stone's: what it left on the wall.
void BoreLog::crosshatch() {
    const Pass* last = nullptr;
    for (const LoggedPass& logged : m_log.passes)
        if (!logged.struck)
            last = &*std::ranges::find(m_workbook.hone.passes, logged.pass, &Pass::id);
    const Stone* stone = last != nullptr ? findStone(m_workbook.hone, last->stone) : nullptr;
    if (stone == nullptr || stone->kind != StoneKind::finish || last->windows.empty()) return;
    const Hone& hone = m_workbook.hone.hone;
    const auto speed = last->speedRpm ? last->speedRpm : hone.speedRpm;
    const auto size = finishedSize();
    if (!speed || !size) {
        m_log.crosshatchWords = speed ? "not known: the bore's size is not entered"
                                      : "not known: the spindle's speed is not entered";
        return;
    }
    // The longest window is what most of the wall saw last.
    const auto& window = *std::ranges::max_element(last->windows, {}, [](const StrokeWindow& one) {
        return one.to.value() - one.from.value();
    });
    const auto degrees = crosshatchDegrees(
        {size->in(Unit::millimetre), *speed,
         (window.to.value() - window.from.value()).in(Unit::millimetre), hone.beatsPerMinute});
    if (degrees) m_log.crosshatchDegrees = *degrees;
    m_log.crosshatchWords = degrees ? crosshatchConvention() : degrees.error().message();
}

std::optional<Length> BoreLog::finishedSize() const {
    if (const auto size = honeSize(m_workbook, m_log.bore)) return size;
    const Bore* bore = findBore(m_workbook.block, m_log.bore);
    if (bore == nullptr || !bore->standardSize) return std::nullopt;
    return bore->standardSize->value();
}

bool hasLog(const Workbook& workbook, int bore) {
    return workbook.targets.contains(bore) ||
           std::ranges::any_of(workbook.hone.passes,
                               [&](const Pass& pass) { return pass.bore == bore; });
}

void warn(HoneLog& log) {
    for (const BoreHoneLog& bore : log.bores) {
        for (const std::string& tick : bore.toTick)
            log.warnings.push_back(fmt::format("bore {}: not ticked as {}", bore.bore, tick));
        if (bore.waitsForSurvey)
            log.warnings.push_back(
                fmt::format("bore {}: not measured since the last pass", bore.bore));
        if (std::ranges::any_of(
                bore.passes, [](const LoggedPass& pass) { return pass.simulated && !pass.struck; }))
            log.warnings.push_back(fmt::format(
                "bore {}: passes were simulated by the demonstration, nothing was honed",
                bore.bore));
    }
}

} // namespace

HoneLog honeLogOf(const Workbook& workbook, const Results& results, const DisplayUnits& units) {
    HoneLog log;
    std::set<int> numbers;
    for (const Bore& bore : workbook.block.bores)
        if (hasLog(workbook, bore.number)) numbers.insert(bore.number);
    log.empty = workbook.hone.passes.empty();
    if (numbers.empty()) return log;
    const std::vector<LogEvent> events = orderOfWork(workbook);
    for (const int number : numbers)
        log.bores.push_back(BoreLog(workbook, results, units, number).write(events));
    warn(log);
    if (!log.empty) log.cautions = honingCautions();
    return log;
}

} // namespace borewright
