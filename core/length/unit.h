// SPDX-License-Identifier: GPL-3.0-or-later
// The units a length is typed and shown in. Each is a whole number of picometres, since the inch
// is exactly 25.4 mm (international yard and pound agreement, 1959).
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string_view>

namespace borewright {

enum class Unit {
    inch,  // 25.4 mm
    thou,  // 0.001 in
    tenth, // 0.0001 in, the "tenth" of a thou
    millimetre,
    hundredth,  // 0.01 mm
    micrometre, // 0.001 mm
};

inline constexpr std::array allUnits{Unit::inch,       Unit::thou,      Unit::tenth,
                                     Unit::millimetre, Unit::hundredth, Unit::micrometre};

// Picometres in one of `unit`; exact.
constexpr std::int64_t picometresPer(Unit unit) {
    switch (unit) {
    case Unit::inch:
        return 25'400'000'000;
    case Unit::thou:
        return 25'400'000;
    case Unit::tenth:
        return 2'540'000;
    case Unit::millimetre:
        return 1'000'000'000;
    case Unit::hundredth:
        return 10'000'000;
    case Unit::micrometre:
        return 1'000'000;
    }
    return 1;
}

constexpr bool isInchFamily(Unit unit) {
    return unit == Unit::inch || unit == Unit::thou || unit == Unit::tenth;
}

// What is written behind a number: "in", "thou", "tenths", "mm", "hundredths", "µm".
std::string_view symbol(Unit unit);
// The unit in a sentence or a menu: "inch", "thou (0.001 in)", …
std::string_view description(Unit unit);
// The key of the unit in files: "in", "thou", "tenth", "mm", "hundredth", "um".
std::string_view key(Unit unit);
// The unit that a text names: its key, its symbol or a usual spelling ("\"", "inch", "inches",
// "thousandths", "micron", "μm" …), letter case ignored. Nothing where the text names none.
std::optional<Unit> unitFromText(std::string_view text);

} // namespace borewright
