// SPDX-License-Identifier: GPL-3.0-or-later
// The stories that could be told of one bore, each with its weight.
#include "core/gauging/slip_candidates.h"
#include "core/gauging/slip_judge.h"
#include "core/gauging/slip_parts.h"

#include "core/length/format.h"

#include <algorithm>
#include <cmath>

namespace borewright::slips {
namespace {

// Of all readings, how many are of a wall that is scored or worn at their station alone.
constexpr double scoredShare = 2e-3;
// A reading that no one could have read off the dial speaks for a slip by itself.
constexpr double finerBonus = 7;
// Log gain below which no story can outweigh its own rarity.
constexpr double worthALook = 5;
// Unexplained slips land anywhere within two dial turns or so.
constexpr double unexplainedSpread_um = 1000;

class Weigher {
public:
    explicit Weigher(const BoreCase& bore)
        : m_case(bore)
        , m_fit(*bore.fit)
        , m_cells(*bore.cells)
        , m_readings(bore.survey->readings)
        , m_gauge(bore.survey->header.gauge) {}

    Weighed take() {
        std::vector<double> clean{m_fit.logEvidence()};
        double most = 0;
        for (std::size_t i = 0; i < m_cells.size(); ++i) {
            const double gain = m_fit.mostGain(i);
            const bool finer = isFinerThanTheDial(reading(i), m_gauge);
            most = std::max(most, gain);
            if (m_cells[i].settled || gain + (finer ? finerBonus : 0) < worthALook) continue;
            clean.push_back(m_fit.logScored(i) + std::log(scoredShare));
            weighSingle(i, finer ? finerBonus : 0);
        }
        for (std::size_t i = 0; i < m_cells.size(); ++i)
            for (std::size_t j = i + 1; j < m_cells.size(); ++j)
                weighExchange(i, j);
        weighColumns();
        if (most > worthALook) weighSkipped(m_case, m_found.slips);
        m_found.clean = logSum(clean);
        return std::move(m_found);
    }

private:
    [[nodiscard]] const Reading& reading(std::size_t cell) const {
        return m_readings[m_cells[cell].reading];
    }
    [[nodiscard]] double x(const TypedLength& typed) const {
        return size_um(typed, m_gauge) - (*m_case.bores)[m_case.bore].middle_um;
    }

    void weighSingle(std::size_t i, double bonus) {
        const Reading& typed = reading(i);
        const std::size_t index = m_cells[i].reading;
        for (Candidate& candidate : candidatesFor(typed.typed, m_gauge)) {
            const Change change{i, x(candidate.value)};
            const double log = m_fit.logChanged({&change, 1}) +
                               std::log(candidate.share * candidate.slope) + bonus;
            Hypothesis slip{candidate.slip, log, {index}, {}, {}};
            slip.words = singleWords(candidate.slip, typed.typed, candidate.value);
            slip.fixes.push_back({typed.station, index, std::move(candidate.value), index});
            m_found.slips.push_back(std::move(slip));
        }
        const double without = m_fit.logWithout(i) + bonus;
        weighTypedAgain(i, without);
        const double log = without + std::log(shareOf(Slip::unexplained) / unexplainedSpread_um);
        m_found.slips.push_back({Slip::unexplained, log, {index}, {}, oddWords(i)});
    }

    // The reading typed before this one, in the order of the hand, stands here once more.
    void weighTypedAgain(std::size_t i, double without) {
        const std::size_t index = m_cells[i].reading;
        std::size_t before = index;
        while (before > 0 && m_readings[before - 1].struck)
            --before;
        if (before == 0) return;
        const Reading& last = m_readings[before - 1];
        const Reading& here = m_readings[index];
        if (last.typed.value() != here.typed.value() || last.station == here.station) return;
        const double step_um = m_gauge.dial.graduation.value().in(Unit::micrometre);
        const double log = without + std::log(shareOf(Slip::typedAgain) / std::max(step_um, 0.1));
        Hypothesis slip{Slip::typedAgain, log, {index}, {}, {}};
        slip.words = "the last reading typed again: " + shown(here.typed);
        slip.fixes.push_back({here.station, index, std::nullopt, index});
        m_found.slips.push_back(std::move(slip));
    }

    [[nodiscard]] std::string oddWords(std::size_t i) const {
        const TypedLength& typed = reading(i).typed;
        const double by_um = m_fit.value(i) - m_fit.expected(i);
        const Length by = Length::nearest(std::clamp(std::abs(by_um), 0.0, 1e9), Unit::micrometre);
        const DisplayUnits units =
            isInchFamily(typed.unit()) ? DisplayUnits::inch() : DisplayUnits::metric();
        return smallWithUnit(by, units) + (by_um < 0 ? " smaller" : " larger") +
               " than the rest of the bore would have it";
    }

    static std::string singleWords(Slip slip, const TypedLength& typed, const TypedLength& value) {
        const std::string swap = shown(value) + " for " + shown(typed);
        switch (slip) {
        case Slip::digitsSwapped:
            return "two digits swapped: " + swap;
        case Slip::signTurned:
            return "sign turned: " + swap;
        case Slip::turnsMissed:
            return "turn of the dial missed: " + swap;
        case Slip::complement:
            return "read the wrong way round the dial: " + swap;
        case Slip::graduation:
            return "one graduation taken for another: " + swap;
        default:
            return "meant in another unit: " + shown(value) + " " +
                   std::string(symbol(value.unit())) + " for " + shown(typed) + " " +
                   std::string(symbol(typed.unit()));
        }
    }

