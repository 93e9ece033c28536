// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/length/number_text.h"

#include <gtest/gtest.h>

namespace borewright {
namespace {

TEST(TypedLength, DecimalCommaIsAPoint) {
    EXPECT_EQ(readLength("1,234", Unit::millimetre)->picometres(), 1'234'000'000);
}

} // namespace
} // namespace borewright
