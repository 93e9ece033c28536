// SPDX-License-Identifier: GPL-3.0-or-later
// borewright hone: how the hone is driven, where each stone stops, what was done to a bore at the
// end; changes what is given, or tells how it stands.
#include "app/cli/change_file.h"
#include "app/cli/commands.h"
#include "app/cli/common.h"
#include "app/cli/typed_options.h"
#include "core/honing/stages.h"
#include "core/workbook/edit.h"

#include <algorithm>
#include <fmt/format.h>
#include <ostream>

namespace borewright {
namespace {

bool saysAnything(const HoneOptions& options) {
    return !options.speed.empty() || !options.beat.empty() || !options.feed.empty() ||
           options.oil || options.dry || !options.roughStopsAt.empty() ||
           !options.closedEndLead.empty() || !options.nextStopsAt.empty() ||
           !options.coolBelow.empty() || options.bore != 0 || !options.done.empty() ||
           !options.undone.empty();
}

Result<void> takeDrive(Hone& hone, const HoneOptions& options) {
    if (!options.speed.empty()) {
        const auto speed = numberOption("--speed", options.speed);
        if (!speed) return tl::unexpected(speed.error());
        hone.speedRpm = *speed;
    }
    if (!options.beat.empty()) {
        const auto beat = numberOption("--beat", options.beat);
        if (!beat) return tl::unexpected(beat.error());
        hone.beatsPerMinute = *beat;
    }
    if (!options.feed.empty()) hone.feed = options.feed;
    if (options.oil || options.dry) hone.oil = options.oil;
    return {};
}

Result<void> takeStages(HoneStages& stages, const HoneOptions& options, Unit small) {
    const auto length = [&](const char* option, const std::string& text,
                            std::optional<TypedLength>& into) -> Result<void> {
        if (text.empty()) return {};
        auto read = lengthOption(option, text, small);
        if (!read) return tl::unexpected(read.error());
        into = std::move(*read);
        return {};
    };
    return length("--rough-stops-at", options.roughStopsAt, stages.roughStopsAt)
        .and_then([&] { return length("--lead", options.closedEndLead, stages.closedEndLead); })
        .and_then(
            [&] { return length("--next-stops-at", options.nextStopsAt, stages.nextStopsAt); })
        .and_then([&] { return length("--cool-below", options.coolBelow, stages.coolBelow); });
}

Result<void> takeTicks(HoneRecord& record, const Block& block, const HoneOptions& options) {
    const bool ticks = !options.done.empty() || !options.undone.empty();
    if (options.bore == 0 && !ticks) return {};
    if (options.bore == 0) return refuse("--bore", "of which bore? Give its number");
    if (!ticks) return refuse("--bore", "--done or --not-done says what of it");
    if (findBore(block, options.bore) == nullptr)
        return refuse("--bore", "there is no bore " + std::to_string(options.bore));
    for (const std::string& one : options.done)
        if (std::ranges::find(options.undone, one) != options.undone.end())
            return refuse("--done and --not-done", "both name '" + one + "': which is it?");
    BoreTicks& bore = record.ticks[options.bore];
    const auto set = [&](const std::vector<std::string>& which, bool done) {
        for (const std::string& one : which)
            (one == "washed" ? bore.washed : bore.portsChamfered) = done;
    };
    set(options.done, true);
    set(options.undone, false);
    return {};
}

std::string stage(const char* name, const std::optional<TypedLength>& given, Length counts,
                  Unit small) {
    const std::string length = given ? given->withUnit() : typedFrom(counts, small).withUnit();
    return fmt::format("  {}: {}{}\n", name, length, given ? "" : " (common practice)");
}

void tell(const Workbook& workbook, std::ostream& out) {
    const HoneRecord& record = workbook.hone;
    const Hone& hone = record.hone;
    const Unit small = naturalUnits(workbook).small;
    out << "Hone: "
        << (hone.speedRpm ? fmt::format("{:g} turns a minute", *hone.speedRpm)
                          : std::string("speed not entered"))
        << fmt::format(", {:g} strokes a minute", hone.beatsPerMinute)
        << (hone.feed.empty() ? "" : ", " + hone.feed)
        << (!hone.oil   ? ", oil or dry not said"
            : *hone.oil ? ", with oil"
                        : ", dry")
        << ".\n";
    const Stages counts = stagesOf(record.stages);
    out << "Stages, on the diameter:\n"
        << stage("full rough stones stop with to go", record.stages.roughStopsAt,
                 counts.roughStopsAt, small)
        << stage("the closed end leads by", record.stages.closedEndLead, counts.closedEndLead,
                 small)
        << stage("the next stones stop with to go", record.stages.nextStopsAt, counts.nextStopsAt,
                 small)
        << stage("only on a cool bore below", record.stages.coolBelow, counts.coolBelow, small);
    std::vector<std::vector<std::string>> rows{{"bore", "ports chamfered", "washed"}};
    for (const Bore& bore : workbook.block.bores) {
        const auto found = record.ticks.find(bore.number);
        const BoreTicks ticks = found == record.ticks.end() ? BoreTicks() : found->second;
        const std::string ports = bore.map.ports.empty() ? "no ports" : "not yet";
        rows.push_back({std::to_string(bore.number), ticks.portsChamfered ? "done" : ports,
                        ticks.washed ? "done" : "not yet"});
    }
    out << alignedTable(rows);
}

} // namespace

Result<int> honeCommand(const HoneOptions& options, const CliOutside& outside) {
    auto opened = openToChange(outside.files, options.file);
    if (!opened) return tl::unexpected(opened.error());
    Workbook& workbook = opened->workbook;
    if (!saysAnything(options)) {
        tell(workbook, outside.out);
        return exitWithin;
    }
    HoneRecord record = workbook.hone;
    const auto taken =
        takeDrive(record.hone, options)
            .and_then(
                [&] { return takeStages(record.stages, options, naturalUnits(workbook).small); })
            .and_then([&] { return takeTicks(record, workbook.block, options); });
    if (!taken) return tl::unexpected(taken.error());
    if (auto done = borewright::apply(workbook, SetHone{std::move(record)}); !done)
        return tl::unexpected(done.error().within("nothing was changed"));
    if (auto saved = saveChange(outside, *opened, {"how the hone is driven", options.anyway});
        !saved)
        return tl::unexpected(saved.error());
    tell(workbook, outside.out);
    return exitWithin;
}

} // namespace borewright
