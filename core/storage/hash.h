// SPDX-License-Identifier: GPL-3.0-or-later
// FNV-1a, 64 bit: tells whether a file is the one that was written. No protection against forgery.
// Offset basis and prime of its authors (Fowler, Noll, Vo), from memory; a test pins two values.
#pragma once

#include <cstdint>
#include <string_view>

namespace borewright {

constexpr std::uint64_t fnv1a(std::string_view bytes) {
    std::uint64_t hash = 0xcbf29ce484222325U;
    for (const char c : bytes) {
        hash ^= static_cast<unsigned char>(c);
        hash *= 0x100000001b3U;
    }
    return hash;
}

} // namespace borewright
