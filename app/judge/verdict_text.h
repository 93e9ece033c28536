// SPDX-License-Identifier: GPL-3.0-or-later
// What the cells and heads of the Judge page's table say.
#pragma once

#include "core/results/results.h"

#include <QString>

#include <optional>

namespace borewright {

// The columns of the table.
namespace columns {
enum : int {
    bore,
    verdict,
    largest,
    smallest,
    mean,
    outOfRound,
    taper,
    lead,
    straight,
    shape,
    toGo,
    read,
    count
};
}

namespace verdict_text {

// The quality that a column judges, if it judges one.
std::optional<Quality> qualityOf(int column);

// "3.4240", "2.9", "7 of 12"; an en dash where there is nothing.
QString cell(const BoreResult& bore, int column, const DisplayUnits& units);

// The cell in words, with doubt, place, limit and verdict: "Bore 4: largest 3.4243 in ± 0.26 thou
// at 0.60 in on B; allowed ≤ 3.4240: outside, 1 chance in 100 that it is within after all".
QString sentence(const BoreResult& bore, int column, const Budget& budget,
                 const DisplayUnits& units);

// "largest, in" ("in ± thou" where the doubt is known) and, on a second line, the limit where every
// bore has the same: "≤ 3.4240".
QString head(int column, const SurveyResult* survey, const DisplayUnits& units);

// The station that earns a cell: where the bore is largest, most out of round … The bore's first
// station where the cell has no place of its own; nothing where nothing was asked for.
std::optional<Station> stationOf(const BoreResult& bore, int column);

} // namespace verdict_text
} // namespace borewright
