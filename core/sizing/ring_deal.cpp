// SPDX-License-Identifier: GPL-3.0-or-later
// Rings of one groove dealt to bores: a table of departures, and the assignment that is best on it.
#include "core/sizing/guarded.h"
#include "core/sizing/matching.h"
#include "core/sizing/ring_gap.h"
#include "core/sizing/ring_lies.h"

#include <algorithm>
#include <fmt/format.h>
#include <map>
#include <set>

namespace borewright {
namespace {

using Bores = std::vector<const MeasuredBore*>;

std::string counted(std::size_t count, const char* what) {
    return fmt::format("{} {}{}", count, what, count == 1 ? "" : "s");
}

const MeasuredBore* find(const Bores& bores, int number) {
    const auto found = std::ranges::find(bores, number, &MeasuredBore::bore);
    return found == bores.end() ? nullptr : *found;
}

// Places of rings in the order that they would be laid out in, as pistons are.
std::vector<std::size_t> layOut(const std::vector<Ring>& rings) {
    std::vector<Piston> likePistons(rings.size());
    for (std::size_t i = 0; i < rings.size(); ++i) {
        likePistons[i].id = rings[i].id;
        likePistons[i].label = rings[i].label;
        likePistons[i].size = rings[i].gap;
    }
    return ownOrder(likePistons);
}

// One groove's rings and the bores they go in.
class Dealer {
public:
    Dealer(const Bores& bores, const FitRecord& fit, bool inches,
           const std::optional<DisplayUnits>& units, int groove)
        : m_bores(bores)
        , m_fit(fit)
        , m_step(fileStepOf(fit, inches))
        , m_units(units) {
        m_deal.groove = groove;
        for (const MeasuredBore* bore : bores)
            m_deal.bores.push_back(bore->bore);
        m_deal.ring.resize(bores.size());
        m_deal.gap.resize(bores.size());
        m_deal.refused.resize(bores.size());
    }

    RingDeal deal() && {
        sortOut();
        reckonEnds();
        dropHopeless();
        if (m_free.empty()) return std::move(m_deal);
        if (const auto aim = aimOf(); !aim)
            m_deal.why = "no gap to aim at: give the engine maker's limits";
        else if (m_free.size() > static_cast<std::size_t>(mostRows))
            m_deal.why = fmt::format("more than {} bores", mostRows);
        else if (m_rings.size() < m_free.size())
            m_deal.why = tooFew();
        else
            assignFree(*aim);
        return std::move(m_deal);
    }

private:
    [[nodiscard]] std::optional<Length> aimOf() const {
        if (const auto aim = borewright::aimOf(m_fit.ringGap)) return aim;
        if (!m_fit.ringGap.lower) return std::nullopt;
        return m_fit.ringGap.lower->value();
    }

    [[nodiscard]] Result<const MeasuredBore*> measuredIn(const Ring& ring) const {
        if (!ring.measuredIn)
            return refuse(called(ring), "the bore it was measured in is not given");
        const MeasuredBore* measured = find(m_bores, *ring.measuredIn);
        if (measured == nullptr)
            return refuse(called(ring), fmt::format("bore {}, in which it was measured, was not "
                                                    "read",
                                                    *ring.measuredIn));
        return measured;
    }

    [[nodiscard]] Result<RingGap> gapOf(std::size_t bore, std::size_t ring) const {
        const Ring& which = m_fit.rings[ring];
        const auto measured = measuredIn(which);
        if (!measured) return tl::unexpected(measured.error());
        return ringGapOf(*m_bores[bore], **measured, which, m_fit.ringGap, m_step, m_units);
    }

    // A gap is the ring's where it was measured, and the bore's where it is narrowest: each is
    // reckoned once, not for every pair.
    void reckonEnds() {
        for (const std::size_t bore : m_free)
            m_narrowest.emplace(bore, narrowestOf(*m_bores[bore]));
        for (const std::size_t ring : m_rings)
            m_start.emplace(ring, startOf(m_fit.rings[ring]));
    }

    [[nodiscard]] Result<Length> startOf(const Ring& ring) const {
        const auto measured = measuredIn(ring);
        if (!measured) return tl::unexpected(measured.error());
        const auto start = measuredWhere(**measured, ring, m_units);
        if (!start) return tl::unexpected(start.error());
        return start->diameter;
    }

    [[nodiscard]] Length smallestGap(std::size_t bore, std::size_t ring) const {
        return m_fit.rings[ring].gap->value() +
               growthOfGap(*m_narrowest.at(bore) - *m_start.at(ring));
    }

    [[nodiscard]] std::string refusalOf(std::size_t bore, std::size_t ring) const {
        const Result<Length>& start = m_start.at(ring);
        return (start ? m_narrowest.at(bore) : start).error().message();
    }

