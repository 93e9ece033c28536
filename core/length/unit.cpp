// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/length/unit.h"

#include <string>

namespace borewright {

std::string_view symbol(Unit unit) {
    switch (unit) {
    case Unit::inch:
        return "in";
    case Unit::thou:
        return "thou";
    case Unit::tenth:
        return "tenths";
    case Unit::millimetre:
        return "mm";
    case Unit::hundredth:
        return "hundredths";
    case Unit::micrometre:
        return "µm";
    }
    return "";
}

std::string_view description(Unit unit) {
    switch (unit) {
    case Unit::inch:
        return "inch";
    case Unit::thou:
        return "thou (0.001 in)";
    case Unit::tenth:
        return "tenths (0.0001 in)";
    case Unit::millimetre:
        return "millimetre";
    case Unit::hundredth:
        return "hundredths (0.01 mm)";
    case Unit::micrometre:
        return "micrometre (0.001 mm)";
    }
    return "";
}

std::string_view key(Unit unit) {
    switch (unit) {
    case Unit::inch:
        return "in";
    case Unit::thou:
        return "thou";
    case Unit::tenth:
        return "tenth";
    case Unit::millimetre:
        return "mm";
    case Unit::hundredth:
        return "hundredth";
    case Unit::micrometre:
        return "um";
    }
    return "";
}

std::optional<Unit> unitFromText(std::string_view text) {
    struct Spelling {
        std::string_view text;
        Unit unit;
    };
    static constexpr Spelling spellings[] = {
        {"in", Unit::inch},
        {"inch", Unit::inch},
        {"inches", Unit::inch},
        {"\"", Unit::inch},
        {"thou", Unit::thou},
        {"thousandth", Unit::thou},
        {"thousandths", Unit::thou},
        {"tenth", Unit::tenth},
        {"tenths", Unit::tenth},
        {"mm", Unit::millimetre},
        {"millimetre", Unit::millimetre},
        {"millimetres", Unit::millimetre},
        {"millimeter", Unit::millimetre},
        {"millimeters", Unit::millimetre},
        {"hundredth", Unit::hundredth},
        {"hundredths", Unit::hundredth},
        {"um", Unit::micrometre},
        {"µm", Unit::micrometre},
        {"μm", Unit::micrometre},
        {"micron", Unit::micrometre},
        {"microns", Unit::micrometre},
        {"micrometre", Unit::micrometre},
        {"micrometres", Unit::micrometre},
        {"micrometer", Unit::micrometre},
        {"micrometers", Unit::micrometre},
    };
    std::string lower(text);
    for (char& c : lower)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    for (const Spelling& spelling : spellings)
        if (spelling.text == lower) return spelling.unit;
    return std::nullopt;
}

} // namespace borewright
