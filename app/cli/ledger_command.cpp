// SPDX-License-Identifier: GPL-3.0-or-later
// borewright ledger: all jobs of the shop, and what a rebuilder asks of them.
#include "app/cli/commands.h"
#include "app/cli/ledger_sheet.h"
#include "app/ledger/ledger_rebuild.h"
#include "app/ledger/ledger_totals.h"
#include "app/shell/system_outside.h"

#include <QCoreApplication>
#include <QDir>
#include <QFileInfo>

#include <optional>
#include <ostream>

namespace borewright {
namespace {

using Asked = LedgerOptions::Asked;
using Sheet = Result<LedgerSheet>;

std::string dayOf(const std::optional<Timestamp>& time) {
    return time ? toIso(*time).substr(0, 10) : std::string();
}

std::optional<Length> smallestOf(const std::optional<SizeSpan>& span) {
    return span ? std::optional(span->smallest) : std::nullopt;
}
std::optional<Length> largestOf(const std::optional<SizeSpan>& span) {
    return span ? std::optional(span->largest) : std::nullopt;
}

// One question to one ledger.
class Answer {
public:
    Answer(LedgerStore& store, const LedgerOptions& options)
        : m_store(store)
        , m_options(options) {
        if (options.units == "inch") m_fixed = DisplayUnits::inch();
        if (options.units == "metric") m_fixed = DisplayUnits::metric();
    }

    Sheet jobs(const std::string& text) {
        const auto found = m_store.find({text, LedgerColumn::opened, true, -1});
        if (!found) return tl::unexpected(found.error());
        LedgerSheet sheet;
        for (const LedgerRow& job : *found) {
            LedgerSheetRow row(m_fixed);
            row.text("opened", dayOf(job.opened))
                .text("last_survey", dayOf(job.lastSurvey), false)
                .text("customer", job.customer)
                .text("engine", job.engine)
                .text("serial", job.serial)
                .number("bores", job.bores, 0)
                .size("smallest_before", smallestOf(job.before), job.units, false)
                .size("largest_before", largestOf(job.before), job.units)
                .size("smallest_after", smallestOf(job.after), job.units, false)
                .size("largest_after", largestOf(job.after), job.units);
            ending(row, job.oversize, job.verdict, job);
            sheet.add(std::move(row));
        }
        return sheet;
    }

    Sheet needed() {
        const auto jobs = neededBy(m_store, m_options.engine);
        if (!jobs) return tl::unexpected(jobs.error());
        LedgerSheet sheet;
        for (const auto& [job, bores] : *jobs)
            for (const BoreEntry& bore : bores) {
                LedgerSheetRow row(m_fixed);
                row.text("opened", dayOf(job.opened))
                    .text("engine", job.engine)
                    .text("serial", job.serial)
                    .number("bore", bore.bore, 0)
                    .size("standard", bore.standardSize, job.units)
                    .size("smallest_before", smallestOf(bore.before), job.units, false)
                    .size("largest_before", largestOf(bore.before), job.units)
                    .size("smallest_after", smallestOf(bore.after), job.units, false)
                    .size("largest_after", largestOf(bore.after), job.units);
                ending(row, bore.oversize, bore.verdict, job);
                sheet.add(std::move(row));
            }
        return sheet;
    }

    Sheet rates() {
        const auto rates = stoneRates(m_store, m_options.engine);
        if (!rates) return tl::unexpected(rates.error());
        LedgerSheet sheet;
        for (const StoneRate& rate : *rates) {
            LedgerSheetRow row(m_fixed);
            row.text("stone", rate.sum.name)
                .text("grit", rate.sum.grit)
                .text("surface", std::string(surfaceName(rate.sum.surface)))
                .number("jobs", rate.jobs, 0)
                .number("passes", rate.sum.passes, 0)
                .number("strokes", rate.sum.strokes, 1)
                .small("took_off", rate.sum.tookOff, DisplayUnits::metric())
                .number("um_per_stroke", micrometresPerStroke(rate.sum).value_or(0), 3)
                .number("slowest_um_per_stroke", rate.slowest_um, 3)
                .number("fastest_um_per_stroke", rate.fastest_um, 3);
            sheet.add(std::move(row));
        }
        return sheet;
    }

