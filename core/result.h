// SPDX-License-Identifier: GPL-3.0-or-later
// A value, or an error that says where and what in words for the user. No exception crosses the
// edge of a module of core/; whatever can be refused returns a Result.
#pragma once

#include <string>
#include <tl/expected.hpp>
#include <utility>

namespace borewright {

// An explained refusal. `where` is the place as the user knows it ("line 12: depth", "size"; empty
// where the caller knows it better), `what` a sentence part in shop words ("'6o' is not a number").
struct Error {
    std::string where;
    std::string what;

    [[nodiscard]] std::string message() const { return where.empty() ? what : where + ": " + what; }
    // The same error, found inside an outer place: "line 12" + "depth" gives "line 12: depth".
    [[nodiscard]] Error within(const std::string& outer) const {
        return {where.empty() ? outer : outer + ": " + where, what};
    }
    friend bool operator==(const Error&, const Error&) = default;
};

template<class T>
using Result = tl::expected<T, Error>;

inline tl::unexpected<Error> refuse(std::string what) {
    return tl::unexpected<Error>(Error{{}, std::move(what)});
}
inline tl::unexpected<Error> refuse(std::string where, std::string what) {
    return tl::unexpected<Error>(Error{std::move(where), std::move(what)});
}

} // namespace borewright
