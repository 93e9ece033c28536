// SPDX-License-Identifier: GPL-3.0-or-later
// Slips made on purpose, each as a hand would make it.
#include "tests/support/slip_bores.h"

#include "tests/support/lengths.h"

#include <algorithm>
#include <cctype>
#include <cmath>

namespace borewright::test {
namespace {

class SlipMaker {
public:
    SlipMaker(Survey& survey, Slip slip, double least_um, Random& random)
        : m_survey(survey)
        , m_before(survey.readings)
        , m_gauge(survey.header.gauge)
        , m_slip(slip)
        , m_least_um(least_um)
        , m_random(random) {}

    std::optional<MadeSlip> make() {
        const std::size_t at = pick(m_survey.readings.size());
        if (m_slip == Slip::axesExchanged)
            exchangeAxes(at);
        else if (m_slip == Slip::stationsExchanged)
            exchangeStations(at);
        else if (m_slip == Slip::columnReversed)
            reverse(at);
        else if (m_slip == Slip::stationSkipped)
            return skip(at);
        else if (m_slip == Slip::typedAgain)
            typeAgain(at);
        else
            retype(at);
        return changed();
    }

private:
    std::size_t pick(std::size_t count) { return m_random.next() % count; }
    Reading& at(std::size_t i) { return m_survey.readings[i]; }

    std::optional<MadeSlip> changed() const {
        MadeSlip made;
        double most_um = 0;
        for (std::size_t i = 0; i < m_before.size(); ++i) {
            const Length was = m_before[i].typed.value(), is = m_survey.readings[i].typed.value();
            if (was == is) continue;
            made.readings.push_back(i);
            made.meant = m_before[i].typed;
            most_um = std::max(most_um, std::abs((is - was).in(Unit::micrometre)));
        }
        if (most_um <= m_least_um) return std::nullopt;
        return made;
    }

    std::vector<std::size_t> column(std::size_t of) const {
        std::vector<std::size_t> found;
        for (std::size_t i = 0; i < m_before.size(); ++i)
            if (m_before[i].station.bore == m_before[of].station.bore &&
                m_before[i].station.axis == m_before[of].station.axis)
                found.push_back(i);
        return found;
    }
    std::size_t across(std::size_t of) const {
        for (std::size_t i = 0; i < m_before.size(); ++i)
            if (m_before[i].station.bore == m_before[of].station.bore &&
                m_before[i].station.depth == m_before[of].station.depth && i != of)
                return i;
        return of;
    }

    void exchangeAxes(std::size_t one) {
        // Throughout a bore that stands alone nothing tells A from B.
        const bool alone = m_before.front().station.bore == m_before.back().station.bore;
        const bool throughout = !alone && m_random.uniform() < 0.2;
        for (const std::size_t i : throughout ? column(one) : std::vector{one})
            std::swap(at(i).typed, at(across(i)).typed);
    }
    void exchangeStations(std::size_t one) {
        const auto there = column(one);
        const std::size_t i = pick(there.size() - 1);
        std::swap(at(there[i]).typed, at(there[i + 1]).typed);
    }
    void reverse(std::size_t one) {
        const auto there = column(one);
        for (std::size_t i = 0; i < there.size(); ++i)
            at(there[i]).typed = m_before[there[there.size() - 1 - i]].typed;
    }
    std::optional<MadeSlip> skip(std::size_t one) {
        const auto there = column(one);
        for (std::size_t i = pick(there.size() - 1); i + 1 < there.size(); ++i)
            at(there[i]).typed = m_before[there[i + 1]].typed;
        auto made = changed();
        if (!made) return made;
        std::erase_if(made->readings, [&](std::size_t i) { return i == there.back(); });
        for (std::size_t& i : made->readings)
            if (i > there.back()) --i;
        m_survey.readings.erase(m_survey.readings.begin() +
                                static_cast<std::ptrdiff_t>(there.back()));
        return made;
    }
    void typeAgain(std::size_t one) {
        if (one > 0 && at(one - 1).station.bore == at(one).station.bore)
            at(one).typed = at(one - 1).typed;
    }

    void retype(std::size_t one) {
        const TypedLength old = at(one).typed;
        const bool deviation = m_gauge.entry == Entry::deviation;
        const Length base = deviation ? Length() : m_gauge.setSize->value();
        const Length dial = old.value() - base;
        std::optional<TypedLength> typed;
        if (m_slip == Slip::digitsSwapped)
            typed = swapped(old);
        else if (m_slip == Slip::unit)
            typed = deviation ? inAnotherUnit(old) : std::nullopt;
        else if (const auto showed = shownBySlip(dial))
            typed = typedFrom(base + *showed, old.unit());
        if (typed && (typed->value() - base).magnitude() <= m_gauge.dial.travel.value())
            at(one).typed = *typed;
    }

    std::optional<Length> shownBySlip(Length dial) {
        const Length turn = m_gauge.dial.oneTurn.value();
        const std::int64_t turns = m_random.uniform() < 0.85 ? 1 : 2;
        constexpr std::int64_t factors[] = {2, 5, 10};
        const std::int64_t factor = factors[pick(3)];
        const bool up = m_random.uniform() < 0.5;
        if (m_slip == Slip::signTurned) return -dial;
        if (m_slip == Slip::turnsMissed) return dial + (up ? turns : -turns) * turn;
        if (m_slip == Slip::complement) {
            m_gauge.dial.face = Dial::Face::round;
            if (dial < Length() && dial + turn > Length()) return dial + turn;
        }
        if (m_slip == Slip::graduation && m_gauge.entry == Entry::deviation) {
            if (up) return factor * dial;
            if (dial.picometres() % (factor * 10000) == 0)
                return Length::fromPicometres(dial.picometres() / factor);
        }
        return std::nullopt;
    }

    std::optional<TypedLength> swapped(const TypedLength& old) {
        std::string text = old.text();
        std::vector<std::pair<std::size_t, std::size_t>> pairs;
        std::size_t last = std::string::npos;
        const bool deviation = m_gauge.entry == Entry::deviation;
        for (std::size_t i = deviation ? 0 : text.find('.'); i < text.size(); ++i) {
            if (std::isdigit(static_cast<unsigned char>(text[i])) == 0) continue;
            if (last != std::string::npos && text[last] != text[i]) pairs.push_back({last, i});
            last = i;
        }
        if (pairs.empty()) return std::nullopt;
        const auto [i, j] = pairs[pick(pairs.size())];
        std::swap(text[i], text[j]);
        return *readTyped(text, old.unit());
    }

    // The same length told in another unit, but taken for the survey's.
    std::optional<TypedLength> inAnotherUnit(const TypedLength& old) {
        const bool inch = isInchFamily(old.unit());
        const bool sameFamily = m_random.uniform() < 0.6;
        const Unit unit = sameFamily ? (inch ? Unit::inch : Unit::millimetre)
                                     : (inch ? Unit::millimetre : Unit::thou);
        const int decimals = sameFamily ? (inch ? 4 : 3) : (inch ? 3 : 1);
        return *readTyped(format(old.value(), unit, decimals, Sign::plain), old.unit());
    }

    Survey& m_survey;
    std::vector<Reading> m_before;
    GaugeSetting& m_gauge;
    Slip m_slip;
    double m_least_um;
    Random& m_random;
};

} // namespace

std::optional<MadeSlip> makeSlip(Workbook& workbook, Slip slip, double least_um, Random& random) {
    return SlipMaker(workbook.surveys.front(), slip, least_um, random).make();
}

} // namespace borewright::test
