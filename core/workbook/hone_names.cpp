// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/workbook/hone_names.h"

#include "core/length/format.h"
#include "core/utf8.h"

namespace borewright {
namespace {

char small(char letter) {
    return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
}

} // namespace

std::string foldedName(std::string_view name) {
    constexpr char latin = '\xC3'; // leads À … ÿ in UTF-8
    constexpr unsigned char largeFrom = 0x80, largeTo = 0x9E, times = 0x97, apart = 0x20;
    std::string folded;
    bool gap = false;
    for (const char letter : name) {
        if (letter == ' ' || letter == '\t' || letter == '\n' || letter == '\r') {
            gap = !folded.empty();
            continue;
        }
        if (gap) folded += ' ';
        gap = false;
        const auto byte = static_cast<unsigned char>(letter);
        const bool large = !folded.empty() && folded.back() == latin && byte >= largeFrom &&
                           byte <= largeTo && byte != times;
        folded += large ? static_cast<char>(byte + apart) : small(letter);
    }
    return folded;
}

std::string called(const Stone& stone) {
    const std::string& name = stone.name.empty() ? stone.id : stone.name;
    return name.empty() ? "a stone without a name" : "stone '" + shortened(name) + "'";
}

std::string called(const Pass& pass) {
    return "pass " + (pass.id.empty() ? "without an id" : shortened(pass.id));
}

std::string fitsNowhere(const Stone& stone, const Block& block) {
    std::string why;
    for (const Bore& bore : block.bores) {
        if (!bore.depth) continue;
        const auto reach = reachOf(stone, bore);
        if (reach) return {};
        if (why.empty()) why = reach.error().what;
    }
    return why;
}

std::string inUnit(Length length, Unit unit) {
    const bool inch = isInchFamily(unit);
    return format(length, inch ? Unit::inch : Unit::millimetre, inch ? 3 : 2, Sign::plain) +
           (inch ? " in" : " mm");
}

} // namespace borewright
