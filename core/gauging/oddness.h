// SPDX-License-Identifier: GPL-3.0-or-later
// Readings that were kept but look odd: marked, never refused, never changed.
#pragma once

#include "core/workbook/survey.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace borewright {

// Judges the readings of one survey; built once a survey. The rule stands at oddness() in
// gauging.h. The survey must outlive the judge.
class OddnessJudge {
public:
    explicit OddnessJudge(const Survey& survey);
    [[nodiscard]] std::optional<std::string> reason(const Reading& reading) const;

private:
    struct Known {
        Length depth;
        const std::string* axis;
        Length deviation;
        const Reading* reading;
    };
    [[nodiscard]] std::optional<Length> leastStep(const Reading& reading, Length deviation) const;

    const Survey& m_survey;
    Length m_allowed; // step to every neighbour that is still not odd
    std::map<int, std::vector<Known>> m_bores;
};

} // namespace borewright
