// SPDX-License-Identifier: GPL-3.0-or-later
// Text from a workbook on a terminal: control characters that somebody put into a name must not
// reach it, or they could rewrite what is shown or worse. They are written out instead, as JSON
// writes them: \u001b.
#pragma once

#include <ostream>
#include <streambuf>
#include <string>

namespace borewright {

// Passes everything on to `to` but control characters: C0 (line ends and tabs pass), DEL, C1, and
// those that turn the direction of writing about. Text is UTF-8 and may come in pieces.
class HarmlessBuffer final : public std::streambuf {
public:
    explicit HarmlessBuffer(std::ostream& to)
        : m_to(to) {}
    ~HarmlessBuffer() override { flushPending(); }

protected:
    int_type overflow(int_type character) override;
    int sync() override;

private:
    void put(unsigned char byte);
    void flushPending();

    std::ostream& m_to;
    std::string m_pending; // the beginning of a character, or a carriage return
};

class HarmlessStream final : public std::ostream {
public:
    explicit HarmlessStream(std::ostream& to)
        : std::ostream(nullptr)
        , m_buffer(to) {
        rdbuf(&m_buffer);
    }

private:
    HarmlessBuffer m_buffer;
};

} // namespace borewright
