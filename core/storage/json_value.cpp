// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/storage/json_value.h"

#include <fmt/format.h>

namespace borewright {
namespace {

void appendCompact(std::string& out, const JsonValue& value) {
    const bool object = value.kind == JsonValue::Kind::object;
    switch (value.kind) {
    case JsonValue::Kind::null:
        out += "null";
        return;
    case JsonValue::Kind::boolean:
    case JsonValue::Kind::number:
        out += value.text;
        return;
    case JsonValue::Kind::string:
        out += quoteJson(value.text);
        return;
    case JsonValue::Kind::array:
    case JsonValue::Kind::object:
        break;
    }
    out += object ? '{' : '[';
    bool first = true;
    for (const JsonValue& item : value.items) {
        if (!std::exchange(first, false)) out += ", ";
        if (object) out += quoteJson(item.key) + ": ";
        appendCompact(out, item);
    }
    out += object ? '}' : ']';
}

} // namespace

std::string quoteJson(std::string_view text) {
    std::string out = "\"";
    for (const char c : text) {
        switch (c) {
        case '"':
            out += "\\\"";
            break;
        case '\\':
            out += "\\\\";
            break;
        case '\n':
            out += "\\n";
            break;
        case '\r':
            out += "\\r";
            break;
        case '\t':
            out += "\\t";
            break;
        default:
            if (static_cast<unsigned char>(c) < 0x20)
                out += fmt::format("\\u{:04x}", static_cast<unsigned>(c));
            else
                out += c;
        }
    }
    return out + "\"";
}

std::string compactJson(const JsonValue& value) {
    std::string out;
    appendCompact(out, value);
    return out;
}

} // namespace borewright
