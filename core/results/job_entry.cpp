// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/results/job_entry.h"

#include "core/results/words.h"

#include <algorithm>

namespace borewright {
namespace {

// The set by which finished bores are judged, where there is no doubt which.
const LimitSet* onlyFinishSet(const Workbook& workbook) {
    const LimitSet* found = nullptr;
    for (const LimitSet& set : workbook.limitSets) {
        if (set.purpose != LimitPurpose::finish) continue;
        if (found != nullptr) return nullptr;
        found = &set;
    }
    return found;
}

std::optional<Length> oversizeIn(const Workbook& workbook, const Bore& bore) {
    const auto target = workbook.targets.find(bore.number);
    if (target != workbook.targets.end()) {
        if (!bore.standardSize) return std::nullopt;
        return target->second.size.value() - bore.standardSize->value();
    }
    const LimitSet* set = onlyFinishSet(workbook);
    if (set == nullptr) return std::nullopt;
    if (set->oversize) return set->oversize->value();
    if (!set->finishSize || !bore.standardSize) return std::nullopt;
    return set->finishSize->value() - bore.standardSize->value();
}

SizeSpan spanOf(const BoreForm& form) {
    return {form.smallest.value, form.largest.value};
}

// Surveys stand in the order made; that counts, whatever the clocks say.
BoreEntry boreEntry(const Workbook& workbook, const Results& results, const Bore& bore) {
    BoreEntry entry;
    entry.bore = bore.number;
    if (bore.standardSize) entry.standardSize = bore.standardSize->value();
    entry.oversize = oversizeIn(workbook, bore);
    for (const SurveyResult& survey : results.surveys) {
        const BoreResult* read = findBoreResult(survey, bore.number);
        if (read == nullptr || !read->form) continue;
        (entry.before ? entry.after : entry.before) = spanOf(*read->form);
        entry.verdict = read->verdict;
    }
    return entry;
}

GaugeEntry gaugeEntry(const Survey& survey, const SurveyResult* result) {
    const SurveyHeader& header = survey.header;
    GaugeEntry entry;
    entry.survey = header.name;
    entry.kind = nameOf(header.kind);
    entry.time = header.time;
    entry.gauge = header.gauge.gauge;
    entry.setOn = header.gauge.setOn;
    entry.lastChecked = header.gauge.gear.lastChecked;
    std::vector<int> bores;
    if (result != nullptr)
        for (const BoreResult& bore : result->bores)
            if (bore.measured > 0 || bore.form) bores.push_back(bore.bore);
    entry.bores = listed(bores);
    return entry;
}

double strokesOf(const Pass& pass, const Hone& hone) {
    double strokes = 0;
    for (const StrokeWindow& window : pass.windows)
        strokes += borewright::strokesOf(window, hone);
    return strokes;
}

// The passes of one stone, an entry a surface; a stone that cut nothing is entered once.
std::vector<StoneEntry> stoneEntries(const Workbook& workbook, const Results& results,
                                     const Stone& stone) {
    std::vector<StoneEntry> entries;
    for (const BoreHoneLog& log : results.hone.bores) {
        const Bore* bore = findBore(workbook.block, log.bore);
        if (bore == nullptr) continue;
        for (const LoggedPass& logged : log.passes) {
            const auto pass = std::ranges::find(workbook.hone.passes, logged.pass, &Pass::id);
            if (pass == workbook.hone.passes.end() || pass->stone != stone.id) continue;
            if (logged.struck || logged.simulated || !logged.tookOff) continue;
            auto entry = std::ranges::find(entries, bore->surface, &StoneEntry::surface);
            if (entry == entries.end())
                entry = entries.insert(entries.end(), {stone.name, stone.grit, bore->surface});
            ++entry->passes;
            entry->strokes += strokesOf(*pass, workbook.hone.hone);
            entry->tookOff += *logged.tookOff;
        }
    }
    if (entries.empty()) {
        const auto& bores = workbook.block.bores;
        entries.push_back(
            {stone.name, stone.grit, bores.empty() ? Surface::iron : bores.front().surface});
    }
    return entries;
}

std::optional<SizeSpan> spanOver(const JobEntry& job, std::optional<SizeSpan> BoreEntry::*which) {
    std::optional<SizeSpan> whole;
    for (const BoreEntry& bore : job.bores) {
        const auto& span = bore.*which;
        if (!span) continue;
        if (!whole) whole = span;
        whole->smallest = std::min(whole->smallest, span->smallest);
        whole->largest = std::max(whole->largest, span->largest);
    }
    return whole;
}

} // namespace

std::optional<double> micrometresPerStroke(const StoneEntry& stone) {
    if (stone.passes == 0 || !(stone.strokes > 0)) return std::nullopt;
    return stone.tookOff.in(Unit::micrometre) / stone.strokes;
}

JobEntry jobEntry(const Workbook& workbook, const Results& results, const std::string& file,
                  std::uint64_t content) {
    JobEntry job;
    job.file = file;
    job.content = content;
    job.customer = workbook.job.customer;
    job.engine = workbook.job.engine;
    job.serial = workbook.job.serial;
    job.units = naturalUnits(workbook);
    job.invented = workbook.invented;
    for (const Bore& bore : workbook.block.bores)
        job.bores.push_back(boreEntry(workbook, results, bore));
    for (const Survey& survey : workbook.surveys) {
        const Timestamp& time = survey.header.time;
        job.opened = job.opened ? std::min(*job.opened, time) : time;
        job.lastSurvey = job.lastSurvey ? std::max(*job.lastSurvey, time) : time;
        job.gauges.push_back(gaugeEntry(survey, findResult(results, survey.header.id)));
    }
    for (const Stone& stone : workbook.hone.stones)
        for (StoneEntry& entry : stoneEntries(workbook, results, stone))
            job.stones.push_back(std::move(entry));
    return job;
}

std::optional<SizeSpan> sizeBefore(const JobEntry& job) {
    return spanOver(job, &BoreEntry::before);
}

std::optional<SizeSpan> sizeAfter(const JobEntry& job) {
    return spanOver(job, &BoreEntry::after);
}

Verdict worstVerdict(const JobEntry& job) {
    if (job.bores.empty()) return Verdict::notMeasured;
    Verdict worst = job.bores.front().verdict;
    for (const BoreEntry& bore : job.bores)
        worst = worse(worst, bore.verdict);
    return worst;
}

std::optional<Length> oversizeOf(const JobEntry& job) {
    std::optional<Length> greatest;
    for (const BoreEntry& bore : job.bores)
        if (bore.oversize && (!greatest || *bore.oversize > *greatest)) greatest = bore.oversize;
    return greatest;
}

std::string_view surfaceName(Surface surface) {
    switch (surface) {
    case Surface::iron:
        return "iron";
    case Surface::ironSleeveInAluminium:
        return "iron sleeve in aluminium";
    case Surface::plated:
        return "plated";
    case Surface::bareAluminium:
        return "bare aluminium";
    }
    return "iron";
}

} // namespace borewright
