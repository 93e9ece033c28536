// SPDX-License-Identifier: GPL-3.0-or-later
// The order that a machinist lays pistons out in: by what is scribed on them, numbers as numbers.
#include "core/sizing/matching.h"

#include <algorithm>
#include <numeric>
#include <string_view>

namespace borewright {
namespace {

bool isDigit(char c) {
    return c >= '0' && c <= '9';
}

// Takes a run of digits, or one other character, off the front; without leading noughts.
std::string_view takePiece(std::string_view& text) {
    std::size_t length = 1;
    if (isDigit(text.front()))
        while (length < text.size() && isDigit(text[length]))
            ++length;
    std::string_view piece = text.substr(0, length);
    text.remove_prefix(length);
    while (piece.size() > 1 && piece.front() == '0')
        piece.remove_prefix(1);
    return piece;
}

std::strong_ordering compareLabels(std::string_view a, std::string_view b) {
    while (!a.empty() && !b.empty()) {
        const std::string_view x = takePiece(a);
        const std::string_view y = takePiece(b);
        if (isDigit(x.front()) && isDigit(y.front()) && x.size() != y.size())
            return x.size() <=> y.size();
        if (x != y) return x <=> y;
    }
    return a.size() <=> b.size();
}

// By size where both have one; those without come last.
std::strong_ordering compareSizes(const Piston& a, const Piston& b) {
    if (!a.size || !b.size) return b.size.has_value() <=> a.size.has_value();
    return a.size->value() <=> b.size->value();
}

bool standsBefore(const Piston& a, const Piston& b) {
    if (const auto order = compareLabels(a.label, b.label); order != 0) return order < 0;
    if (const auto order = compareSizes(a, b); order != 0) return order < 0;
    return compareLabels(a.id, b.id) < 0;
}

} // namespace

std::vector<std::size_t> ownOrder(const std::vector<Piston>& pistons) {
    std::vector<std::size_t> places(pistons.size());
    std::iota(places.begin(), places.end(), 0U);
    std::ranges::stable_sort(
        places, [&](std::size_t a, std::size_t b) { return standsBefore(pistons[a], pistons[b]); });
    return places;
}

} // namespace borewright
