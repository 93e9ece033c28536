// SPDX-License-Identifier: GPL-3.0-or-later
// One pass over places and rows finds all three kinds of runs.
#include "core/honing/contact_runs.h"

#include <algorithm>

namespace borewright {

ContactRuns::ContactRuns(const Contact& contact)
    : touchesEnd(contact.places.size())
    , stay(contact.rows())
    , contact_(contact)
    , open_(contact.rows()) {}

void ContactRuns::find() {
    touches.clear();
    wallStays.clear();
    faceStays.clear();
    std::ranges::fill(stay, 0.0);
    std::ranges::fill(open_, Open{});
    for (std::size_t p = 0; p < contact_.places.size(); ++p) {
        if (contact_.places[p].bears) findAt(p);
        touchesEnd[p] = touches.size();
    }
}

void ContactRuns::findAt(std::size_t place) {
    const Place& at = contact_.places[place];
    const bool goesOn = place > 0 && contact_.places[place - 1].share == at.share;
    const auto prolong = [&](std::vector<StayRun>& runs, Open& open, std::size_t row) {
        if (goesOn && open.run > 0 && open.end == place) {
            runs[open.run - 1].end = place + 1;
        } else {
            runs.push_back({row, place, place + 1, at.share});
            open.run = runs.size();
        }
        open.end = place + 1;
    };
    std::size_t last = 0; // row of the face that touched last
    for (std::size_t n = at.top == 0 ? 1 : 0; n < at.count; ++n) {
        if (!(contact_.overlap[at.offset + n] > 0)) continue;
        const double weight = contact_.weight[at.offset + n];
        const std::size_t k = at.top + n;
        if (last > 0 && last + 1 == k && touches.back().weight == weight)
            touches.back().end = k + 1;
        else
            touches.push_back({k, k + 1, weight});
        last = k;
        if (at.share == 0) continue;
        const std::size_t wall = at.wallRow() + n;
        const std::size_t face = contact_.wall + k;
        stay[wall] += at.share;
        stay[face] += at.share;
        prolong(wallStays, open_[wall], wall);
        prolong(faceStays, open_[face], k);
    }
}

} // namespace borewright
