// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/honing/plan_share.h"

#include <algorithm>
#include <atomic>
#include <chrono>
#include <gtest/gtest.h>
#include <stdexcept>
#include <thread>
#include <vector>

namespace borewright {
namespace {

TEST(ShareOut, EveryPieceIsDoneOnce) {
    for (const std::size_t count : {0U, 1U, 2U, 7U, 500U}) {
        std::vector<std::atomic<int>> done(count);
        shareOut(count, [&](std::size_t k) { ++done[k]; }, {});
        EXPECT_TRUE(std::ranges::all_of(done, [](const auto& times) { return times == 1; }))
            << count << " pieces";
    }
}

TEST(ShareOut, OnlyTheCallerIsAskedWhetherToGoOn) {
    const auto caller = std::this_thread::get_id();
    std::size_t last = 0;
    shareOut(
        200, [](std::size_t) { std::this_thread::yield(); },
        [&](std::size_t done) {
            EXPECT_EQ(std::this_thread::get_id(), caller);
            EXPECT_GE(done, last) << "what is done grows";
            last = done;
            return true;
        });
    EXPECT_GT(last, 0U);
}

TEST(ShareOut, GivenUpItStillDoesTheFirstAndBeginsNoMore) {
    std::atomic<std::size_t> done = 0;
    std::atomic<bool> first = false;
    const std::size_t count = 100000;
    shareOut(
        count,
        [&](std::size_t k) {
            ++done;
            if (k == 0)
                first = true;
            else
                std::this_thread::sleep_for(std::chrono::milliseconds(1));
        },
        [](std::size_t) { return false; });
    EXPECT_TRUE(first) << "something is always found";
    EXPECT_LT(done, count);
}

TEST(ShareOut, AFailureReachesTheCaller) {
    EXPECT_THROW(shareOut(50,
                          [](std::size_t k) {
                              if (k == 30) throw std::runtime_error("piece");
                          },
                          {}),
                 std::runtime_error);
}

} // namespace
} // namespace borewright
