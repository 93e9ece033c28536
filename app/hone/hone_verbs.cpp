// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/hone/hone_verbs.h"

#include <algorithm>
#include <cmath>

namespace borewright {
namespace {

constexpr double fullShare = 0.75, shortShare = 0.25; // of the depth

// A length that a rule shows: whole quarters of an inch, whole five millimetres; never none.
Length handy(double share, const TypedLength& depth) {
    const bool inch = isInchFamily(depth.unit());
    const Length step = inch ? Length::whole(250, Unit::thou) : Length::whole(5, Unit::millimetre);
    const auto steps = static_cast<std::int64_t>(
        std::floor(share * static_cast<double>(depth.value().picometres()) /
                   static_cast<double>(step.picometres())));
    return std::max<std::int64_t>(1, steps) * step;
}

Stone usual(const char* name, const char* grit, StoneKind kind, double share,
            const TypedLength& depth) {
    const bool inch = isInchFamily(depth.unit());
    const Unit unit = inch ? Unit::inch : Unit::millimetre;
    Stone stone;
    stone.name = name;
    stone.grit = grit;
    stone.kind = kind;
    // What a carrier usually has below its abrasive; invented, as is the set.
    const Length dead = inch ? Length::whole(60, Unit::thou) : Length::whole(150, Unit::hundredth);
    stone.begins = typedFrom(dead, unit);
    stone.ends = typedFrom(dead + handy(share, depth), unit);
    return stone;
}

std::string freeName(const HoneRecord& record, const std::string& wanted) {
    const std::string base = wanted.empty() ? "stone" : wanted;
    std::string name = base;
    for (int n = 2; stoneCalled(record, name) != nullptr; ++n)
        name = base + " " + std::to_string(n);
    return name;
}

std::string freeSurveyName(const Workbook& workbook, const std::string& base) {
    const auto taken = [&](const std::string& name) {
        return std::ranges::any_of(
            workbook.surveys, [&](const Survey& survey) { return survey.header.name == name; });
    };
    std::string name = base;
    for (int n = 2; taken(name); ++n)
        name = base + " (" + std::to_string(n) + ")";
    return name;
}

} // namespace

Pass passNow(const Workbook& workbook, int bore, const std::string& stone,
             std::vector<StrokeWindow> windows, Timestamp now) {
    Pass pass;
    pass.id = freshPassId(workbook.hone);
    pass.bore = bore;
    pass.stone = stone;
    pass.time = now;
    if (!workbook.surveys.empty()) pass.after = workbook.surveys.back().header.id;
    pass.windows = std::move(windows);
    return pass;
}

std::vector<StrokeWindow> windowsOf(const PlannedSetUp& planned,
                                    const std::vector<std::optional<double>>& seconds) {
    constexpr double alike = 0.05; // of a second
    std::vector<StrokeWindow> windows;
    for (std::size_t i = 0; i < planned.windows.size(); ++i) {
        const PlannedWindow& plan = planned.windows[i];
        StrokeWindow window;
        window.from = plan.from;
        window.to = plan.to;
        window.holdSeconds = plan.holdSeconds;
        const auto done = i < seconds.size() ? seconds[i] : std::nullopt;
        if (done && std::abs(*done - plan.seconds) > alike)
            window.seconds = *done;
        else
            window.strokes = plan.strokes;
        windows.push_back(std::move(window));
    }
    return windows;
}

PlannedSetUp timed(const std::string& stone, const std::vector<StrokeWindow>& windows,
                   const Hone& hone) {
    constexpr double secondsAMinute = 60;
    PlannedSetUp setUp;
    setUp.stone = stone;
    for (const StrokeWindow& window : windows) {
        PlannedWindow counted{window.from, window.to, strokesOf(window, hone), 0,
                              window.holdSeconds};
        if (hone.beatsPerMinute > 0)
            counted.seconds = window.seconds.value_or(
                std::round(counted.strokes * secondsAMinute / hone.beatsPerMinute));
        setUp.windows.push_back(std::move(counted));
    }
    return setUp;
}

void strikePass(HoneRecord& record, const std::string& pass, const std::string& why) {
    const auto found = std::ranges::find(record.passes, pass, &Pass::id);
    if (found != record.passes.end()) found->struck = why;
}

void addCare(HoneRecord& record, const std::string& stone, StoneCare::Kind kind, Timestamp now) {
    StoneCare care;
    care.id = freshCareId(record);
    care.stone = stone;
    care.kind = kind;
    care.time = now;
    if (!record.passes.empty()) care.afterPass = record.passes.back().id;
    record.care.push_back(std::move(care));
}

std::string addStone(HoneRecord& record, Stone stone) {
    stone.id = freshStoneId(record);
    stone.name = freeName(record, stone.name);
    record.stones.push_back(std::move(stone));
    return record.stones.back().id;
}

Result<std::vector<Stone>> usualStones(const Bore& bore) {
    if (!bore.depth || bore.depth->value() <= Length())
        return refuse("the depth of bore " + std::to_string(bore.number) +
                      " is not entered: stones are chosen by it (Block page, Ctrl+1)");
    return std::vector{usual("full rough", "100", StoneKind::rough, fullShare, *bore.depth),
                       usual("short rough", "100", StoneKind::rough, shortShare, *bore.depth),
                       usual("full finish", "280", StoneKind::finish, fullShare, *bore.depth)};
}

bool isUsed(const HoneRecord& record, const std::string& stone) {
    return std::ranges::any_of(record.passes,
                               [&](const Pass& pass) { return pass.stone == stone; }) ||
           std::ranges::any_of(record.care,
                               [&](const StoneCare& care) { return care.stone == stone; });
}

SurveyHeader nextCheck(const Workbook& workbook, SurveyHeader proposed, int bore,
                       std::vector<Station> stations, Timestamp now) {
    if (stations.empty()) {
        stations = plannedStations(workbook.block);
        std::erase_if(stations, [&](const Station& one) { return one.bore != bore; });
    }
    proposed.kind = SurveyKind::check;
    proposed.time = now;
    proposed.asked = std::move(stations);
    const auto passes = std::ranges::count_if(
        workbook.hone.passes, [&](const Pass& pass) { return pass.bore == bore && !pass.struck; });
    proposed.name = freeSurveyName(workbook, "bore " + std::to_string(bore) + ", after pass " +
                                                 std::to_string(passes));
    return proposed;
}

const Survey* waitingCheck(const Workbook& workbook, int bore) {
    if (workbook.surveys.empty()) return nullptr;
    const Survey& last = workbook.surveys.back();
    const auto& asked = last.header.asked;
    const bool own = asked && !asked->empty() &&
                     std::ranges::all_of(*asked, [&](const auto& one) { return one.bore == bore; });
    const bool wanted = own && last.readings.empty() && last.header.kind == SurveyKind::check;
    return wanted ? &last : nullptr;
}

std::optional<StoneExperience> experienceOf(const StoneOutlook& learned) {
    constexpr double of95 = 1.96, leastDoubt = 0.02;
    if (learned.passes == 0 || learned.rate_um <= 0 || learned.rateFactor95 < 1)
        return std::nullopt;
    StoneExperience experience;
    experience.logRate = std::log(learned.rate_um);
    experience.logRateDoubt = std::max(leastDoubt, std::log(learned.rateFactor95) / of95);
    experience.passes = learned.passes;
    return experience;
}

} // namespace borewright
