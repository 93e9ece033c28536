// SPDX-License-Identifier: GPL-3.0-or-later
// Changes a JSON text by its values and members, so that most of what comes out is still JSON and
// gets past the parser to the reader behind it.
#pragma once

#include <cstdint>
#include <random>
#include <string>
#include <string_view>

namespace borewright::test {

// `text` with one value, key or member changed, taken out, doubled or put elsewhere; as it was
// where it holds no value at all. `mutateBytes` changes the inside of a value.
std::string mutatedJson(std::string_view text, std::minstd_rand& random,
                        std::string (*mutateBytes)(std::string_view));
// `text` with one of its values replaced by one of `other`'s.
std::string crossedJson(std::string_view text, std::string_view other, std::minstd_rand& random);

} // namespace borewright::test
