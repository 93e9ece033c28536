// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/harmless_stream.h"

#include <fmt/format.h>

namespace borewright {
namespace {

std::size_t lengthFrom(unsigned char first) {
    return first >= 0xF0 ? 4 : first >= 0xE0 ? 3 : first >= 0xC0 ? 2 : 1;
}

// The number of a character of two or three bytes.
unsigned numberOf(const std::string& character) {
    unsigned number =
        static_cast<unsigned char>(character[0]) & (character.size() == 2 ? 31U : 15U);
    for (std::size_t i = 1; i < character.size(); ++i)
        number = number << 6U | (static_cast<unsigned char>(character[i]) & 63U);
    return number;
}

// C1 (ISO 6429), and the marks, embeddings, overrides and isolates of direction (Unicode UAX 9).
bool isControl(unsigned number) {
    return (number >= 0x80 && number < 0xA0) || number == 0x061C || number == 0x200E ||
           number == 0x200F || (number >= 0x202A && number <= 0x202E) ||
           (number >= 0x2066 && number <= 0x2069);
}

} // namespace

HarmlessBuffer::int_type HarmlessBuffer::overflow(int_type character) {
    if (!traits_type::eq_int_type(character, traits_type::eof()))
        put(static_cast<unsigned char>(traits_type::to_char_type(character)));
    return m_to.good() ? traits_type::not_eof(character) : traits_type::eof();
}

int HarmlessBuffer::sync() {
    m_to.flush();
    return m_to.good() ? 0 : -1;
}

void HarmlessBuffer::put(unsigned char byte) {
    // A carriage return alone goes back over what was written; as part of a line end it may pass.
    if (m_pending == "\r") {
        m_to << (byte == '\n' ? "\r" : "\\u000d");
        m_pending.clear();
    }
    if (!m_pending.empty() && (byte & 0xC0U) != 0x80U) flushPending(); // a character cut off
    if (!m_pending.empty()) {
        m_pending += static_cast<char>(byte);
        if (m_pending.size() == lengthFrom(static_cast<unsigned char>(m_pending[0])))
            flushPending();
    } else if (byte == '\r' || lengthFrom(byte) > 1) {
        m_pending += static_cast<char>(byte);
    } else if ((byte < 0x20 && byte != '\n' && byte != '\t') || byte == 0x7F ||
               (byte & 0xC0U) == 0x80U) { // a part of a character that stands alone may be C1
        m_to << fmt::format("\\u{:04x}", static_cast<unsigned>(byte));
    } else {
        m_to.put(static_cast<char>(byte));
    }
}

void HarmlessBuffer::flushPending() {
    if (m_pending.empty()) return;
    const bool whole = m_pending.size() == lengthFrom(static_cast<unsigned char>(m_pending[0]));
    if (m_pending == "\r" || !whole) {
        for (const char byte : m_pending)
            m_to << fmt::format("\\u{:04x}",
                                static_cast<unsigned>(static_cast<unsigned char>(byte)));
    } else if (m_pending.size() < 4 && isControl(numberOf(m_pending))) {
        m_to << fmt::format("\\u{:04x}", numberOf(m_pending));
    } else {
        m_to << m_pending;
    }
    m_pending.clear();
}

} // namespace borewright
