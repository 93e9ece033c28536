// SPDX-License-Identifier: GPL-3.0-or-later
// borewright sizes: a row a bore, a column a size, and which size cleans up the block.
#include "app/cli/commands.h"
#include "app/cli/common.h"
#include "core/results/results_file.h"

#include <algorithm>
#include <ostream>

namespace borewright {
namespace {

using Cells = std::vector<std::string>;

std::string size(const Length& length, const DisplayUnits& units) {
    return format(length, units.size, usualDecimals(units.size), Sign::plain);
}

// "4.0", "-6.0" (does not clean), "0.1 ?" (too close to call), "-" (not known).
std::string margin(const SizeCell& cell, const DisplayUnits& units) {
    if (cell.cleans == Cleans::unknown) return "-";
    const std::string text =
        format(cell.margin, units.small, usualDecimals(units.small), Sign::plain);
    return cell.cleans == Cleans::tooClose ? text + " ?" : text;
}

Cells heads(const SizingResult& sizing, const DisplayUnits& units) {
    const std::string unit = ", " + std::string(symbol(units.size));
    Cells cells{"bore", "largest" + unit, "on the worn bore" + unit, "on the original axis" + unit};
    for (const OfferResult& offer : sizing.choice.offers)
        cells.push_back(offer.offer.name + (offer.offer.beyondGreatest ? " (not advised)" : ""));
    cells.emplace_back("decided by");
    return cells;
}

Cells row(const SizingResult& sizing, std::size_t b, const DisplayUnits& units) {
    Cells cells{std::to_string(sizing.bores[b])};
    if (const auto& cleanUp = sizing.cleanUps[b]) {
        cells.push_back(size(cleanUp->largest.diameter, units));
        cells.push_back(size(cleanUp->wornBore.size, units));
        cells.push_back(cleanUp->originalAxis ? size(cleanUp->originalAxis->size, units) : "-");
    } else {
        cells.insert(cells.end(), {"-", "-", "-"});
    }
    for (const OfferResult& offer : sizing.choice.offers)
        cells.push_back(margin(offer.cells[b], units));
    cells.push_back(sizing.boreWords[b]);
    return cells;
}

int statusOf(const Workbook& workbook, const SizingResult& sizing) {
    const SizeChoice& choice = sizing.choice;
    if (choice.offers.empty() || sizing.bores.empty()) return exitUndecided;
    const bool allKnown =
        std::ranges::all_of(sizing.cleanUps, [](const auto& one) { return one && one->complete; });
    for (std::size_t b = 0; b < sizing.bores.size(); ++b) {
        if (!choice.beyond[b]) continue;
        // One that the last size may yet clean is not decided.
        const bool perhaps = std::ranges::any_of(choice.offers, [&](const OfferResult& offer) {
            return !offer.offer.beyondGreatest && offer.cells[b].cleans == Cleans::tooClose;
        });
        if (!perhaps) return exitOutside;
    }
    const bool chosen =
        workbook.sizing.ownSizes
            ? std::ranges::all_of(choice.own, [](const auto& own) { return own.has_value(); })
            : choice.chosen && std::ranges::none_of(choice.beyond, [](bool one) { return one; });
    return allKnown && chosen ? exitWithin : exitUndecided;
}

void print(const Workbook& workbook, const SizingResult& sizing, const DisplayUnits& units,
           std::ostream& out) {
    out << sizing.headline << (workbook.invented ? " (Invented for demonstration.)" : "") << "\n";
    std::vector<Cells> table{heads(sizing, units)};
    for (std::size_t b = 0; b < sizing.bores.size(); ++b)
        table.push_back(row(sizing, b, units));
    out << alignedTable(table);
    if (!sizing.choice.offers.empty())
        out << "Margins under each size in " << symbol(units.small)
            << "; ? is too close to call, minus does not clean up.\n";
    for (const auto* sentences : {&sizing.sentences, &sizing.how, &sizing.cautions})
        for (const std::string& sentence : *sentences)
            out << sentence << "\n";
}

} // namespace

Result<int> sizesCommand(const SizesOptions& options, const CliOutside& outside) {
    const auto workbook = loadNamed(outside.files, options.file);
    if (!workbook) return tl::unexpected(workbook.error());
    const auto units = chooseUnits(*workbook, options.units);
    if (!units) return tl::unexpected(units.error());
    const Results results = compute(*workbook, *units);
    if (options.json)
        outside.out << sizingFile(*workbook, results);
    else
        print(*workbook, results.sizing, *units, outside.out);
    return statusOf(*workbook, results.sizing);
}

} // namespace borewright