    Sheet gauge() {
        const auto touched = touchedBy(m_store, m_options.gauge);
        if (!touched) return tl::unexpected(touched.error());
        LedgerSheet sheet;
        for (const auto& [job, gauge] : *touched) {
            LedgerSheetRow row(m_fixed);
            row.text("read_on", dayOf(gauge.time))
                .text("gauge", gauge.gauge)
                .text("set_on", gauge.setOn)
                .text("last_checked", gauge.lastChecked)
                .text("survey", gauge.survey)
                .text("bores", gauge.bores)
                .text("customer", job.customer)
                .text("engine", job.engine)
                .text("serial", job.serial)
                .text("verdict", std::string(nameOf(job.verdict)))
                .text("file", job.file);
            sheet.add(std::move(row));
        }
        return sheet;
    }

private:
    static void ending(LedgerSheetRow& row, const std::optional<Length>& oversize, Verdict verdict,
                       const LedgerRow& job) {
        row.size("oversize", oversize, job.units)
            .text("verdict", std::string(nameOf(verdict)))
            .text("invented", job.invented ? "yes" : "no", false)
            .text("file", job.file);
    }

    LedgerStore& m_store;
    const LedgerOptions& m_options;
    std::optional<DisplayUnits> m_fixed;
};

// A job is told apart by its file, so its folder is named the same from wherever it is named.
std::string absolute(const std::string& path) {
    return QDir::cleanPath(QFileInfo(QString::fromStdString(path)).absoluteFilePath())
        .toStdString();
}

Result<Rebuilt> rebuild(LedgerStore& store, const LedgerOptions& options,
                        const CliOutside& outside) {
    std::vector<std::string> folders;
    for (const std::string& folder : options.folders)
        folders.push_back(absolute(folder));
    if (folders.empty()) {
        const auto known = store.folders();
        if (!known) return tl::unexpected(known.error());
        folders = *known;
    }
    if (folders.empty()) folders.push_back(workbookFolder().toStdString());
    return rebuildLedger(store, outside.files, folders);
}

int told(const Rebuilt& rebuilt, std::ostream& out) {
    for (const UnreadFile& unread : rebuilt.unread)
        out << "Not read: " << unread.file << ": " << unread.reason << "\n";
    out << "Took in " << rebuilt.taken << (rebuilt.taken == 1 ? " workbook" : " workbooks");
    if (rebuilt.gone > 0) out << "; took out " << rebuilt.gone << " whose file is gone";
    out << ".\n";
    return rebuilt.unread.empty() ? exitWithin : exitUndecided;
}

Result<int> answer(LedgerStore& store, const LedgerOptions& options, std::ostream& out) {
    Answer asked(store, options);
    std::string words;
    for (const std::string& word : options.words)
        words += word + ' ';
    const bool needed = options.asked == Asked::needed;
    const bool rates = options.asked == Asked::rates;
    const bool gauge = options.asked == Asked::gauge;
    const Sheet sheet = needed  ? asked.needed()
                        : rates ? asked.rates()
                        : gauge ? asked.gauge()
                                : asked.jobs(words);
    const char* list = needed ? "bores" : rates ? "stones" : gauge ? "surveys" : "jobs";
    if (!sheet) return tl::unexpected(sheet.error());
    if (options.json)
        out << sheet->json(list);
    else if (options.csv)
        out << sheet->csv();
    else
        out << (sheet->empty() ? "Nothing found.\n" : sheet->table());
    return sheet->empty() ? exitOutside : exitWithin;
}

} // namespace

Result<int> ledgerCommand(const LedgerOptions& options, const CliOutside& outside) {
    // The database's driver is found through an application object; none is there in a script.
    int count = 1;
    char name[] = "borewright";
    char* arguments[] = {name, nullptr};
    std::optional<QCoreApplication> own;
    if (QCoreApplication::instance() == nullptr) own.emplace(count, arguments);

    const auto place = options.ledger.empty() ? Result<LedgerPlace>(usualLedger())
                                              : ledgerPlaceFrom(options.ledger);
    if (!place) return tl::unexpected(place.error());
    const auto store =
        LedgerStore::open(*place, options.asked == Asked::rebuild ? LedgerStore::Check::whole
                                                                  : LedgerStore::Check::beginning);
    if (!store) return tl::unexpected(store.error());
    if (!(*store)->notice().empty()) outside.err << (*store)->notice() << "\n";
    if (options.asked == Asked::rebuild || (*store)->isNew()) {
        const auto rebuilt = rebuild(**store, options, outside);
        if (!rebuilt) return tl::unexpected(rebuilt.error());
        const bool asked = options.asked == Asked::rebuild;
        const int status = told(*rebuilt, asked ? outside.out : outside.err);
        if (asked) return status;
    }
    return answer(**store, options, outside.out);
}

} // namespace borewright
