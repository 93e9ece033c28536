// SPDX-License-Identifier: GPL-3.0-or-later
// Blocks and surveys built from the known answer: make a bore with a bell of 2 thou, then find it.
#pragma once

#include "core/workbook/workbook.h"
#include "tests/support/lengths.h"

#include <functional>

namespace borewright::test {

// An inch block of `bores` bores in line, standard 3.5000, depth 4.00, no map, levels as given.
Workbook inchBlock(int bores,
                   const std::vector<std::string>& depths = {"0.5", "1.25", "2", "2.75", "3.5"});

// Adds a survey set on 3.5000 with a tenth dial, readings in thou.
std::string addSurvey(Workbook& workbook, SurveyKind kind, const std::string& name);

// Types a deviation at a station of a survey.
void type(Workbook& workbook, const std::string& survey, int bore, const std::string& depth,
          const std::string& axis, const std::string& thou);

// The deviation, in thou, that a made bore has at a depth (inches) on an axis.
using Shape = std::function<double(double depth_in, const std::string& axis)>;
// Types the whole bore, each reading rounded to a tenth of a thou.
void typeShape(Workbook& workbook, const std::string& survey, int bore, const Shape& shape);

// Adds worn limits: size up to, out-of-round, taper ("" = not given).
LimitSet& addWornLimits(Workbook& workbook, const std::string& size_in,
                        const std::string& round_thou, const std::string& taper_thou);

} // namespace borewright::test
