// SPDX-License-Identifier: GPL-3.0-or-later
// borewright results: what was computed, for other programs.
#include "app/cli/commands.h"
#include "app/cli/common.h"
#include "core/results/results_file.h"
#include "core/storage/saver.h"

#include <ostream>

namespace borewright {

Result<int> resultsCommand(const ResultsOptions& options, const CliOutside& outside) {
    const bool json = hasExtension(options.target, ".json");
    if (!json && !hasExtension(options.target, ".csv"))
        return refuse(options.target, "the name of the results ends in .json or .csv");
    const auto workbook = loadNamed(outside.files, options.file);
    if (!workbook) return tl::unexpected(workbook.error());
    const auto units = chooseUnits(*workbook, options.units);
    if (!units) return tl::unexpected(units.error());
    std::vector<std::string> ids;
    if (!options.survey.empty()) {
        const auto survey = chooseSurvey(*workbook, options.survey);
        if (!survey) return tl::unexpected(survey.error());
        ids.push_back((*survey)->header.id);
    }
    const Results results = compute(*workbook, *units);
    const std::string text =
        json ? resultsJson(*workbook, results, ids) : resultsCsv(*workbook, results, ids, *units);
    const auto saved = save(outside.files, options.target, text);
    if (!saved) return tl::unexpected(saved.error().within(options.target));
    outside.out << "Wrote " << options.target << ".\n";
    return exitWithin;
}

} // namespace borewright
