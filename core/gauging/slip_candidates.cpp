// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/gauging/slip_candidates.h"

#include "core/gauging/slip_parts.h"

#include <algorithm>
#include <cctype>

namespace borewright::slips {
namespace {

// Collects candidates for one reading.
class Collector {
public:
    Collector(const TypedLength& typed, const GaugeSetting& gauge)
        : m_typed(typed)
        , m_gauge(gauge) {}

    std::vector<Candidate> take() {
        swapDigits();
        if (const auto dial = onDial()) {
            turnSign(*dial);
            addTurns(*dial);
            rescale(*dial);
        }
        if (m_gauge.entry == Entry::deviation) changeUnit();
        return std::move(m_found);
    }

private:
    // What the dial showed: the typed number, or what a typed diameter differs by from the setting.
    [[nodiscard]] std::optional<Length> onDial() const {
        if (m_gauge.entry == Entry::deviation) return m_typed.value();
        if (!m_gauge.setSize) return std::nullopt;
        return m_typed.value() - m_gauge.setSize->value();
    }
    [[nodiscard]] Length fromDial(Length dial) const {
        return m_gauge.entry == Entry::deviation ? dial : m_gauge.setSize->value() + dial;
    }
    void add(Slip slip, double part, double slope, const TypedLength& value) {
        if (value.value() == m_typed.value()) return;
        const Length dial = m_gauge.entry == Entry::deviation ? value.value()
                            : m_gauge.setSize ? value.value() - m_gauge.setSize->value()
                                              : Length();
        if (dial.magnitude() > m_gauge.dial.travel.value()) return;
        // What was meant was read off the same dial: seldom finer than what was typed.
        const double finer =
            decimalsIn(value.text()) > decimalsIn(m_typed.text()) && value.unit() == m_typed.unit()
                ? 0.1
                : 1;
        m_found.push_back({slip, finer * part * shareOf(slip), slope, value});
    }
    void addDial(Slip slip, double part, double slope, Length dial) {
        add(slip, part, slope, typedLike(fromDial(dial), m_typed));
    }

    void swapDigits() {
        const std::string& text = m_typed.text();
        std::size_t last = std::string::npos;
        for (std::size_t i = 0; i < text.size(); ++i) {
            if (std::isdigit(static_cast<unsigned char>(text[i])) == 0) continue;
            if (last != std::string::npos && text[last] != text[i]) {
                std::string swapped = text;
                std::swap(swapped[last], swapped[i]);
                // A nought is seldom swapped in: 0.3 for 3.0 is rather a graduation misread.
                const double part = text[last] == '0' || text[i] == '0' ? 0.2 : 0.5;
                if (const auto value = readTyped(swapped, m_typed.unit()))
                    add(Slip::digitsSwapped, part, 1, *value);
            }
            last = i;
        }
    }

    void turnSign(Length dial) {
        addDial(Slip::signTurned, m_gauge.entry == Entry::deviation ? 1 : 0.4, 1, -dial);
    }

    void addTurns(Length dial) {
        const Length turn = m_gauge.dial.oneTurn.value();
        if (turn <= Length()) return;
        constexpr double parts[] = {0.42, 0.06, 0.02};
        for (int turns = 1; turns <= 3; ++turns)
            for (const int sign : {1, -1})
                addDial(Slip::turnsMissed, parts[turns - 1], 1, dial + sign * turns * turn);
        if (m_gauge.dial.face != Dial::Face::round || dial.magnitude() >= turn) return;
        if (dial > Length()) addDial(Slip::complement, 1, 1, dial - turn);
        if (dial < Length()) addDial(Slip::complement, 0.2, 1, dial + turn);
    }

    void rescale(Length dial) {
        for (const int factor : {2, 5, 10}) {
            // Who types a diameter has set the dial's figures beside the size: less often wrong.
            const double part = m_gauge.entry == Entry::deviation ? 1.0 / 6 : 1.0 / 30;
            addDial(Slip::graduation, part, factor, factor * dial);
            if (dial.picometres() % factor == 0)
                addDial(Slip::graduation, part, 1.0 / factor,
                        Length::fromPicometres(dial.picometres() / factor));
        }
    }

    // The same figures in another unit; within a family written in the reading's own.
    void changeUnit() {
        for (const Unit unit : {Unit::inch, Unit::thou, Unit::millimetre, Unit::micrometre}) {
            const auto other = readTyped(m_typed.text(), unit);
            if (unit == m_typed.unit() || !other) continue;
            const double slope = Length::whole(1, unit).in(m_typed.unit());
            if (isInchFamily(unit) == isInchFamily(m_typed.unit()))
                add(Slip::unit, 0.6, slope, typedFrom(other->value(), m_typed.unit()));
            else
                add(Slip::unit, 0.2, slope, *other);
        }
    }

    const TypedLength& m_typed;
    const GaugeSetting& m_gauge;
    std::vector<Candidate> m_found;
};

} // namespace

double shareOf(Slip slip) {
    switch (slip) {
    case Slip::digitsSwapped:
        return 1.5e-3;
    case Slip::signTurned:
        return 1.5e-3;
    case Slip::turnsMissed:
        return 1e-3;
    case Slip::complement:
        return 2e-3;
    case Slip::graduation:
        return 1e-3;
    case Slip::unit:
        return 6e-4;
    case Slip::axesExchanged:
        return 1e-3;
    case Slip::stationsExchanged:
        return 5e-4;
    case Slip::columnReversed:
        return 1e-3;
    case Slip::stationSkipped:
        return 2e-3;
    case Slip::typedAgain:
        return 1e-3;
    case Slip::gaugeKnocked: // told by zero checks, not by likelihood
        return 0;
    case Slip::unexplained:
        return 5e-4;
    }
    return 0;
}

std::vector<Candidate> candidatesFor(const TypedLength& typed, const GaugeSetting& gauge) {
    return Collector(typed, gauge).take();
}

} // namespace borewright::slips
