// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/honing/plan_share.h"

#include <algorithm>
#include <atomic>
#include <exception>
#include <mutex>
#include <thread>
#include <vector>

namespace borewright {

namespace {

constexpr unsigned mostHands = 4; // one bore's search has not more to do side by side

} // namespace

void shareOut(std::size_t count, const std::function<void(std::size_t)>& work,
              const std::function<bool(std::size_t)>& goesOn) {
    if (count == 0) return;
    std::atomic<std::size_t> next = 0, done = 0;
    std::atomic<bool> stopped = false;
    std::exception_ptr failure;
    std::mutex failing;
    const auto piece = [&](std::size_t index) {
        try {
            work(index);
        } catch (...) {
            const std::scoped_lock lock(failing);
            if (!failure) failure = std::current_exception();
            stopped = true;
        }
        ++done;
    };
    const auto help = [&] {
        while (!stopped) {
            const std::size_t index = next++;
            if (index >= count) return;
            piece(index);
        }
    };
    const unsigned cores = std::clamp(std::thread::hardware_concurrency(), 1U, mostHands);
    const auto hands = std::min<std::size_t>(cores, count) - 1;
    std::vector<std::jthread> helpers;
    const std::size_t first = next++;
    for (std::size_t i = 0; i < hands; ++i)
        helpers.emplace_back(help);
    piece(first);
    while (!stopped) {
        if (goesOn && !goesOn(done)) {
            stopped = true;
            break;
        }
        const std::size_t index = next++;
        if (index >= count) break;
        piece(index);
    }
    helpers.clear(); // joined
    if (failure) std::rethrow_exception(failure);
}

} // namespace borewright
