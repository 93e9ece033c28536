// SPDX-License-Identifier: GPL-3.0-or-later
// What differs between two workbooks, in the user's words and in the order of the workbook: job,
// block, limits, each survey with its readings station by station, pistons, rings, stones, passes.
//
// Readings are compared as they are. All else is compared in the form that the file has
// (record_differences.h), so that a field of any kind, also one this version does not know, is
// never passed over: the list is empty only where both workbooks are equal.
#pragma once

#include "core/workbook/workbook.h"

#include <optional>
#include <string>
#include <vector>

namespace borewright {

struct Difference {
    std::string survey;             // id of the survey it stands in; empty = in none
    std::optional<int> bore;        // engine number, where it belongs to one bore
    std::optional<Station> station; // of a reading
    std::string place;              // "as found, bore 3, 1.75 in, B"; empty = the workbook itself
    std::string what;               // "reading", "customer", "standard size"
    std::optional<std::string> was; // nothing = was not there
    std::optional<std::string> is;  // nothing = is not there any more
    friend bool operator==(const Difference&, const Difference&) = default;
};

// Surveys are told apart by their ids, readings by their stations; several at one station are
// compared in the order typed. A survey that only one of the two has is one difference.
std::vector<Difference> differences(const Workbook& was, const Workbook& is);

// "as found, bore 3, 1.75 in, B: reading was −1.5 thou, is −1.0 thou". `wasWord` and `isWord` name
// the two sides where "was" and "is" would mislead.
std::string inWords(const Difference& difference, const std::string& wasWord = "was",
                    const std::string& isWord = "is");

} // namespace borewright
