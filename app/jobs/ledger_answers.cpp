// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/jobs/ledger_answers.h"

#include "app/ledger/ledger_totals.h"

namespace borewright {
namespace {

std::optional<Length> smallestOf(const std::optional<SizeSpan>& span) {
    return span ? std::optional(span->smallest) : std::nullopt;
}
std::optional<Length> largestOf(const std::optional<SizeSpan>& span) {
    return span ? std::optional(span->largest) : std::nullopt;
}

// Sizes before and after, smallest and largest.
void addSizes(LedgerSheetRow& row, const std::optional<SizeSpan>& before,
              const std::optional<SizeSpan>& after, const DisplayUnits& units) {
    row.size("smallest_before", smallestOf(before), units, false)
        .size("largest_before", largestOf(before), units)
        .size("smallest_after", smallestOf(after), units, false)
        .size("largest_after", largestOf(after), units);
}

void addEnd(LedgerSheetRow& row, const std::optional<Length>& oversize, Verdict verdict,
            const LedgerRow& job) {
    row.size("oversize", oversize, job.units)
        .text("verdict", std::string(nameOf(verdict)))
        .text("invented", job.invented ? "yes" : "no", false)
        .text("file", job.file);
}

} // namespace

std::string dayOf(const std::optional<Timestamp>& time) {
    return time ? toIso(*time).substr(0, 10) : std::string();
}

Result<LedgerSheet> jobsSheet(LedgerStore& store, const LedgerQuestion& question,
                              const LedgerUnits& units) {
    const auto found = store.find(question);
    if (!found) return tl::unexpected(found.error());
    LedgerSheet sheet;
    for (const LedgerRow& job : *found) {
        LedgerSheetRow row(units);
        row.text("opened", dayOf(job.opened))
            .text("last_survey", dayOf(job.lastSurvey), false)
            .text("customer", job.customer)
            .text("engine", job.engine)
            .text("serial", job.serial)
            .number("bores", job.bores, 0);
        addSizes(row, job.before, job.after, job.units);
        addEnd(row, job.oversize, job.verdict, job);
        sheet.add(std::move(row));
    }
    return sheet;
}

Result<LedgerSheet> neededSheet(LedgerStore& store, const std::string& engine,
                                const LedgerUnits& units) {
    const auto jobs = neededBy(store, engine);
    if (!jobs) return tl::unexpected(jobs.error());
    LedgerSheet sheet;
    for (const auto& [job, bores] : *jobs)
        for (const BoreEntry& bore : bores) {
            LedgerSheetRow row(units);
            row.text("opened", dayOf(job.opened))
                .text("engine", job.engine)
                .text("serial", job.serial)
                .number("bore", bore.bore, 0)
                .size("standard", bore.standardSize, job.units);
            addSizes(row, bore.before, bore.after, job.units);
            addEnd(row, bore.oversize, bore.verdict, job);
            sheet.add(std::move(row));
        }
    return sheet;
}

Result<LedgerSheet> ratesSheet(LedgerStore& store, const std::string& engine,
                               const LedgerUnits& units) {
    const auto rates = stoneRates(store, engine);
    if (!rates) return tl::unexpected(rates.error());
    LedgerSheet sheet;
    for (const StoneRate& rate : *rates) {
        LedgerSheetRow row(units);
        row.text("stone", rate.sum.name)
            .text("grit", rate.sum.grit)
            .text("surface", std::string(surfaceName(rate.sum.surface)))
            .number("jobs", rate.jobs, 0)
            .number("passes", rate.sum.passes, 0)
            .number("strokes", rate.sum.strokes, 1)
            .small("took_off", rate.sum.tookOff, DisplayUnits::metric())
            .perStroke("um_per_stroke", micrometresPerStroke(rate.sum).value_or(0))
            .perStroke("slowest_um_per_stroke", rate.slowest_um)
            .perStroke("fastest_um_per_stroke", rate.fastest_um);
        sheet.add(std::move(row));
    }
    return sheet;
}

Result<LedgerSheet> gaugeSheet(LedgerStore& store, const std::string& gauge,
                               const LedgerUnits& units) {
    const auto touched = touchedBy(store, gauge);
    if (!touched) return tl::unexpected(touched.error());
    LedgerSheet sheet;
    for (const auto& [job, used] : *touched) {
        LedgerSheetRow row(units);
        row.text("read_on", dayOf(used.time))
            .text("gauge", used.gauge)
            .text("set_on", used.setOn)
            .text("last_checked", used.lastChecked)
            .text("survey", used.survey)
            .text("bores", used.bores)
            .text("customer", job.customer)
            .text("engine", job.engine)
            .text("serial", job.serial)
            .text("verdict", std::string(nameOf(job.verdict)))
            .text("file", job.file);
        sheet.add(std::move(row));
    }
    return sheet;
}

} // namespace borewright
