// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/gauging/zero_history.h"

#include <algorithm>

namespace borewright {

Length driftLimitOf(const GaugeSetting& gauge) {
    if (gauge.gear.driftLimit) return gauge.gear.driftLimit->value();
    const Length usual = isInchFamily(gauge.dial.graduation.unit())
                             ? Length::whole(2, Unit::tenth)
                             : Length::whole(5, Unit::micrometre);
    return std::max(usual, gauge.dial.graduation.value());
}

ZeroHistory::ZeroHistory(const SurveyHeader& survey)
    : m_limit(driftLimitOf(survey.gauge))
    , m_nodes{{survey.time, {}, {}}} {
    const bool plus = survey.gauge.dial.larger == Dial::Larger::plus;
    std::vector<ZeroCheck> checks = survey.zeroChecks;
    std::ranges::stable_sort(checks, {}, &ZeroCheck::time);
    for (const ZeroCheck& check : checks) {
        const Length shown = plus ? check.shows.value() : -check.shows.value();
        m_nodes.push_back({std::max(check.time, survey.time), shown, shown});
    }
    for (std::size_t i = 1; i < m_nodes.size(); ++i) {
        const Length moved = m_nodes[i].arrived - m_nodes[i - 1].left;
        if (moved.magnitude() <= m_limit) continue;
        m_knocks.push_back({m_nodes[i - 1].time, m_nodes[i].time, moved});
        // After a knock he sets the gauge again, unless the next check shows that he did not.
        const bool stayed =
            i + 1 < m_nodes.size() && (m_nodes[i + 1].arrived - m_nodes[i].arrived).magnitude() <
                                          m_nodes[i + 1].arrived.magnitude();
        if (!stayed) m_nodes[i].left = {};
    }
}

std::size_t ZeroHistory::before(Timestamp time) const {
    std::size_t at = 0;
    while (at + 1 < m_nodes.size() && m_nodes[at + 1].time <= time)
        ++at;
    return at;
}

bool ZeroHistory::isKnock(std::size_t from) const {
    return from + 1 < m_nodes.size() &&
           (m_nodes[from + 1].arrived - m_nodes[from].left).magnitude() > m_limit;
}

double ZeroHistory::along(std::size_t from, Timestamp time) const {
    const auto span =
        m_nodes[from + 1].time.secondsSinceEpoch - m_nodes[from].time.secondsSinceEpoch;
    const auto gone = time.secondsSinceEpoch - m_nodes[from].time.secondsSinceEpoch;
    if (gone < 0) return 0; // read before it all began: zero stood right
    if (span <= 0) return 1;
    return std::clamp(static_cast<double>(gone) / static_cast<double>(span), 0.0, 1.0);
}

Length ZeroHistory::at(Timestamp time) const {
    const std::size_t from = before(time);
    const Node& node = m_nodes[from];
    if (from + 1 == m_nodes.size() || isKnock(from)) return node.left;
    const double moved_um = (m_nodes[from + 1].arrived - node.left).in(Unit::micrometre);
    return node.left + Length::nearest(along(from, time) * moved_um, Unit::micrometre);
}

bool ZeroHistory::insideKnock(Timestamp time) const {
    return isKnock(before(time));
}

std::vector<ZeroHistory::Share> ZeroHistory::shares(Timestamp time) const {
    const std::size_t from = before(time);
    std::vector<Share> shares;
    const bool between = from + 1 < m_nodes.size() && !isKnock(from);
    const double later = between ? along(from, time) : 0;
    // The start is the setting itself, whose scatter is counted there; so is a gauge set again.
    if (from > 0 && m_nodes[from].left == m_nodes[from].arrived && later < 1)
        shares.push_back({from - 1, 1 - later});
    if (later > 0) shares.push_back({from, later});
    return shares;
}

Length ZeroHistory::wanderDoubt(Timestamp time) const {
    const std::size_t from = before(time);
    if (from + 1 == m_nodes.size() || isKnock(from)) return {};
    const Length moved = (m_nodes[from + 1].arrived - m_nodes[from].left).magnitude();
    return Length::fromPicometres(divideHalfToEven(moved.picometres(), 2));
}

bool ZeroHistory::checkedAfter(Timestamp time) const {
    const std::size_t from = before(time);
    return from + 1 < m_nodes.size() && !isKnock(from);
}

} // namespace borewright
