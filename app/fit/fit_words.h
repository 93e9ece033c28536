// SPDX-License-Identifier: GPL-3.0-or-later
// What the Fit page says of one piston, one pair, one ring in its bore.
#pragma once

#include "app/document/document.h"

#include <QModelIndex>
#include <QStringList>

namespace borewright {

class MatchModel;

namespace fit_words {

// "3", else "row 3" where nothing is scribed on it.
QString shortPiston(const FitRecord& fit, std::size_t piston);
// "Piston 3: 3.4360 in, measured at 0.60 in from the skirt's end with micrometer 3-4 at 20 °C."
QString piston(const FitRecord& fit, std::size_t piston, const DisplayUnits& units);

// A cell of the matching in sentences: what it is; its clearance, where, the verdict; what this
// piston here would cost.
QStringList pair(const MatchModel& model, const Document& document, const QModelIndex& index);

// "Piston 4 gets no clearance: the height it was measured at is not given." Empty where every one
// has its height.
QString withoutHeight(const FitRecord& fit);

// "thou", "µm": the unit of clearances and gaps.
QString smallUnit(const Document& document);
// Sentences one behind another.
QString together(const std::vector<std::string>& sentences);

} // namespace fit_words
} // namespace borewright
