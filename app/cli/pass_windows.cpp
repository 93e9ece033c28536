// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/pass_windows.h"

#include "app/cli/typed_options.h"

#include <algorithm>

namespace borewright {
namespace {

using Options = std::vector<TypedOption>;

bool isAmount(const TypedOption& option) {
    return option.name == "--strokes" || option.name == "--seconds";
}

Options those(const Options& options, auto which) {
    Options chosen;
    std::ranges::copy_if(options, std::back_inserter(chosen), which);
    return chosen;
}

auto called(const char* name) {
    return [name](const TypedOption& option) { return option.name == name; };
}

Result<void> checkCounts(std::size_t from, std::size_t to, std::size_t amounts) {
    if (from == 0 && to == 0 && amounts == 0)
        return refuse("no window is given: --from, --to and --strokes or --seconds say where the "
                      "lower end of the abrasive went");
    if (from == to && to == amounts) return {};
    return refuse("each window needs one --from, one --to and one of --strokes or --seconds: "
                  "there are " +
                  std::to_string(from) + " --from, " + std::to_string(to) + " --to and " +
                  std::to_string(amounts) + " --strokes or --seconds");
}

Result<StrokeWindow> windowOf(const TypedOption& from, const TypedOption& to,
                              const TypedOption& amount, Unit usual) {
    StrokeWindow window;
    for (const auto& [option, into] : {std::pair{&from, &window.from}, {&to, &window.to}}) {
        auto length = lengthOption(option->name, option->text, usual);
        if (!length) return tl::unexpected(length.error());
        *into = std::move(*length);
    }
    const auto number = numberOption(amount.name, amount.text);
    if (!number) return tl::unexpected(number.error());
    (amount.name == "--strokes" ? window.strokes : window.seconds) = *number;
    return window;
}

// Seconds held in each window.
Result<void> takeHolds(const Options& options, std::vector<StrokeWindow>& windows) {
    const Options holds = those(options, called("--hold"));
    const bool byOrder = holds.size() == windows.size();
    std::vector<bool> held(windows.size(), false);
    std::size_t begun = 0, seen = 0;
    for (const TypedOption& option : options) {
        if (option.name == "--from") ++begun;
        if (option.name != "--hold") continue;
        const std::size_t place = byOrder ? seen++ : begun - 1; // wraps where none has begun
        if (place >= windows.size())
            return refuse("--hold", "stands before any --from: say it behind its window");
        if (held[place])
            return refuse("--hold", "is given twice for window " + std::to_string(place + 1));
        const auto seconds = numberOption("--hold", option.text);
        if (!seconds) return tl::unexpected(seconds.error());
        held[place] = true;
        windows[place].holdSeconds = *seconds;
    }
    return {};
}

} // namespace

Result<std::vector<StrokeWindow>> windowsOf(const Options& options, Unit usual) {
    const Options from = those(options, called("--from"));
    const Options to = those(options, called("--to"));
    const Options amounts = those(options, isAmount);
    if (auto good = checkCounts(from.size(), to.size(), amounts.size()); !good)
        return tl::unexpected(good.error());
    std::vector<StrokeWindow> windows;
    for (std::size_t i = 0; i < from.size(); ++i) {
        auto window = windowOf(from[i], to[i], amounts[i], usual);
        if (!window) return tl::unexpected(window.error());
        windows.push_back(std::move(*window));
    }
    if (auto good = takeHolds(options, windows); !good) return tl::unexpected(good.error());
    return windows;
}

} // namespace borewright
