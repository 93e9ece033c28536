// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/gauging/study.h"

#include "core/statistics/anova.h"
#include "core/statistics/distributions.h"
#include "core/statistics/outliers.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <map>
#include <set>

namespace borewright {
namespace {

constexpr double outlierRisk = 0.01;

// person → spot → readings, µm, with where each came from.
struct Cell {
    std::vector<double> values;
    std::vector<StudyResult::Outlier> places;
};
using Cells = std::map<std::string, std::map<std::string, Cell>>;

Cells cellsOf(const RepeatStudy& study) {
    Cells cells;
    for (std::size_t run = 0; run < study.runs.size(); ++run)
        for (std::size_t i = 0; i < study.runs[run].typed.size(); ++i) {
            Cell& cell = cells[study.runs[run].person][study.runs[run].spot];
            cell.values.push_back(study.runs[run].typed[i].value().in(Unit::micrometre));
            cell.places.push_back({run, i});
        }
    return cells;
}

std::vector<const Cell*> allCells(const Cells& cells) {
    std::vector<const Cell*> all;
    for (const auto& [person, spots] : cells)
        for (const auto& [spot, cell] : spots)
            all.push_back(&cell);
    return all;
}

bool mixesSystems(const RepeatStudy& study) {
    std::set<bool> inch;
    for (const RepeatRun& run : study.runs)
        for (const TypedLength& typed : run.typed)
            inch.insert(isInchFamily(typed.unit()));
    return inch.size() > 1;
}

// Within cells, pooled.
void pool(const std::vector<const Cell*>& cells, StudyResult& result) {
    double squares = 0;
    for (const Cell* cell : cells) {
        result.readings += static_cast<int>(cell->values.size());
        const auto spread = spreadOf(cell->values);
        if (!spread || spread->count < 2) continue;
        result.freedom += spread->count - 1;
        squares += spread->deviation * spread->deviation * (spread->count - 1);
    }
    if (result.freedom > 0) result.repeatability_um = std::sqrt(squares / result.freedom);
}

std::optional<std::vector<std::vector<std::vector<double>>>> crossed(const Cells& cells) {
    std::vector<std::vector<std::vector<double>>> table;
    std::set<std::string> spots;
    for (const auto& [spot, cell] : cells.begin()->second)
        spots.insert(spot);
    if (cells.size() < 2 || spots.size() < 2) return std::nullopt;
    std::size_t repeats = cells.begin()->second.begin()->second.values.size();
    for (const auto& [person, own] : cells) {
        if (own.size() != spots.size()) return std::nullopt;
        table.emplace_back();
        for (const auto& [spot, cell] : own) {
            if (!spots.contains(spot) || cell.values.size() != repeats) return std::nullopt;
            table.back().push_back(cell.values);
        }
    }
    if (repeats < 2) return std::nullopt;
    return table;
}

// Groups by person, or by spot.
std::vector<std::vector<double>> grouped(const Cells& cells, bool byPerson) {
    std::map<std::string, std::vector<double>> groups;
    for (const auto& [person, spots] : cells)
        for (const auto& [spot, cell] : spots) {
            auto& group = groups[byPerson ? person : spot];
            group.insert(group.end(), cell.values.begin(), cell.values.end());
        }
    std::vector<std::vector<double>> list;
    for (auto& [name, values] : groups)
        list.push_back(std::move(values));
    return list;
}

void tellApart(const Cells& cells, StudyResult& result) {
    if (const auto table = crossed(cells)) {
        const auto two = twoWay(*table, Interaction::pooled);
        if (!two) return;
        result.repeatability_um = std::sqrt(two->repeatabilityVariance);
        result.freedom = static_cast<int>(std::lround(two->repeatabilityFreedom));
        result.betweenPeople_um = std::sqrt(two->personVariance);
        result.betweenSpots_um = std::sqrt(two->spotVariance);
        return;
    }
    for (const bool byPerson : {true, false}) {
        const auto groups = grouped(cells, byPerson);
        if (groups.size() < 2) continue;
        const auto one = oneWay(groups);
        if (!one) continue;
        (byPerson ? result.betweenPeople_um : result.betweenSpots_um) =
            std::sqrt(one->betweenVariance);
    }
}

void findOutlier(const std::vector<const Cell*>& cells, StudyResult& result) {
    for (const Cell* cell : cells) {
        const auto suspect = grubbs(cell->values);
        const auto critical =
            grubbsCritical(static_cast<int>(cell->values.size()), outlierRisk, Sides::two);
        if (suspect && critical && suspect->statistic > *critical)
            result.outlier = cell->places[suspect->index];
    }
}

} // namespace

Result<StudyResult> studyOf(const RepeatStudy& study, Length step) {
    if (mixesSystems(study)) return refuse("readings", "inches and millimetres are mixed");
    const Cells cells = cellsOf(study);
    const auto all = allCells(cells);
    StudyResult result;
    pool(all, result);
    if (result.readings < 3) return refuse("readings", "three are the fewest that tell a scatter");
    if (result.freedom < 1) return refuse("readings", "no spot was read twice by the same person");
    tellApart(cells, result);
    const double least = step.in(Unit::micrometre) / std::sqrt(12.0);
    result.belowTheStep = result.repeatability_um < least;
    result.repeatability_um = std::max(result.repeatability_um, least);
    const double nu = result.freedom;
    result.low_um = result.repeatability_um * std::sqrt(nu / chiSquareQuantile(0.975, nu));
    result.high_um = result.repeatability_um * std::sqrt(nu / chiSquareQuantile(0.025, nu));
    findOutlier(all, result);
    return result;
}

std::string studyWords(const StudyResult& result, const DisplayUnits& units) {
    const auto shown = [&](double um) {
        return formatSmall(Length::nearest(um, Unit::micrometre), units, Sign::negative, 2);
    };
    return fmt::format("repeatability {} {} (between {} and {}; {} readings)",
                       shown(result.repeatability_um), symbol(units.small), shown(result.low_um),
                       shown(result.high_um), result.readings);
}

Gear withStudy(const Gear& gear, const StudyResult& result, Unit unit) {
    Gear changed = gear;
    // Rounded to a thousandth of the unit: finer says nothing.
    const Length thousandth = Length::fromPicometres(picometresPer(unit) / 1000);
    const auto steps = static_cast<std::int64_t>(
        std::llround(result.repeatability_um * 1e6 / static_cast<double>(thousandth.picometres())));
    changed.repeatability = typedFrom(std::max<std::int64_t>(1, steps) * thousandth, unit);
    changed.repeatabilityFreedom = result.freedom;
    return changed;
}

} // namespace borewright
