// SPDX-License-Identifier: GPL-3.0-or-later
// Whether one of several sentences has these words in it.
#pragma once

#include <algorithm>
#include <string>
#include <vector>

namespace borewright::test {

inline bool says(const std::vector<std::string>& sentences, const std::string& text) {
    return std::ranges::any_of(sentences, [&](const std::string& sentence) {
        return sentence.find(text) != std::string::npos;
    });
}

} // namespace borewright::test
