// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/storage/json_value.h"

#include "core/utf8.h"

#include <algorithm>
#include <fmt/format.h>
#include <optional>

namespace borewright {
namespace {

bool isDigit(char c) {
    return c >= '0' && c <= '9';
}

bool isLetter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

class Parser {
public:
    explicit Parser(std::string_view bytes)
        : m_bytes(bytes) {}

    Result<JsonValue> parse() {
        JsonValue value;
        skipSpace();
        if (!readValue(value, 0)) return tl::unexpected(*m_error);
        skipSpace();
        if (m_at < m_bytes.size()) {
            fail("something stands behind the end");
            return tl::unexpected(*m_error);
        }
        return value;
    }

private:
    // Every step returns whether it went well; where not, m_error says why.
    bool fail(std::string what) {
        std::string where = "line " + std::to_string(m_line);
        if (!m_field.empty()) where += ": " + m_field;
        m_error = Error{std::move(where), std::move(what)};
        return false;
    }

    [[nodiscard]] char peek() const { return m_at < m_bytes.size() ? m_bytes[m_at] : '\0'; }
    [[nodiscard]] bool atEnd() const { return m_at >= m_bytes.size(); }

    void skipSpace() {
        for (; !atEnd(); ++m_at) {
            const char c = peek();
            if (c == '\n')
                ++m_line;
            else if (c != ' ' && c != '\t' && c != '\r')
                return;
        }
    }

    bool expect(char wanted) {
        skipSpace();
        if (peek() == wanted && !atEnd()) {
            ++m_at;
            return true;
        }
        return fail(found() + std::string(" where '") + wanted + "' must be");
    }

    // What stands here, for a refusal.
    [[nodiscard]] std::string found() const {
        if (atEnd()) return "the file ends";
        const char c = peek();
        if (c < 0x20 || c == 0x7f) return "a control character stands";
        std::size_t length = 1;
        while (m_at + length < m_bytes.size() &&
               (static_cast<unsigned char>(m_bytes[m_at + length]) & 0xC0) == 0x80)
            ++length;
        return "'" + std::string(m_bytes.substr(m_at, length)) + "' stands";
    }

    bool readValue(JsonValue& value, int depth) {
        if (depth > JsonBounds::depth) return fail("is nested deeper than any workbook");
        if (++m_values > JsonBounds::values) return fail("holds more than any workbook");
        value.line = m_line;
        const char c = peek();
        if (c == '{') return readObject(value, depth);
        if (c == '[') return readArray(value, depth);
        if (c == '"') {
            value.kind = JsonValue::Kind::string;
            return readString(value.text);
        }
        if (isDigit(c) || (c == '-' && !isLetter(next()))) return readNumber(value);
        return readWord(value);
    }

    [[nodiscard]] char next() const { return m_at + 1 < m_bytes.size() ? m_bytes[m_at + 1] : '\0'; }

    bool readObject(JsonValue& value, int depth) {
        value.kind = JsonValue::Kind::object;
        ++m_at;
        skipSpace();
        if (peek() == '}') return ++m_at, true;
        for (;;) {
            skipSpace();
            JsonValue member;
            if (peek() != '"') return fail(found() + " where a field's name in quotes must be");
            if (!readString(member.key)) return false;
            m_field = shortened(member.key);
            if (std::ranges::find(value.items, member.key, &JsonValue::key) != value.items.end())
                return fail("is given twice");
            if (value.items.size() >= JsonBounds::members) return fail("is one field too many");
            if (!expect(':')) return false;
            skipSpace();
            if (!readValue(member, depth + 1)) return false;
            value.items.push_back(std::move(member));
            m_field.clear();
            skipSpace();
            if (peek() == '}') return ++m_at, true;
            if (!expect(',')) return false;
        }
    }

    bool readArray(JsonValue& value, int depth) {
        value.kind = JsonValue::Kind::array;
        ++m_at;
        skipSpace();
        if (peek() == ']') return ++m_at, true;
        for (;;) {
            skipSpace();
            if (!readValue(value.items.emplace_back(), depth + 1)) return false;
            skipSpace();
            if (peek() == ']') return ++m_at, true;
            if (!expect(',')) return false;
        }
    }

    bool readString(std::string& text) {
        for (++m_at;;) {
            if (atEnd()) return fail("the file ends within a text");
            const char c = m_bytes[m_at];
            if (c == '"') return ++m_at, countText(text.size());
            if (static_cast<unsigned char>(c) < 0x20) {
                if (c == '\n') return fail("the closing quote is missing");
                return fail("a control character stands in a text");
            }
            if (text.size() >= JsonBounds::textBytes) return fail("is a text longer than 64 KB");
            if (c == '\\') {
                if (!readEscape(text)) return false;
            } else {
                text += c;
                ++m_at;
            }
        }
    }

