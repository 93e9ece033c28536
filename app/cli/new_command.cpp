// SPDX-License-Identifier: GPL-3.0-or-later
// borewright new: a workbook in one line, for a bench with no desk.
#include "app/cli/commands.h"
#include "app/cli/common.h"
#include "core/storage/saver.h"
#include "core/storage/workbook_file.h"
#include "core/workbook/check.h"

#include <algorithm>
#include <ostream>
#include <sstream>

namespace borewright {
namespace {

// A length whose unit stands behind it: a bare 3.5 could be inches or millimetres.
Result<TypedLength> lengthWithUnit(const std::string& option, const std::string& text) {
    const auto inch = readTyped(text, Unit::inch);
    if (!inch) return tl::unexpected(inch.error().within(option));
    const auto metric = readTyped(text, Unit::millimetre);
    if (metric && inch->unit() != metric->unit())
        return refuse(option, "say the unit of " + text + ": " + text + "in or " + text + "mm");
    return *inch;
}

Result<TypedLength> positive(const std::string& option, const std::string& text) {
    auto length = lengthWithUnit(option, text);
    if (length && length->value() <= Length())
        return refuse(option, "'" + text + "' must be more than zero");
    return length;
}

Result<std::optional<TypedLength>> optionalLength(const std::string& option,
                                                  const std::string& text) {
    if (text.empty()) return std::optional<TypedLength>();
    return positive(option, text).map([](const TypedLength& l) { return std::optional(l); });
}

Result<Arrangement> arrangementOf(const std::string& text) {
    if (text == "inline") return Arrangement::inLine;
    if (text == "v") return Arrangement::vee;
    if (text == "opposed") return Arrangement::opposed;
    return refuse("--arrangement", "'" + text + "' is none of inline, v, opposed");
}

// "0.5,1.75,3" in the unit of the bore's depth, or "…in" each.
Result<std::vector<Level>> levelsOf(const std::string& text, const TypedLength& depth) {
    std::vector<Level> levels;
    std::istringstream in(text);
    for (std::string part; std::getline(in, part, ',');) {
        auto level = readTyped(part, depth.unit());
        if (!level) return tl::unexpected(level.error().within("--levels"));
        if (level->value() <= Length() || level->value() > depth.value())
            return refuse("--levels", "'" + part + "' is not inside the bore");
        levels.push_back({*level, Judging::byMap});
    }
    const auto depthOf = [](const Level& level) { return level.depth.value(); };
    std::ranges::sort(levels, {}, depthOf);
    if (std::ranges::adjacent_find(levels, {}, depthOf) != levels.end())
        return refuse("--levels", "the same depth stands there twice");
    return levels;
}

Result<Bore> boreOf(const NewOptions& options) {
    const auto size = positive("--size", options.size);
    if (!size) return tl::unexpected(size.error());
    const auto depth = positive("--depth", options.depth);
    if (!depth) return tl::unexpected(depth.error());
    Bore bore;
    bore.standardSize = *size;
    bore.depth = *depth;
    bore.openEnd = options.openEnd;
    if (options.blind) bore.roomAtClosedEnd = typedFrom(Length(), depth->unit());
    if (options.levels.empty()) {
        bore.levels = proposeLevels(bore);
        return bore;
    }
    const auto levels = levelsOf(options.levels, *depth);
    if (!levels) return tl::unexpected(levels.error());
    bore.levels = *levels;
    return bore;
}

Result<std::optional<LimitSet>> wornOf(const NewOptions& options) {
    LimitSet worn;
    worn.id = "l1";
    worn.name = "worn";
    const auto size = optionalLength("--worn-size-to", options.wornTo);
    if (!size) return tl::unexpected(size.error());
    const auto outOfRound = optionalLength("--worn-out-of-round", options.wornOutOfRound);
    if (!outOfRound) return tl::unexpected(outOfRound.error());
    const auto taper = optionalLength("--worn-taper", options.wornTaper);
    if (!taper) return tl::unexpected(taper.error());
    worn.limits.sizeUpper = *size;
    worn.limits.outOfRound = *outOfRound;
    worn.limits.taper = *taper;
    if (const auto good = checkLimits(worn.limits); !good) return tl::unexpected(good.error());
    if (worn.limits == Limits()) return std::optional<LimitSet>();
    return worn;
}

Result<std::optional<LimitSet>> finishOf(const NewOptions& options) {
    const auto size = optionalLength("--finish-size", options.finishSize);
    if (!size) return tl::unexpected(size.error());
    const auto from = optionalLength("--finish-from", options.finishFrom);
    if (!from) return tl::unexpected(from.error());
    const auto to = optionalLength("--finish-to", options.finishTo);
    if (!to) return tl::unexpected(to.error());
    LimitSet finish;
    finish.name = "finish";
    finish.purpose = LimitPurpose::finish;
    finish.finishSize = *size;
    finish.limits.sizeLower = *from;
    finish.limits.sizeUpper = *to;
    if (const auto good = checkLimits(finish.limits); !good) return tl::unexpected(good.error());
    if (*size && *from && (*size)->value() < (*from)->value())
        return refuse("--finish-size", "is below the smallest finished size");
    if (*size && *to && (*size)->value() > (*to)->value())
        return refuse("--finish-size", "is over the largest finished size");
    if (!*size && finish.limits == Limits()) return std::optional<LimitSet>();
    return finish;
}

Result<void> takeLimits(Workbook& workbook, const NewOptions& options) {
    auto worn = wornOf(options);
    if (!worn) return tl::unexpected(worn.error());
    auto finish = finishOf(options);
    if (!finish) return tl::unexpected(finish.error());
    const auto aim = optionalLength("--aim", options.aim);
    if (!aim) return tl::unexpected(aim.error());
    if (*worn) workbook.limitSets.push_back(std::move(**worn));
    if (*finish) {
        (*finish)->id = freshLimitSetId(workbook);
        workbook.limitSets.push_back(std::move(**finish));
    }
    if (*aim) workbook.straightAim = *aim;
    return {};
}

} // namespace

Result<int> newCommand(const NewOptions& options, const CliOutside& outside) {
    if (!hasExtension(options.file, workbookExtension))
        return refuse(options.file, "the name of a workbook ends in .borebook");
    if (outside.files.facts(options.file))
        return refuse(options.file, "there is such a file already; it is left as it is");
    if (options.bores < 1 || options.bores > mostBores)
        return refuse("--bores",
                      "a block has at least one bore and at most " + std::to_string(mostBores));
    const auto arrangement = arrangementOf(options.arrangement);
    if (!arrangement) return tl::unexpected(arrangement.error());
    auto bore = boreOf(options);
    if (!bore) return tl::unexpected(bore.error());
    Workbook workbook = emptyWorkbook();
    if (const auto good = takeLimits(workbook, options); !good) return tl::unexpected(good.error());
    workbook.block.arrangement = *arrangement;
    for (int number = 1; number <= options.bores; ++number) {
        bore->number = number;
        workbook.block.bores.push_back(*bore);
    }
    const auto saved = save(outside.files, options.file, writeWorkbook(workbook));
    if (!saved) return tl::unexpected(saved.error().within(options.file));
    outside.out << "Began " << options.file << ": " << options.bores
                << (options.bores == 1 ? " bore, " : " bores, ") << options.size << ", "
                << bore->levels.size() << " levels a bore.\n";
    return exitWithin;
}

} // namespace borewright
