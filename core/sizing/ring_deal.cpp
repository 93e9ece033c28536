// SPDX-License-Identifier: GPL-3.0-or-later
// Rings of one groove dealt to bores: a table of departures, and the assignment that is best on it.
#include "core/sizing/guarded.h"
#include "core/sizing/matching.h"
#include "core/sizing/ring_gap.h"

#include <algorithm>
#include <fmt/format.h>
#include <set>

namespace borewright {
namespace {

using Bores = std::vector<const MeasuredBore*>;

std::string called(const Ring& ring) {
    return "ring " + (ring.label.empty() ? ring.id : ring.label);
}

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
    Dealer(const Bores& bores, const FitRecord& fit, bool inches, int groove)
        : m_bores(bores)
        , m_fit(fit)
        , m_step(fileStepOf(fit, inches)) {
        m_deal.groove = groove;
        for (const MeasuredBore* bore : bores)
            m_deal.bores.push_back(bore->bore);
        m_deal.ring.resize(bores.size());
        m_deal.gap.resize(bores.size());
        m_deal.refused.resize(bores.size());
    }

    RingDeal deal() && {
        sortOut();
        fillTable();
        dropHopeless();
        if (m_free.empty()) return std::move(m_deal);
        if (const auto aim = aimOf(); !aim)
            m_deal.why = "no gap to aim at: give the engine maker's limits";
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

    [[nodiscard]] Result<RingGap> gapOf(std::size_t bore, std::size_t ring) const {
        const Ring& which = m_fit.rings[ring];
        if (!which.measuredIn)
            return refuse(called(which), "the bore it was measured in is not given");
        const MeasuredBore* measured = find(m_bores, *which.measuredIn);
        if (measured == nullptr)
            return refuse(called(which), fmt::format("bore {}, in which it was measured, was not "
                                                     "read",
                                                     *which.measuredIn));
        return ringGapOf(*m_bores[bore], *measured, which, m_fit.ringGap, m_step);
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

    void fillTable() {
        for (const std::size_t bore : m_free) {
            m_table.emplace_back();
            for (const std::size_t ring : m_rings)
                m_table.back().push_back(gapOf(bore, ring));
        }
    }

    // Leaves out rings of which nothing is known, and bores in which no ring can be reckoned.
    void dropHopeless() {
        for (std::size_t column = m_rings.size(); column-- > 0;) {
            const auto known = [&](const auto& row) { return row[column].has_value(); };
            if (std::ranges::any_of(m_table, known) || m_table.empty()) continue;
            m_firstRefusal = m_table.front()[column].error().message();
            m_rings.erase(m_rings.begin() + static_cast<std::ptrdiff_t>(column));
            if (m_rings.empty()) break; // keep a row's refusals to show
            for (auto& row : m_table)
                row.erase(row.begin() + static_cast<std::ptrdiff_t>(column));
        }
        for (std::size_t row = m_free.size(); row-- > 0;) {
            const auto& cells = m_table[row];
            if (cells.empty() || std::ranges::any_of(cells, &Result<RingGap>::has_value)) continue;
            m_deal.refused[m_free[row]] = cells.front().error().message();
            if (m_rings.empty()) continue;
            m_free.erase(m_free.begin() + static_cast<std::ptrdiff_t>(row));
            m_table.erase(m_table.begin() + static_cast<std::ptrdiff_t>(row));
        }
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
        for (const auto& row : m_table)
            for (const Result<RingGap>& cell : row)
                problem.cost.push_back(
                    cell ? std::optional((cell->smallest.gap - aim).magnitude().picometres())
                         : std::nullopt);
        const Result<Assignment> best = assign(problem);
        if (!best) {
            m_deal.why = best.error().message();
            return;
        }
        m_deal.equals = best->equals;
        for (std::size_t row = 0; row < m_free.size(); ++row) {
            const auto column = static_cast<std::size_t>(best->column[row]);
            place(m_free[row], m_rings[column], std::move(m_table[row][column]));
        }
    }

    const Bores& m_bores;
    const FitRecord& m_fit;
    Length m_step;
    RingDeal m_deal;
    std::vector<std::size_t> m_rings;                  // not decided: places in the record
    std::vector<std::size_t> m_free;                   // bores without a decided ring
    std::vector<std::vector<Result<RingGap>>> m_table; // by m_free, by m_rings
    std::string m_firstRefusal;
};

} // namespace

std::vector<RingDeal> dealRings(const std::vector<MeasuredBore>& bores, const FitRecord& fit,
                                bool inches) {
    Bores inOrder;
    for (const MeasuredBore& bore : bores)
        inOrder.push_back(&bore);
    std::ranges::sort(inOrder, {}, &MeasuredBore::bore);
    std::set<int> grooves;
    for (const Ring& ring : fit.rings)
        grooves.insert(ring.groove);
    std::vector<RingDeal> deals;
    for (const int groove : grooves)
        deals.push_back(Dealer(inOrder, fit, inches, groove).deal());
    return deals;
}

} // namespace borewright
