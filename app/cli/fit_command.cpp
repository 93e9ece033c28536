// SPDX-License-Identifier: GPL-3.0-or-later
// borewright fit: a row a bore with its piston and its rings.
#include "app/cli/commands.h"
#include "app/cli/common.h"
#include "core/results/doubt_words.h"
#include "core/results/fit_figures.h"
#include "core/results/fit_words.h"
#include "core/results/results_file.h"

#include <algorithm>
#include <ostream>

namespace borewright {
namespace {

using Cells = std::vector<std::string>;

std::string small(Length length, const std::optional<Length>& doubt, const DisplayUnits& units) {
    const std::string text = format(length, units.small, usualDecimals(units.small), Sign::plain);
    return doubt ? text + " ±" + upward(*doubt, units) : text;
}

Cells heads(const FitResult& fit, const DisplayUnits& units) {
    const std::string unit = ", " + std::string(symbol(units.small));
    Cells cells{"bore", "piston", "clearance" + unit, "at, " + std::string(symbol(units.size))};
    for (const RingDeal& deal : fit.deals) {
        const std::string groove = "groove " + std::to_string(deal.groove);
        cells.push_back(groove);
        cells.push_back("gap" + unit);
        cells.push_back("at, " + std::string(symbol(units.size)));
        cells.push_back("file" + unit);
    }
    cells.emplace_back("verdict");
    return cells;
}

void addRing(Cells& cells, const BoreFit& bore, int groove, const FitRecord& record,
             const DisplayUnits& units) {
    const auto ring = std::ranges::find(bore.rings, groove, &BoreFit::RingHere::groove);
    if (ring == bore.rings.end() || !ring->ring) {
        cells.insert(cells.end(), {"-", "-", "-", "-"});
        return;
    }
    cells.push_back(nameOf(record.rings[*ring->ring]) + (ring->decided ? "" : " ?"));
    if (!ring->gap) {
        cells.insert(cells.end(), {"-", "-", "-"});
        return;
    }
    cells.push_back(small(ring->gap->smallest.gap, wholeDoubt(*ring->gap), units));
    cells.push_back(formatDepth(ring->gap->smallest.depth, units));
    cells.push_back(ring->gap->filing ? small(ring->gap->filing->total, {}, units) : "-");
}

Cells row(const BoreFit& bore, const FitResult& fit, const FitRecord& record,
          const DisplayUnits& units) {
    Cells cells{std::to_string(bore.bore)};
    cells.push_back(bore.piston ? nameOf(record.pistons[*bore.piston]) + (bore.decided ? "" : " ?")
                                : "-");
    if (bore.clearance) {
        cells.push_back(small(bore.clearance->value, wholeDoubt(*bore.clearance), units));
        cells.push_back(formatDepth(bore.clearance->depth, units));
    } else {
        cells.insert(cells.end(), {"-", "-"});
    }
    for (const RingDeal& deal : fit.deals)
        addRing(cells, bore, deal.groove, record, units);
    std::string verdict = bore.clearance ? std::string(nameOf(bore.clearance->verdict)) : "-";
    if (bore.clearance && !bore.clearance->why.empty()) verdict += ": " + bore.clearance->why;
    cells.push_back(verdict);
    return cells;
}

int statusOf(const FitResult& fit) {
    bool undecided = fit.empty || fit.bores.empty();
    const auto count = [&](Verdict verdict) {
        undecided = undecided || verdict != Verdict::within;
        return verdict == Verdict::outside;
    };
    bool outside = false;
    for (const BoreFit& bore : fit.bores) {
        undecided = undecided || !bore.finished || !bore.clearance;
        if (bore.clearance) outside = count(bore.clearance->verdict) || outside;
        for (const BoreFit::RingHere& ring : bore.rings) {
            undecided = undecided || !ring.gap;
            if (!ring.gap) continue;
            outside = count(ring.gap->smallestVerdict) || outside;
            outside = count(ring.gap->largestVerdict) || outside;
        }
    }
    if (outside) return exitOutside;
    return undecided ? exitUndecided : exitWithin;
}

void print(const Workbook& workbook, const FitResult& fit, const DisplayUnits& units,
           std::ostream& out) {
    out << fit.headline << (workbook.invented ? " (Invented for demonstration.)" : "") << "\n";
    if (!fit.empty) {
        std::vector<Cells> table{heads(fit, units)};
        for (const BoreFit& bore : fit.bores)
            table.push_back(row(bore, fit, workbook.fit, units));
        out << alignedTable(table)
            << "Clearance is the least, total, on the diameter, at 20 °C; ? is proposed, not yet "
               "decided.\n";
    }
    for (const std::string& sentence : fit.sentences)
        out << sentence << "\n";
    out << fit.ringHeadline << "\n";
    for (const auto* sentences : {&fit.ringSentences, &fit.cautions})
        for (const std::string& sentence : *sentences)
            out << sentence << "\n";
}

} // namespace

Result<int> fitCommand(const FitCommandOptions& options, const CliOutside& outside) {
    const auto workbook = loadNamed(outside.files, options.file);
    if (!workbook) return tl::unexpected(workbook.error());
    const auto units = chooseUnits(*workbook, options.units);
    if (!units) return tl::unexpected(units.error());
    const Results results = compute(*workbook, *units);
    if (options.json)
        outside.out << fitFile(*workbook, results);
    else
        print(*workbook, results.fit, *units, outside.out);
    return statusOf(results.fit);
}

} // namespace borewright
