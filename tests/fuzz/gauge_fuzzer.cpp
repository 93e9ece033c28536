// SPDX-License-Identifier: GPL-3.0-or-later
// Any bytes typed as lines at a gauge; stops where what must hold is broken.
#include "tests/support/fuzz_properties.h"

#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    // A char may look at any bytes.
    const std::string_view bytes(reinterpret_cast<const char*>(data), size);
    if (const std::string broken = borewright::test::brokenByGauge(bytes); !broken.empty()) {
        std::fprintf(stderr, "broken: %s\n", broken.c_str());
        std::abort();
    }
    return 0;
}