    [[nodiscard]] SlipFix moved(std::size_t to, std::size_t from) const {
        return {reading(to).station, m_cells[to].reading, reading(from).typed,
                m_cells[from].reading};
    }

    void weighExchange(std::size_t i, std::size_t j) {
        const Spot &a = m_cells[i].spot, &b = m_cells[j].spot;
        const bool axes = a.level == b.level && a.axis != b.axis;
        const bool stations = a.axis == b.axis && std::abs(a.level - b.level) == 1;
        if (!(axes || stations) || m_cells[i].settled || m_cells[j].settled) return;
        const double share =
            std::log(shareOf(axes ? Slip::axesExchanged : Slip::stationsExchanged));
        const Change changes[] = {{i, m_fit.value(j)}, {j, m_fit.value(i)}};
        if (m_fit.logChangedAtMost(changes) + share < m_fit.logEvidence()) return;
        Hypothesis slip;
        slip.slip = axes ? Slip::axesExchanged : Slip::stationsExchanged;
        slip.log = m_fit.logChanged(changes) + share;
        slip.accused = {m_cells[i].reading, m_cells[j].reading};
        slip.fixes = {moved(i, j), moved(j, i)};
        const std::string values =
            ": " + shown(reading(j).typed) + " and " + shown(reading(i).typed);
        slip.words = axes ? "axes " + reading(i).station.axis + " and " + reading(j).station.axis +
                                " exchanged" + values
                          : "two stations exchanged" + values;
        m_found.slips.push_back(std::move(slip));
    }

    // Runs of cells on one axis: [begin, end) for each.
    [[nodiscard]] std::vector<std::pair<std::size_t, std::size_t>> columns() const {
        std::vector<std::pair<std::size_t, std::size_t>> found;
        for (std::size_t i = 0; i < m_cells.size(); ++i) {
            if (i == 0 || m_cells[i].spot.axis != m_cells[i - 1].spot.axis) found.push_back({i, i});
            found.back().second = i + 1;
        }
        return found;
    }

    void weighColumns() {
        const auto found = columns();
        for (const auto& [begin, end] : found)
            weighReversed(begin, end);
        for (std::size_t a = 0; a < found.size(); ++a)
            for (std::size_t b = a + 1; b < found.size(); ++b)
                weighAxesThroughout(found[a], found[b]);
    }

    void weighMoves(Slip slip, const std::vector<std::pair<std::size_t, std::size_t>>& moves,
                    double share, const std::string& words) {
        std::vector<Change> changes;
        for (const auto& [to, from] : moves) {
            if (m_cells[to].settled || m_cells[from].settled) return;
            if (m_fit.value(to) != m_fit.value(from)) changes.push_back({to, m_fit.value(from)});
        }
        if (changes.empty()) return;
        const double log = m_fit.logChanged(changes) + std::log(share);
        if (log < m_fit.logEvidence()) return;
        Hypothesis hypothesis{slip, log, {}, {}, words};
        for (const auto& [to, from] : moves) {
            if (m_fit.value(to) == m_fit.value(from)) continue;
            hypothesis.accused.push_back(m_cells[to].reading);
            hypothesis.fixes.push_back(moved(to, from));
        }
        std::ranges::sort(hypothesis.accused);
        m_found.slips.push_back(std::move(hypothesis));
    }

    void weighReversed(std::size_t begin, std::size_t end) {
        if (end - begin < 3) return;
        // Worth the work only where the other axes run the other way.
        std::vector<std::pair<std::size_t, std::size_t>> moves;
        double together = 0;
        for (std::size_t i = begin; i < end; ++i) {
            moves.push_back({i, begin + end - 1 - i});
            const double steeper = m_fit.value(i) - m_fit.value(begin + end - 1 - i);
            for (std::size_t k = 0; k < m_cells.size(); ++k)
                if (m_cells[k].spot.axis != m_cells[i].spot.axis &&
                    m_cells[k].spot.level == m_cells[i].spot.level)
                    together += steeper * m_fit.value(k);
        }
        const bool alone = begin == 0 && end == m_cells.size();
        if (together >= 0 && !alone) return;
        weighMoves(Slip::columnReversed, moves, shareOf(Slip::columnReversed),
                   "axis " + reading(begin).station.axis + " typed from the other end");
    }

    void weighAxesThroughout(std::pair<std::size_t, std::size_t> a,
                             std::pair<std::size_t, std::size_t> b) {
        std::vector<std::pair<std::size_t, std::size_t>> moves;
        double together = 0;
        for (std::size_t i = a.first, j = b.first; i < a.second && j < b.second;) {
            const int la = m_cells[i].spot.level, lb = m_cells[j].spot.level;
            if (la == lb) {
                together +=
                    (m_fit.value(i) - m_fit.value(j)) * (m_fit.pattern(i) - m_fit.pattern(j));
                moves.push_back({i, j});
                moves.push_back({j, i});
            }
            if (la <= lb) ++i;
            if (lb <= la) ++j;
        }
        if (moves.size() < 4 || together >= 0) return;
        weighMoves(Slip::axesExchanged, moves, 0.2 * shareOf(Slip::axesExchanged),
                   "axes " + reading(a.first).station.axis + " and " +
                       reading(b.first).station.axis + " exchanged throughout the bore");
    }

    const BoreCase& m_case;
    const BoreFit& m_fit;
    const std::vector<Cell>& m_cells;
    const std::vector<Reading>& m_readings;
    const GaugeSetting& m_gauge;
    Weighed m_found;
};

} // namespace

Weighed weigh(const BoreCase& bore) {
    return Weigher(bore).take();
}

} // namespace borewright::slips
