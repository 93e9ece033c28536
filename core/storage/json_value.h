// SPDX-License-Identifier: GPL-3.0-or-later
// JSON (RFC 8259) as read from a file, with the line of every value, so that a refusal can name
// it. Own code: the reader has to refuse what common parsers take (equal keys, not-a-number) and
// is fuzzed as a whole.
#pragma once

#include "core/result.h"

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace borewright {

struct JsonValue {
    enum class Kind : std::uint8_t { null, boolean, number, string, array, object };

    Kind kind = Kind::null;
    int line = 0;
    std::string key;              // of a member of an object
    std::string text;             // of a string; of a number or boolean as written
    std::vector<JsonValue> items; // elements, or members in the order of the file
};

// Bounds that no workbook comes near; beyond them a file is refused as absurd.
struct JsonBounds {
    static constexpr int depth = 64;
    static constexpr std::size_t textBytes = 64UL * 1024;
    static constexpr std::size_t allTextBytes = 32UL * 1024 * 1024; // of the whole file
    static constexpr std::size_t members = 256;                     // of one object
    static constexpr std::size_t values = 1'000'000;
};

// Reads one JSON text. Refuses, naming the line and as far as known the field: what is not JSON,
// a byte order mark, bad UTF-8, equal keys, NaN and infinity, anything after the end, and what is
// beyond JsonBounds.
Result<JsonValue> parseJson(std::string_view bytes);

// A string as JSON, in quotes.
std::string quoteJson(std::string_view text);
// A value as JSON on one line: {"a": 1, "b": [true]}.
std::string compactJson(const JsonValue& value);

} // namespace borewright