    bool countText(std::size_t bytes) {
        m_textBytes += bytes;
        return m_textBytes <= JsonBounds::allTextBytes || fail("holds more text than any workbook");
    }

    bool readEscape(std::string& text) {
        static constexpr std::string_view letters = "\"\\/bfnrt";
        static constexpr std::string_view meanings = "\"\\/\b\f\n\r\t";
        const char letter = next();
        if (const auto found = letters.find(letter);
            letter != '\0' && found != std::string_view::npos) {
            text += meanings[found];
            m_at += 2;
            return true;
        }
        std::uint32_t character = 0;
        if (letter != 'u' || !readHex(character))
            return fail("a '\\' stands before what it cannot");
        if (character >= 0xD800 && character <= 0xDBFF) {
            std::uint32_t low = 0;
            if (peek() != '\\' || next() != 'u' || !readHex(low) || low < 0xDC00 || low > 0xDFFF)
                return fail("half a character stands in a text");
            character = 0x10000 + ((character - 0xD800) << 10) + (low - 0xDC00);
        } else if (character >= 0xDC00 && character <= 0xDFFF) {
            return fail("half a character stands in a text");
        }
        appendUtf8(text, character);
        return true;
    }

    // Four hexadecimal digits behind "\u".
    bool readHex(std::uint32_t& character) {
        if (m_at + 6 > m_bytes.size()) return false;
        for (std::size_t i = m_at + 2; i < m_at + 6; ++i) {
            const char c = m_bytes[i];
            std::uint32_t digit = 0;
            if (isDigit(c))
                digit = static_cast<std::uint32_t>(c - '0');
            else if (c >= 'a' && c <= 'f')
                digit = static_cast<std::uint32_t>(c - 'a' + 10);
            else if (c >= 'A' && c <= 'F')
                digit = static_cast<std::uint32_t>(c - 'A' + 10);
            else
                return false;
            character = character * 16 + digit;
        }
        m_at += 6;
        return true;
    }

    bool readNumber(JsonValue& value) {
        value.kind = JsonValue::Kind::number;
        const std::size_t start = m_at;
        const auto digits = [&] {
            const std::size_t before = m_at;
            while (isDigit(peek()))
                ++m_at;
            return m_at > before;
        };
        if (peek() == '-') ++m_at;
        const bool zero = peek() == '0';
        const std::size_t whole = m_at;
        bool good = digits() && !(zero && m_at > whole + 1);
        if (peek() == '.') good = (++m_at, digits()) && good;
        if (peek() == 'e' || peek() == 'E') {
            ++m_at;
            if (peek() == '+' || peek() == '-') ++m_at;
            good = digits() && good;
        }
        value.text = m_bytes.substr(start, m_at - start);
        if (!good || value.text.size() > 64)
            return fail("'" + shortened(value.text) + "' is not a number");
        return true;
    }

    bool readWord(JsonValue& value) {
        const std::size_t start = m_at;
        if (peek() == '-') ++m_at;
        while (isLetter(peek()))
            ++m_at;
        value.text = m_bytes.substr(start, m_at - start);
        if (value.text == "null") return value.kind = JsonValue::Kind::null, true;
        if (value.text == "true" || value.text == "false")
            return value.kind = JsonValue::Kind::boolean, true;
        if (!value.text.empty()) return fail("'" + shortened(value.text) + "' is not a value");
        return fail(found() + " where a value must be");
    }

    std::string_view m_bytes;
    std::size_t m_at = 0;
    int m_line = 1;
    std::size_t m_values = 0;
    std::size_t m_textBytes = 0; // of texts and names of fields
    std::string m_field;
    std::optional<Error> m_error;
};

} // namespace

Result<JsonValue> parseJson(std::string_view bytes) {
    if (bytes.starts_with(byteOrderMark))
        return refuse("line 1", "a byte order mark stands before the text");
    if (const std::size_t bad = firstBadUtf8(bytes); bad < bytes.size()) {
        const auto line = 1 + std::ranges::count(bytes.substr(0, bad), '\n');
        return refuse("line " + std::to_string(line),
                      fmt::format("byte 0x{:02X} is not UTF-8: the file is damaged or was kept in "
                                  "another encoding",
                                  static_cast<unsigned>(static_cast<unsigned char>(bytes[bad]))));
    }
    return Parser(bytes).parse();
}

} // namespace borewright
