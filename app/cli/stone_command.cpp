// SPDX-License-Identifier: GPL-3.0-or-later
// borewright stone: the shop's stones; adds one, changes one, logs its care, lists them all.
#include "app/cli/change_file.h"
#include "app/cli/commands.h"
#include "app/cli/common.h"
#include "app/cli/typed_options.h"
#include "core/storage/workbook_file.h"
#include "core/workbook/edit.h"
#include "core/workbook/hone_names.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <ostream>

namespace borewright {
namespace {

constexpr double largestFactor = 100; // of a rate that is known to within

bool changesStone(const StoneOptions& options) {
    return options.rough || options.finish || !options.grit.empty() || !options.begins.empty() ||
           !options.ends.empty() || !options.outOpen.empty() || !options.outClosed.empty() ||
           !options.rate.empty() || !options.rateDoubt.empty();
}

Result<void> takeRate(Stone& stone, const StoneOptions& options, Unit small) {
    if (options.rate.empty() && options.rateDoubt.empty()) return {};
    if (options.rate.empty() || options.rateDoubt.empty())
        return refuse("--rate and --rate-doubt belong together: how fast, and within which factor "
                      "that is known (1.5: two thirds to one and a half times)");
    const auto rate = lengthOption("--rate", options.rate, small);
    if (!rate) return tl::unexpected(rate.error());
    if (rate->value() <= Length()) return refuse("--rate", "a stone takes more than nothing off");
    const auto factor = numberOption("--rate-doubt", options.rateDoubt);
    if (!factor) return tl::unexpected(factor.error());
    if (!(*factor > 1 && *factor <= largestFactor))
        return refuse("--rate-doubt", "is a factor over 1 and at most 100");
    StoneExperience experience = stone.experience.value_or(StoneExperience{});
    experience.logRate = std::log(rate->value().in(Unit::micrometre));
    experience.logRateDoubt = std::log(*factor);
    stone.experience = experience;
    return {};
}

// Takes what was given; the rest of the stone stays.
Result<void> take(Stone& stone, const StoneOptions& options, const DisplayUnits& units) {
    if (!options.grit.empty()) stone.grit = options.grit;
    if (options.rough || options.finish)
        stone.kind = options.finish ? StoneKind::finish : StoneKind::rough;
    const auto length = [&](const char* option, const std::string& text,
                            auto& into) -> Result<void> {
        if (text.empty()) return {};
        auto read = lengthOption(option, text, units.size);
        if (!read) return tl::unexpected(read.error());
        into = std::move(*read);
        return {};
    };
    return length("--begins", options.begins, stone.begins)
        .and_then([&] { return length("--ends", options.ends, stone.ends); })
        .and_then([&] { return length("--out-open", options.outOpen, stone.outOfOpenEnd); })
        .and_then([&] { return length("--out-closed", options.outClosed, stone.outOfClosedEnd); })
        .and_then([&] { return takeRate(stone, options, units.small); });
}

Result<void> checkNew(const StoneOptions& options) {
    if (!options.rough && !options.finish)
        return refuse("a new stone needs --rough or --finish: rough takes stock, finish the last");
    if (options.begins.empty() || options.ends.empty())
        return refuse("a new stone needs --begins and --ends: where its abrasive begins and ends, "
                      "measured from the carrier's lower end up");
    return {};
}

// What was done, in a sentence.
Result<std::string> change(HoneRecord& record, const StoneOptions& options,
                           const DisplayUnits& units) {
    const Stone* called = stoneCalled(record, options.name);
    if (called == nullptr) {
        if (auto good = checkNew(options); !good) return tl::unexpected(good.error());
        Stone stone;
        stone.id = freshStoneId(record);
        stone.name = options.name;
        record.stones.push_back(stone);
        called = &record.stones.back();
        if (auto good = take(record.stones.back(), options, units); !good)
            return tl::unexpected(good.error());
        return "Added the stone '" + called->name + "' (" + called->id + ").";
    }
    Stone& stone = record.stones[static_cast<std::size_t>(called - record.stones.data())];
    if (auto good = take(stone, options, units); !good) return tl::unexpected(good.error());
    return "Changed the stone '" + stone.name + "' (" + stone.id + ").";
}

Result<std::string> care(HoneRecord& record, const StoneOptions& options, Timestamp now) {
    const Stone* stone = stoneCalled(record, options.name);
    if (stone == nullptr) return refuse("--name", "there is no stone '" + options.name + "'");
    const auto time = timeOption("--time", options.time, now);
    if (!time) return tl::unexpected(time.error());
    StoneCare done;
    done.id = freshCareId(record);
    done.stone = stone->id;
    done.time = *time;
    std::string words = "dressed";
    if (options.care == "turned") {
        done.kind = StoneCare::Kind::turnedEndForEnd;
        words = "turned end for end";
    } else if (options.care == "reverse") {
        done.kind = StoneCare::Kind::runInReverse;
        words = "run in reverse";
    }
    if (!record.passes.empty()) done.afterPass = record.passes.back().id;
    record.care.push_back(done);
    return "Logged that the stone '" + stone->name + "' was " + words +
           (done.afterPass.empty() ? "" : ", after pass " + done.afterPass) + ".";
}

// A depth that is typed easily, at or below `depth` (above, where `up`).
Length roundDepth(Length depth, const DisplayUnits& units, bool up) {
    const std::int64_t step = units.size == Unit::inch ? 10 * picometresPer(Unit::thou)
                                                       : picometresPer(Unit::hundredth) * 10;
    const std::int64_t more = up ? step - 1 : 0; // depths are not below zero
    return Length::fromPicometres((depth.picometres() + more) / step * step);
}

// Where its lower end may go: the same in all bores, or not.
std::string reachWords(const Stone& stone, const Block& block, const DisplayUnits& units) {
    std::string all;
    for (const Bore& bore : block.bores) {
        const auto reach = reachOf(stone, bore);
        const std::string words =
            reach ? formatDepth(roundDepth(reach->highest, units, true), units) + " to " +
                        formatDepth(roundDepth(reach->lowest, units, false), units)
                  : std::string("none");
        if (!all.empty() && all != words) return "not the same in all bores";
        all = words;
    }
    return all.empty() ? "-" : all;
}

void list(const Workbook& workbook, std::ostream& out) {
    const DisplayUnits units = naturalUnits(workbook);
    const HoneRecord& record = workbook.hone;
    if (record.stones.empty()) {
        out << "No stone is entered yet.\n";
        return;
    }
    const std::string unit = ", " + std::string(symbol(units.size));
    std::vector<std::vector<std::string>> rows{
        {"stone", "grit", "kind", "begins", "ends", "passes", "lower end may go from, to" + unit}};
    for (const Stone& stone : record.stones) {
        const auto ofIt = [&](const Pass& pass) { return pass.stone == stone.id && !pass.struck; };
        rows.push_back({stone.name, stone.grit.empty() ? "-" : stone.grit,
                        stone.kind == StoneKind::rough ? "rough" : "finish",
                        stone.begins.withUnit(), stone.ends.withUnit(),
                        std::to_string(std::ranges::count_if(record.passes, ofIt)),
                        reachWords(stone, workbook.block, units)});
    }
    out << alignedTable(rows);
}

} // namespace

Result<int> stoneCommand(const StoneOptions& options, const CliOutside& outside) {
    auto opened = openToChange(outside.files, options.file);
    if (!opened) return tl::unexpected(opened.error());
    Workbook& workbook = opened->workbook;
    const bool changes = changesStone(options);
    if (options.name.empty()) {
        if (changes || !options.care.empty()) return refuse("--name", "which stone? Give its name");
        if (options.json)
            outside.out << writeStones(workbook.hone);
        else
            list(workbook, outside.out);
        return exitWithin;
    }
    if (changes == !options.care.empty())
        return refuse(changes ? "change the stone first, then log its care"
                              : "nothing is said of the stone '" + options.name +
                                    "': --care logs what was done to it, the other options what "
                                    "it is");
    HoneRecord record = workbook.hone;
    const auto said = changes ? change(record, options, naturalUnits(workbook))
                              : care(record, options, outside.clock.now());
    if (!said) return tl::unexpected(said.error());
    if (auto done = borewright::apply(workbook, SetHone{std::move(record)}); !done)
        return tl::unexpected(done.error().within("nothing was changed"));
    if (auto saved = saveChange(outside, *opened, {*said, options.anyway}); !saved)
        return tl::unexpected(saved.error());
    outside.out << *said << "\n";
    if (const Stone* stone = stoneCalled(workbook.hone, options.name); changes && stone != nullptr)
        if (const std::string why = fitsNowhere(*stone, workbook.block); !why.empty())
            outside.err << "borewright: " << why << ": is one of its lengths a slip?\n";
    return exitWithin;
}

} // namespace borewright