    void place(std::size_t bore, std::size_t ring, Result<RingGap> gap) {
        m_deal.ring[bore] = ring;
        if (gap)
            m_deal.gap[bore] = std::move(*gap);
        else
            m_deal.refused[bore] = gap.error().message();
    }

    // Decided rings in their bores; the rest stays to be dealt.
    void sortOut() {
        for (const std::size_t ring : layOut(m_fit.rings)) {
            const Ring& which = m_fit.rings[ring];
            if (which.groove != m_deal.groove) continue;
            if (!which.bore) {
                m_rings.push_back(ring);
                continue;
            }
            const auto bore = std::ranges::find(m_deal.bores, *which.bore);
            if (bore == m_deal.bores.end()) continue; // decided for a bore that was not read
            const auto index = static_cast<std::size_t>(bore - m_deal.bores.begin());
            if (!m_deal.ring[index]) place(index, ring, gapOf(index, ring));
        }
        for (std::size_t bore = 0; bore < m_bores.size(); ++bore)
            if (!m_deal.ring[bore]) m_free.push_back(bore);
    }

    // Leaves out rings of which nothing is known, and bores in which no ring can be reckoned.
    void dropHopeless() {
        if (m_free.empty() || m_rings.empty()) return;
        const auto isRead = [&](std::size_t bore) { return m_narrowest.at(bore).has_value(); };
        const bool anyRead = std::ranges::any_of(m_free, isRead);
        const auto hopeless = [&](std::size_t ring) {
            return !anyRead || !m_start.at(ring).has_value();
        };
        const auto first = std::ranges::find_if(m_rings, hopeless);
        if (first != m_rings.end()) m_firstRefusal = refusalOf(m_free.front(), *first);
        if (std::ranges::all_of(m_rings, hopeless)) {
            for (const std::size_t bore : m_free)
                m_deal.refused[bore] = refusalOf(bore, m_rings.front());
            m_rings.clear();
            return;
        }
        std::erase_if(m_rings, hopeless);
        for (const std::size_t bore : m_free)
            if (!isRead(bore)) m_deal.refused[bore] = m_narrowest.at(bore).error().message();
        std::erase_if(m_free, [&](std::size_t bore) { return !isRead(bore); });
    }

    [[nodiscard]] std::string tooFew() const {
        const std::size_t bores = m_free.size();
        const std::string rings = m_rings.empty() ? "no ring" : counted(m_rings.size(), "ring");
        std::string words =
            fmt::format("{} of groove {} for {}", rings, m_deal.groove, counted(bores, "bore"));
        if (!m_firstRefusal.empty()) words += "; " + m_firstRefusal;
        return words;
    }

    void assignFree(Length aim) {
        AssignmentProblem problem{
            static_cast<int>(m_free.size()), static_cast<int>(m_rings.size()), {}};
        for (const std::size_t bore : m_free)
            for (const std::size_t ring : m_rings)
                problem.cost.emplace_back((smallestGap(bore, ring) - aim).magnitude().picometres());
        const Result<Assignment> best = assign(problem);
        if (!best) {
            m_deal.why = best.error().message();
            return;
        }
        m_deal.equals = best->equals;
        for (std::size_t row = 0; row < m_free.size(); ++row) {
            const std::size_t ring = m_rings[static_cast<std::size_t>(best->column[row])];
            place(m_free[row], ring, gapOf(m_free[row], ring));
        }
    }

    const Bores& m_bores;
    const FitRecord& m_fit;
    Length m_step;
    std::optional<DisplayUnits> m_units;
    RingDeal m_deal;
    std::vector<std::size_t> m_rings;                  // not decided: places in the record
    std::vector<std::size_t> m_free;                   // bores without a decided ring
    std::map<std::size_t, Result<Length>> m_narrowest; // of those bores
    std::map<std::size_t, Result<Length>> m_start;     // where those rings were measured
    std::string m_firstRefusal;
};

} // namespace

std::vector<RingDeal> dealRings(const std::vector<MeasuredBore>& bores, const FitRecord& fit,
                                bool inches, const std::optional<DisplayUnits>& units) {
    Bores inOrder;
    for (const MeasuredBore& bore : bores)
        inOrder.push_back(&bore);
    std::ranges::sort(inOrder, {}, &MeasuredBore::bore);
    std::set<int> grooves;
    for (const Ring& ring : fit.rings)
        grooves.insert(ring.groove);
    std::vector<RingDeal> deals;
    for (const int groove : grooves)
        deals.push_back(Dealer(inOrder, fit, inches, units, groove).deal());
    return deals;
}

} // namespace borewright
