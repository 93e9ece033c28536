// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/fuzz/json_mutator.h"

#include <array>
#include <optional>
#include <vector>

namespace borewright::test {
namespace {

// A value, or a member of an object with its key, as a stretch of the text.
struct Piece {
    std::size_t from = 0;
    std::size_t to = 0;
    std::size_t keyTo = 0; // behind the key; equal to `from` for an element of a list
    std::size_t value = 0; // where the value begins
};

constexpr std::string_view space = " \t\r\n";

std::size_t behindString(std::string_view text, std::size_t at) {
    for (++at; at < text.size(); ++at) {
        if (text[at] == '\\')
            ++at;
        else if (text[at] == '"')
            return at + 1;
    }
    return text.size();
}

std::size_t behindScalar(std::string_view text, std::size_t at) {
    if (text[at] == '"') return behindString(text, at);
    return std::min(text.find_first_of(",:]}[{ \t\r\n\"", at), text.size());
}

// Every value of a text that may be broken anywhere; never looks back.
std::vector<Piece> piecesOf(std::string_view text) {
    std::vector<Piece> pieces;
    std::vector<std::size_t> open; // of `pieces`: objects and lists not closed yet
    std::optional<Piece> key;
    for (std::size_t at = text.find_first_not_of(space); at < text.size();
         at = text.find_first_not_of(space, at)) {
        const char c = text[at];
        if (c == '}' || c == ']') {
            ++at;
            if (!open.empty()) {
                pieces[open.back()].to = at;
                open.pop_back();
            }
            continue;
        }
        if (c == ',' || c == ':') {
            ++at;
            continue;
        }
        Piece piece = key.value_or(Piece{at, at, at, at});
        piece.value = at;
        if (c == '{' || c == '[') {
            piece.to = text.size();
            ++at;
            open.push_back(pieces.size());
        } else {
            const std::size_t end = behindScalar(text, at);
            const std::size_t next = text.find_first_not_of(space, end);
            if (!key && c == '"' && next < text.size() && text[next] == ':') {
                key = Piece{at, end, end, end};
                at = next + 1;
                continue;
            }
            at = piece.to = std::max(end, at + 1);
        }
        pieces.push_back(piece);
        key.reset();
    }
    return pieces;
}

class Changer {
public:
    Changer(std::string_view text, std::minstd_rand& random)
        : m_text(text)
        , m_pieces(piecesOf(text))
        , m_random(random) {}

    [[nodiscard]] bool empty() const { return m_pieces.empty(); }
    const Piece& any() { return m_pieces[below(m_pieces.size())]; }
    std::size_t below(std::size_t count) { return m_random() % count; }
    [[nodiscard]] std::string_view valueOf(const Piece& piece) const {
        return m_text.substr(piece.value, piece.to - piece.value);
    }
    [[nodiscard]] std::string_view whole(const Piece& piece) const {
        return m_text.substr(piece.from, piece.to - piece.from);
    }
    // The text with a stretch of it replaced.
    [[nodiscard]] std::string with(std::size_t from, std::size_t to, std::string_view by) const {
        std::string changed(m_text.substr(0, from));
        changed += by;
        return changed += m_text.substr(to);
    }
    [[nodiscard]] std::string without(const Piece& piece) const {
        std::size_t to = m_text.find_first_not_of(space, piece.to);
        std::size_t from = piece.from;
        if (to < m_text.size() && m_text[to] == ',')
            ++to;
        else
            to = piece.to;
        if (to == piece.to && from > 0) {
            const std::size_t before = m_text.find_last_not_of(space, from - 1);
            if (before != std::string_view::npos && m_text[before] == ',') from = before;
        }
        return with(from, to, "");
    }

private:
    std::string_view m_text;
    std::vector<Piece> m_pieces;
    std::minstd_rand& m_random;
};

constexpr std::array<std::string_view, 26> usualValues{"0",
                                                       "-1",
                                                       "1",
                                                       "90",
                                                       "1e3",
                                                       "0.5",
                                                       "2147483648",
                                                       "null",
                                                       "true",
                                                       "false",
                                                       "{}",
                                                       "[]",
                                                       R"("")",
                                                       R"("0 in")",
                                                       R"("1 in")",
                                                       R"("A")",
                                                       R"("s1")",
                                                       R"("k1")",
                                                       R"("g1")",
                                                       R"("-1 thou")",
                                                       R"("88,5 mm")",
                                                       R"("20 C")",
                                                       R"("h1")",
                                                       R"("p1")",
                                                       R"("r1")",
                                                       R"("2026-03-14T09:26:53+01:00")"};

} // namespace

std::string mutatedJson(std::string_view text, std::minstd_rand& random,
                        std::string (*mutateBytes)(std::string_view)) {
    Changer changer(text, random);
    if (changer.empty()) return std::string(text);
    const Piece piece = changer.any();
    const Piece other = changer.any();
    switch (changer.below(7)) {
    case 0: // somebody else's value
        return changer.with(piece.value, piece.to, changer.valueOf(other));
    case 1:
        return changer.with(piece.value, piece.to, usualValues[changer.below(usualValues.size())]);
    case 2: // another one like it, which in an object has its key twice
        return changer.with(piece.to, piece.to, ", " + std::string(changer.whole(other)));
    case 3:
        return changer.without(piece);
    case 4: // somebody else's key
        if (other.keyTo == other.from) break;
        return changer.with(piece.from, piece.keyTo,
                            text.substr(other.from, other.keyTo - other.from));
    default: {
        const std::string_view value = changer.valueOf(piece);
        if (value.size() > 2 && value.front() == '"') // the quotes stay
            return changer.with(piece.value + 1, piece.to - 1,
                                mutateBytes(value.substr(1, value.size() - 2)));
        if (value.size() < 40) return changer.with(piece.value, piece.to, mutateBytes(value));
        break;
    }
    }
    return changer.with(piece.value, piece.to, usualValues[changer.below(usualValues.size())]);
}

std::string crossedJson(std::string_view text, std::string_view other, std::minstd_rand& random) {
    Changer changer(text, random), from(other, random);
    if (changer.empty() || from.empty()) return std::string(text);
    const Piece piece = changer.any();
    const Piece taken = from.any();
    if (changer.below(2) == 0)
        return changer.with(piece.to, piece.to, ", " + std::string(from.whole(taken)));
    return changer.with(piece.value, piece.to, from.valueOf(taken));
}

} // namespace borewright::test
