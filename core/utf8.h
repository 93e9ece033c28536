// SPDX-License-Identifier: GPL-3.0-or-later
// UTF-8 (RFC 3629): finding what is not, and writing a character.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

namespace borewright {

// Offset of the first byte that is no part of a character; text.size() where all is well. Overlong
// forms, surrogates and what lies beyond U+10FFFF are not characters.
std::size_t firstBadUtf8(std::string_view text);
// At most `most` bytes of it, whole characters, for repeating in a sentence.
std::string shortened(std::string_view text, std::size_t most = 40);
void appendUtf8(std::string& text, std::uint32_t character);

inline constexpr std::string_view byteOrderMark = "\xEF\xBB\xBF";

} // namespace borewright
