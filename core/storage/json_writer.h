// SPDX-License-Identifier: GPL-3.0-or-later
// Writes JSON for people who compare two files line by line: two spaces of indent, LF, a chosen
// object or list on one line.
#pragma once

#include "core/workbook/block.h"

#include <string>
#include <string_view>
#include <vector>

namespace borewright {

enum class Lines { many, one };

class JsonWriter {
public:
    // Objects and lists; `key` is empty for what stands in a list, or alone.
    void beginObject(std::string_view key, Lines lines = Lines::many) { begin(key, '{', lines); }
    void endObject() { end('}'); }
    void beginList(std::string_view key, Lines lines = Lines::many) { begin(key, '[', lines); }
    void endList() { end(']'); }

    void text(std::string_view key, std::string_view value);
    // A number, true, false or kept JSON, written as it is.
    void raw(std::string_view key, std::string_view json);
    void unknown(const UnknownFields& fields);

    // What was written, with a line end.
    std::string take() { return std::move(m_out) + "\n"; }

private:
    struct Level {
        Lines lines;
        bool empty = true;
    };
    void begin(std::string_view key, char bracket, Lines lines);
    void end(char bracket);
    void place(std::string_view key);

    std::string m_out;
    std::vector<Level> m_levels;
};

} // namespace borewright
