// SPDX-License-Identifier: GPL-3.0-or-later
// Where the gauge's zero was at any moment of a survey, from its checks on the master. Between two
// checks zero is taken to have wandered evenly; a step beyond the limit was a knock and is not
// spread over anything.
#pragma once

#include "core/workbook/survey.h"

#include <optional>
#include <vector>

namespace borewright {

class ZeroHistory {
public:
    // Zero stood right when the survey began; checks count in the order of their times, those
    // before the start as at the start.
    explicit ZeroHistory(const SurveyHeader& survey);

    // What zero showed at a moment, as a change of the bore it would fake (plus = larger); to be
    // taken off the reading. After the last check it stays; without checks it is 0. Inside a knock
    // it is what it was before.
    [[nodiscard]] Length at(Timestamp time) const;

    // Zero moved by more than the limit between two checks.
    struct Knock {
        Timestamp from;
        Timestamp to;
        Length moved; // plus = later readings too large
    };
    [[nodiscard]] const std::vector<Knock>& knocks() const { return m_knocks; }
    [[nodiscard]] bool insideKnock(Timestamp time) const;

    // How a reading at a moment hangs on the checks: D = … − Σ share·check. At most two.
    struct Share {
        std::size_t check; // in order of time
        double share;
    };
    [[nodiscard]] std::vector<Share> shares(Timestamp time) const;
    // Half of what zero moved between the two checks around a moment: how far the even wander may
    // be wrong there, ±, limits. 0 where there is no check after it.
    [[nodiscard]] Length wanderDoubt(Timestamp time) const;
    // Whether a check followed that moment.
    [[nodiscard]] bool checkedAfter(Timestamp time) const;
    [[nodiscard]] std::size_t checks() const { return m_nodes.size() - 1; }

private:
    struct Node {
        Timestamp time;
        Length arrived; // where zero was found
        Length left;    // where it was after: found, or 0 where the gauge was set again
    };
    // The node at or before a moment.
    [[nodiscard]] std::size_t before(Timestamp time) const;
    [[nodiscard]] bool isKnock(std::size_t from) const;
    [[nodiscard]] double along(std::size_t from, Timestamp time) const;

    Length m_limit;
    std::vector<Node> m_nodes; // the start first
    std::vector<Knock> m_knocks;
};

// What zero may move between two checks before the gauge is to be set again: the gear's own limit,
// else 0.2 thou, or 5 µm on a metric dial, but no less than the dial's graduation (common practice,
// no source).
Length driftLimitOf(const GaugeSetting& gauge);

} // namespace borewright
