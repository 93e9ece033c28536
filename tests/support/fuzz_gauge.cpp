// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/gauging/gauging.h"
#include "core/utf8.h"
#include "tests/support/fuzz_properties.h"

namespace borewright::test {
namespace {

std::string_view takeLine(std::string_view& bytes) {
    const std::size_t end = std::min(bytes.find('\n'), bytes.size());
    const std::string_view line = bytes.substr(0, end);
    bytes.remove_prefix(std::min(end + 1, bytes.size()));
    return line;
}

bool has(std::string_view letters, char letter) {
    return letters.find(letter) != std::string_view::npos;
}

// As the form of the gauge takes it: no size of zero or below.
GaugeSetting settingFrom(std::string_view& bytes) {
    GaugeSetting gauge;
    const auto size = readTyped(takeLine(bytes), Unit::inch);
    if (size && size->value() > Length()) gauge.setSize = *size;
    const std::string_view letters = takeLine(bytes);
    if (has(letters, 'd')) gauge.entry = Entry::diameter;
    if (has(letters, 'h')) gauge.dial = halfThouDial();
    if (has(letters, 'u')) gauge.dial = micrometreDial();
    if (has(letters, 'm')) gauge.dial.larger = Dial::Larger::minus;
    const auto master = readTemperature(takeLine(bytes), Scale::celsius);
    const auto block = readTemperature(takeLine(bytes), Scale::fahrenheit);
    if (master) gauge.masterTemperature = *master;
    if (block) gauge.blockTemperature = *block;
    return gauge;
}

std::string unsound(const Error& error, std::string_view line) {
    if (error.what.empty()) return "a refusal without words";
    const std::string said = error.message();
    if (firstBadUtf8(line) == line.size() && firstBadUtf8(said) != said.size())
        return "a refusal that no screen can show";
    return {};
}

// A reading that was accepted: no farther from the set size than the dial goes, and shown alike by
// a dial that runs the other way.
std::string brokenReading(const TypedLength& typed, const GaugeSetting& gauge) {
    const auto diameter = diameterAt20(typed, gauge);
    if (!diameter) return "an accepted reading is no diameter: " + diameter.error().message();
    if (!gauge.setSize) return {};
    const auto deviation = deviationOf(typed, gauge);
    if (!deviation) return "an accepted reading is no deviation";
    if (deviation->magnitude() > gauge.dial.travel.value()) return "beyond the dial";
    const Length cold = gauge.setSize->value() + *deviation;
    if (!correctsTemperature(gauge) && *diameter != cold) return "another diameter than was read";
    // Steel and iron between −30 °C and 120 °C: well under half a hundredth.
    const Length most = Length::fromPicometres(cold.magnitude().picometres() / 100 + 1) +
                        Length::fromPicometres(gauge.setSize->value().picometres() / 100);
    if ((*diameter - cold).magnitude() > most) return "warmth changes it by a hundredth";
    GaugeSetting mirrored = gauge;
    mirrored.dial.larger =
        gauge.dial.larger == Dial::Larger::plus ? Dial::Larger::minus : Dial::Larger::plus;
    const auto other = deviationOf(typed, mirrored);
    const bool turned =
        other && *other == (gauge.entry == Entry::deviation ? -*deviation : *deviation);
    return turned ? "" : "the other way round it is another reading";
}

} // namespace

std::string brokenByGauge(std::string_view bytes) {
    const GaugeSetting gauge = settingFrom(bytes);
    const Unit unit = isInchFamily(gauge.dial.graduation.unit()) ? Unit::thou : Unit::micrometre;
    SurveyHeader header;
    header.gauge = gauge;
    const Timestamp start{1'774'000'000, 60};
    for (int lines = 0; !bytes.empty() && lines < 40; ++lines) {
        std::string_view line = takeLine(bytes);
        const bool zero = line.starts_with('z');
        if (zero) line.remove_prefix(1);
        const auto typed = readTyped(line, gauge.entry == Entry::diameter ? Unit::inch : unit);
        if (!typed) {
            if (auto broken = unsound(typed.error(), line); !broken.empty()) return broken;
            continue;
        }
        const Timestamp now{start.secondsSinceEpoch + lines, 60};
        if (zero) {
            header.zeroChecks.push_back({*typed, now, {}});
            continue;
        }
        const auto checked = checkReading(*typed, gauge, std::nullopt);
        if (!checked) {
            if (auto broken = unsound(checked.error(), line); !broken.empty()) return broken;
        } else if (auto broken = brokenReading(*typed, gauge); !broken.empty()) {
            return "'" + typed->withUnit() + "': " + broken;
        }
    }
    const auto drift = zeroDrift(header);
    if (drift.has_value() == header.zeroChecks.empty()) return "zero checks that are not counted";
    if (drift && drift->spread < Length()) return "a spread below nothing";
    return {};
}

} // namespace borewright::test
