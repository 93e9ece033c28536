// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/storage/json_writer.h"

#include "core/storage/json_value.h"

namespace borewright {

// Comma, line end, indent and key before a value.
void JsonWriter::place(std::string_view key) {
    if (!m_levels.empty()) {
        Level& level = m_levels.back();
        if (!level.empty) m_out += level.lines == Lines::one ? ", " : ",";
        if (level.lines == Lines::many) m_out += "\n" + std::string(2 * m_levels.size(), ' ');
        level.empty = false;
    }
    if (!key.empty()) m_out += quoteJson(key) + ": ";
}

void JsonWriter::begin(std::string_view key, char bracket, Lines lines) {
    place(key);
    m_out += bracket;
    m_levels.push_back({lines});
}

void JsonWriter::end(char bracket) {
    const Level level = m_levels.back();
    m_levels.pop_back();
    if (level.lines == Lines::many && !level.empty)
        m_out += "\n" + std::string(2 * m_levels.size(), ' ');
    m_out += bracket;
}

void JsonWriter::text(std::string_view key, std::string_view value) {
    place(key);
    m_out += quoteJson(value);
}

void JsonWriter::raw(std::string_view key, std::string_view json) {
    place(key);
    m_out += json;
}

void JsonWriter::unknown(const UnknownFields& fields) {
    for (const auto& [key, json] : fields) {
        place({});
        m_out += quoteJson(key) + ": " + json;
    }
}

} // namespace borewright
