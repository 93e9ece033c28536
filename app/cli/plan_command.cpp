// SPDX-License-Identifier: GPL-3.0-or-later
// borewright plan: the next set-up of each bore, and an exit status that a loop can act on.
#include "app/cli/commands.h"
#include "app/cli/common.h"
#include "core/results/hone_outlook.h"

#include <algorithm>
#include <chrono>
#include <fmt/format.h>
#include <ostream>

namespace borewright {
namespace {

Result<HoneWishes> wishesOf(const Workbook& workbook, const NextOptions& options) {
    HoneWishes wishes;
    wishes.oneStone = options.oneStone;
    wishes.noShort = options.noShort;
    wishes.fewerStops = options.fewerStops;
    if (options.fitted.empty()) return wishes;
    const Stone* stone = stoneCalled(workbook.hone, options.fitted);
    if (stone == nullptr) return refuse("--fitted", "there is no stone '" + options.fitted + "'");
    wishes.fitted = stone->id;
    return wishes;
}

// There is work to do; all is done; or neither: measure first, or no way on.
int statusOf(const HoneOutlook& outlook) {
    const auto& bores = outlook.bores;
    if (std::ranges::any_of(
            bores, [](const BoreOutlook& bore) { return bore.next.has_value() || bore.waits; }))
        return exitOutside;
    const bool done = std::ranges::all_of(
        bores, [](const BoreOutlook& bore) { return bore.outcome == HoneOutcome::done; });
    return done && !bores.empty() ? exitWithin : exitUndecided;
}

void list(const std::vector<std::string>& sentences, const char* before, std::ostream& out) {
    for (const std::string& sentence : sentences)
        out << before << sentence << "\n";
}

void printBore(const BoreOutlook& bore, std::ostream& out) {
    out << "Bore " << bore.bore << ": " << bore.headline << "\n";
    if (bore.next && bore.modelOnly) out << "  (model, not measured)\n";
    list(bore.oddities, "  ! ", out);
    if (bore.checked) list(bore.checked->sentences, "  ", out);
    list(bore.sentences, "  ", out);
    if (!bore.outline.empty()) out << "  Later, as it looks now:\n";
    list(bore.outline, "    ", out);
}

void print(const Workbook& workbook, const HoneOutlook& outlook, std::ostream& out) {
    if (outlook.bores.size() != 1 || !outlook.refused.empty())
        out << outlook.headline << (workbook.invented ? " (Invented for demonstration.)" : "")
            << "\n";
    for (const BoreOutlook& bore : outlook.bores)
        printBore(bore, out);
    list(outlook.sentences, "", out);
    for (const StoneOutlook& stone : outlook.stones) {
        out << stone.sentence << "\n";
        if (stone.advice) out << "  " << *stone.advice << "\n";
    }
    list(outlook.cautions, "", out);
}

} // namespace

Result<int> planCommand(const NextOptions& options, const CliOutside& outside) {
    const auto workbook = loadNamed(outside.files, options.file);
    if (!workbook) return tl::unexpected(workbook.error());
    const auto units = chooseUnits(*workbook, options.units);
    if (!units) return tl::unexpected(units.error());
    const auto wishes = wishesOf(*workbook, options);
    if (!wishes) return tl::unexpected(wishes.error());
    std::vector<int> bores;
    if (options.bore != 0) {
        if (findBore(workbook->block, options.bore) == nullptr)
            return refuse("--bore", fmt::format("there is no bore {}", options.bore));
        bores.push_back(options.bore);
    }
    const auto begun = std::chrono::steady_clock::now();
    const Results results = compute(*workbook, *units);
    const HoneOutlook outlook = honeOutlook(*workbook, results, *units, *wishes, bores, false);
    const std::chrono::duration<double> took = std::chrono::steady_clock::now() - begun;
    if (options.json) {
        outside.out << honePlanFile(*workbook, outlook);
    } else {
        print(*workbook, outlook, outside.out);
        outside.out << fmt::format("Planned in {:.1f} s.\n", took.count());
    }
    return statusOf(outlook);
}

} // namespace borewright
