// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/results/fit_bores.h"

#include "core/results/size_offers.h"
#include "core/results/sizing_words.h"

#include <algorithm>
#include <fmt/format.h>

namespace borewright {
namespace {

struct Read {
    BoreFit bore;
    std::optional<MeasuredBore> measured;
    bool underWay = false; // its survey is a check
};

const SurveyResult* lastAsFound(const Workbook& workbook, const Results& results, int bore) {
    for (auto survey = results.surveys.rbegin(); survey != results.surveys.rend(); ++survey) {
        const Survey* found = findSurvey(workbook, survey->survey);
        const BoreResult* read = findBoreResult(*survey, bore);
        if (found != nullptr && purposeOf(found->header.kind) == LimitPurpose::worn &&
            read != nullptr && read->measured > 0)
            return &*survey;
    }
    return nullptr;
}

Read readNow(const Workbook& workbook, const Results& results, const BoreStory& story) {
    Read now;
    now.bore.bore = story.bore;
    const SurveyResult* survey = story.nowSurvey ? findResult(results, *story.nowSurvey)
                                                 : lastAsFound(workbook, results, story.bore);
    const BoreResult* read = survey != nullptr ? findBoreResult(*survey, story.bore) : nullptr;
    if (read == nullptr) return now;
    now.measured = measuredBore(workbook, *survey, *read);
    if (!now.measured) return now;
    const SurveyKind kind = findSurvey(workbook, survey->survey)->header.kind;
    now.bore.survey = survey->survey;
    now.bore.finished = kind == SurveyKind::final;
    now.underWay = kind == SurveyKind::check;
    return now;
}

// No piston that could go in does.
bool tooSmallForAll(const MeasuredBore& bore, const FitRecord& record) {
    std::optional<Length> smallest, narrowest;
    for (const Piston& piston : record.pistons) {
        if (piston.bore && *piston.bore != bore.bore) continue;
        if (const auto size = sizeOf(piston))
            smallest = std::min(smallest.value_or(size->at20), size->at20);
    }
    for (const MeasuredAt& at : bore.at)
        if (at.zone != Zone::ridgeLand)
            narrowest = std::min(narrowest.value_or(at.diameter), at.diameter);
    return smallest && narrowest && *narrowest <= *smallest;
}

bool isToHone(const Workbook& workbook, const Read& read, bool anyFinished, bool anyRead) {
    if (read.bore.finished) return false;
    if (anyFinished || read.underWay || workbook.targets.contains(read.bore.bore)) return true;
    if (!read.measured) return !anyRead && !workbook.fit.pistons.empty();
    return tooSmallForAll(*read.measured, workbook.fit);
}

// Leaves out what must not be advised, and says so.
class Advice {
public:
    Advice(const Workbook& workbook, const SizingResult& sizing, const DisplayUnits& units,
           FitResult& fit)
        : m_workbook(workbook)
        , m_sizing(sizing)
        , m_units(units)
        , m_fit(fit) {}

    bool mayBeAdvised(const FinishForPiston& one) {
        const Piston& piston = m_workbook.fit.pistons[one.piston];
        const std::string start =
            fmt::format("Bore {}: {} asks for {}, ", one.bore,
                        "piston " + (piston.label.empty() ? piston.id : piston.label),
                        sizeWithUnit(one.finish, m_units));
        if (isBeyondGreatest(m_workbook, one.bore, one.finish)) {
            m_fit.finishWarnings.push_back(
                start + "which is not known to be within the engine maker's greatest oversize.");
            return false;
        }
        const BoreCleanUp* cleanUp = cleanUpOfBore(one.bore);
        if (cleanUp == nullptr) return true;
        const CleanUp& needs = cleanUpBy(*cleanUp, m_sizing.centring);
        const Length margin = one.finish - needs.size - m_sizing.finishAllowance;
        const Length guard = guardBand(needs, DecisionRule());
        if (margin < -guard)
            m_fit.finishWarnings.push_back(
                start + "which does not clean it up: it lacks " +
                marginWords(-margin, needs.u, cleanUp->coverage, m_units) + ".");
        else if (margin < guard)
            m_fit.finishWarnings.push_back(
                start + "and whether that cleans it up is too close to call, margin " +
                marginWords(margin, needs.u, cleanUp->coverage, m_units) + ".");
        return margin >= -guard;
    }

private:
    [[nodiscard]] const BoreCleanUp* cleanUpOfBore(int bore) const {
        for (const auto& one : m_sizing.cleanUps)
            if (one && one->bore == bore) return &*one;
        return nullptr;
    }

    const Workbook& m_workbook;
    const SizingResult& m_sizing;
    const DisplayUnits& m_units;
    FitResult& m_fit;
};

} // namespace

void measureForFit(const Workbook& workbook, const Results& results, FitResult& fit) {
    std::vector<Read> reads;
    for (const BoreStory& story : results.stories)
        reads.push_back(readNow(workbook, results, story));
    const bool anyFinished =
        std::ranges::any_of(reads, [](const Read& read) { return read.bore.finished; });
    const bool anyRead =
        std::ranges::any_of(reads, [](const Read& read) { return read.measured.has_value(); });
    for (Read& read : reads) {
        read.bore.toHone = isToHone(workbook, read, anyFinished, anyRead);
        if (read.measured && !read.bore.toHone) fit.measured.push_back(std::move(*read.measured));
        fit.bores.push_back(std::move(read.bore));
    }
}

void finishByPistons(const Workbook& workbook, const Results& results, const DisplayUnits& units,
                     FitResult& fit) {
    FitRecord record = workbook.fit; // with the pistons of measured bores in them
    std::vector<int> toFinish;
    for (const BoreFit& bore : fit.bores) {
        if (bore.toHone) toFinish.push_back(bore.bore);
        if (!bore.toHone && bore.piston) record.pistons[*bore.piston].bore = bore.bore;
    }
    if (toFinish.empty() || record.pistons.empty()) return;
    auto finish = finishForPistons(toFinish, record);
    if (!finish) {
        fit.finishRefused = finish.error().message();
        return;
    }
    Advice advice(workbook, results.sizing, units, fit);
    for (FinishForPiston& one : *finish)
        if (advice.mayBeAdvised(one)) fit.finish.push_back(std::move(one));
}

} // namespace borewright
