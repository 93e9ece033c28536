// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/storage/history_join.h"

#include "core/storage/history_log.h"

#include <algorithm>

namespace borewright {
namespace {

using Entries = std::vector<HistoryEntry>;

// What both began with.
std::size_t begunWith(const Entries& mine, const Entries& theirs) {
    const auto [own, other] = std::ranges::mismatch(mine, theirs);
    return static_cast<std::size_t>(own - mine.begin());
}

// How many of mine, from its beginning, theirs has too: also behind his own, where somebody kept
// mine over his before.
std::size_t heldBy(const Entries& theirs, const Entries& mine, std::size_t begun) {
    for (std::size_t from = begun; from < theirs.size(); ++from) {
        std::size_t i = begun;
        for (std::size_t j = from; i < mine.size() && j < theirs.size() && mine[i] == theirs[j];
             ++j)
            ++i;
        if (i > begun) return i;
    }
    return begun;
}

std::string nameOf(const HistoryEntry& entry) {
    return (entry.who.empty() ? std::string("somebody") : entry.who) + ", " +
           dateInWords(entry.time) + ", " + clockTime(entry.time);
}

Workbook recordOf(Workbook workbook) {
    workbook.history = {};
    return workbook;
}

} // namespace

History joinedHistory(const Workbook& mine, const Workbook& theirs, const std::string& who,
                      const Timestamp& now) {
    const Entries& own = mine.history.entries;
    const Entries& others = theirs.history.entries;
    const std::string& id = mine.history.id;
    const bool another = !id.empty() && !theirs.history.id.empty() && id != theirs.history.id;
    const std::size_t begun = begunWith(own, others);
    const std::size_t held = heldBy(others, own, begun);
    if (another || (others.size() == begun && recordOf(mine) == recordOf(theirs)))
        return mine.history;
    const std::string what =
        "kept own over " + (others.size() > begun ? nameOf(others.back()) : "another's changes");

    Workbook joined = recordOf(mine);
    joined.history = mine.history;
    joined.history.entries = others;
    const auto from = behind(mine, held);
    HistoryEntry turn{
        now, who, own.size() > held ? "went on from before the other's changes" : what, {}};
    if (from)
        turn.was = oldValues(recordOf(theirs), *from);
    else
        turn.dropped = true; // nobody knows where mine went on
    const bool turned = noteChange(joined, std::move(turn));
    auto& entries = joined.history.entries;
    entries.insert(entries.end(), own.begin() + static_cast<std::ptrdiff_t>(held), own.end());
    if (own.size() > held || !turned) entries.push_back({now, who, what, {}});
    return joined.history;
}

} // namespace borewright
