// SPDX-License-Identifier: GPL-3.0-or-later
// Sizes on offer, the same for every bore.
#pragma once

#include "core/sizing/size_choice.h"
#include "tests/support/lengths.h"

namespace borewright::test {

// An oversize; only that it is one matters, not by how much.
inline Offer oversize(const std::string& name, const char* finish, std::size_t bores,
                      Unit unit = Unit::inch) {
    const OfferedBore size{typed(finish, unit).value(), {}, {}};
    return {name, Length{}, false, std::vector<std::optional<OfferedBore>>(bores, size)};
}

} // namespace borewright::test
