// SPDX-License-Identifier: GPL-3.0-or-later
// Makes surveys from tables: a text a row, an axis a row, cells apart by spaces, "x" for a cell
// that was left empty. Times run a few seconds apart in the order of the hand.
#pragma once

#include "core/workbook/workbook.h"

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace borewright::demo {

// A literal of the tables; the text is known to be good.
TypedLength typed(std::string_view text, Unit unit);

class SurveyBuilder {
public:
    SurveyBuilder(const Block& block, SurveyHeader header, Unit unit);

    // Readings of a bore on axes A and B, a cell a level; `prefix` stands before each cell's text.
    SurveyBuilder& bore(int number, std::string_view a, std::string_view b,
                        const std::string& prefix = {});
    // Strikes out all that was typed for a bore so far, and lets `seconds` pass.
    SurveyBuilder& strike(int number, const std::string& reason, int seconds);
    SurveyBuilder& pass(int seconds);
    // The gauge put back on its master.
    SurveyBuilder& zeroCheck(std::string_view shows);
    Survey take() { return std::move(m_survey); }

private:
    const Block& m_block;
    Survey m_survey;
    Unit m_unit;
    Timestamp m_now;
};

} // namespace borewright::demo
