// SPDX-License-Identifier: GPL-3.0-or-later
// Any bytes given to the reader of workbooks; stops where what must hold is broken. Bytes changed
// blindly seldom get past the parser, so three of four changes are made to the JSON's own parts.
#include "tests/fuzz/json_mutator.h"
#include "tests/support/fuzz_properties.h"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);
extern "C" std::size_t LLVMFuzzerMutate(std::uint8_t* data, std::size_t size, std::size_t most);
extern "C" std::size_t LLVMFuzzerCustomMutator(std::uint8_t* data, std::size_t size,
                                               std::size_t most, unsigned seed);
extern "C" std::size_t LLVMFuzzerCustomCrossOver(const std::uint8_t* data, std::size_t size,
                                                 const std::uint8_t* other, std::size_t otherSize,
                                                 std::uint8_t* out, std::size_t most,
                                                 unsigned seed);

namespace {

// A char may look at any bytes, and write them.
std::string_view asText(const std::uint8_t* data, std::size_t size) {
    return {reinterpret_cast<const char*>(data), size};
}

std::size_t put(const std::string& text, std::uint8_t* out, std::size_t most) {
    const std::size_t size = std::min(text.size(), most);
    std::copy_n(text.data(), size, reinterpret_cast<char*>(out));
    return size;
}

std::string mutateBytes(std::string_view bytes) {
    std::string changed(bytes);
    changed.resize(bytes.size() + 8);
    changed.resize(LLVMFuzzerMutate(reinterpret_cast<std::uint8_t*>(changed.data()), bytes.size(),
                                    changed.size()));
    return changed;
}

} // namespace

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    if (const std::string broken = borewright::test::brokenByWorkbook(asText(data, size));
        !broken.empty()) {
        std::fprintf(stderr, "broken: %s\n", broken.c_str());
        std::abort();
    }
    return 0;
}

std::size_t LLVMFuzzerCustomMutator(std::uint8_t* data, std::size_t size, std::size_t most,
                                    unsigned seed) {
    std::minstd_rand random(seed);
    if (random() % 4 == 0) return LLVMFuzzerMutate(data, size, most);
    std::string text(asText(data, size));
    for (auto times = 1 + random() % 3; times > 0; --times)
        text = borewright::test::mutatedJson(text, random, mutateBytes);
    return put(text, data, most);
}

std::size_t LLVMFuzzerCustomCrossOver(const std::uint8_t* data, std::size_t size,
                                      const std::uint8_t* other, std::size_t otherSize,
                                      std::uint8_t* out, std::size_t most, unsigned seed) {
    std::minstd_rand random(seed);
    return put(borewright::test::crossedJson(asText(data, size), asText(other, otherSize), random),
               out, most);
}
