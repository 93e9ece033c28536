// SPDX-License-Identifier: GPL-3.0-or-later
// What cannot stand in a record of honing, beside the block where it is known. Part of
// hone_record.h.
#include "core/workbook/hone_names.h"

#include <cmath>
#include <set>
#include <utility>

namespace borewright {
namespace {

const Length largest = Length::whole(3000, Unit::millimetre);
const Length largestStage = Length::whole(10, Unit::millimetre); // to go, on the diameter
// A reach is a third of a length, or was rounded to be typed.
const Length slack = Length::whole(5, Unit::hundredth);
constexpr std::size_t mostStones = 100, mostPasses = 5000, mostCare = 5000, mostWindows = 20;
constexpr std::size_t longestName = 80; // bytes
constexpr int lastBore = 999;
constexpr double mostStrokes = 10'000, mostSeconds = 10'000, mostHeld = 3'600;
constexpr double mostRpm = 10'000, leastBeat = 1, mostBeat = 600;
constexpr double farthestLogRate = 12, mostRateDoubt = 5; // e¹² µm a stroke cut nothing on earth

bool within(double value, double least, double most) {
    return value >= least && value <= most; // false for what is no number
}

Result<void> checkSpeed(const std::optional<double>& rpm) {
    if (rpm && !(*rpm > 0 && *rpm <= mostRpm))
        return refuse("speed", "a spindle turns more than 0 and at most 10 000 times a minute");
    return {};
}

Result<void> checkExperience(const StoneExperience& experience) {
    if (!within(experience.logRate, -farthestLogRate, farthestLogRate))
        return refuse("rate", "no stone cuts like that: is the unit right?");
    if (!(experience.logRateDoubt > 0 && experience.logRateDoubt <= mostRateDoubt))
        return refuse("doubt of its rate", "is more than nothing and at most a factor of e^5");
    if (experience.passes < 0) return refuse("passes", "cannot be fewer than none");
    return {};
}

Result<void> checkWindow(const StrokeWindow& window) {
    for (const auto* end : {&window.from, &window.to})
        if (end->value() < Length() || end->value() > largest)
            return refuse(end == &window.from ? "from" : "to",
                          "lies between the open end (0) and three metres");
    if (window.from.value() > window.to.value())
        return refuse("the window is upside down: it goes from " + window.from.withUnit() +
                      ", the upper end of the stroke, to " + window.to.withUnit() +
                      ", which is above it");
    if (window.strokes && !within(*window.strokes, 0, mostStrokes))
        return refuse("strokes", "lie between 0 and 10 000, a stroke being down and back");
    if (window.seconds && !within(*window.seconds, 0, mostSeconds))
        return refuse("seconds", "lie between 0 and 10 000");
    if (!within(window.holdSeconds, 0, mostHeld))
        return refuse("hold", "lies between 0 and 3600 seconds");
    const double done = window.strokes ? *window.strokes : window.seconds.value_or(0);
    if (done + window.holdSeconds <= 0) return refuse("no strokes at all: nothing was honed");
    return {};
}

std::string numbered(std::size_t window, const Pass& pass) {
    return pass.windows.size() == 1 ? "window" : "window " + std::to_string(window + 1);
}

// What a pass alone cannot be.
Result<void> checkShape(const Pass& pass) {
    if (pass.bore < 1 || pass.bore > lastBore)
        return refuse("bore", "bores are numbered from 1 to " + std::to_string(lastBore));
    if (pass.windows.empty())
        return refuse("no window is given: from where to where was it honed?");
    if (pass.windows.size() > mostWindows)
        return refuse("more than " + std::to_string(mostWindows) + " windows in one set-up");
    for (std::size_t i = 0; i < pass.windows.size(); ++i)
        if (auto good = checkWindow(pass.windows[i]); !good)
            return tl::unexpected(good.error().within(numbered(i, pass)));
    return checkSpeed(pass.speedRpm);
}

Result<void> checkStoneIs(const HoneRecord& record, const std::string& id) {
    if (findStone(record, id) != nullptr) return {};
    return refuse("stone", id.empty() ? "is not given" : "there is no stone '" + id + "'");
}

Result<void> checkReach(const StrokeWindow& window, const Stone& stone, const Bore& bore) {
    const auto reach = reachOf(stone, bore);
    if (!reach) return tl::unexpected(reach.error());
    const Unit unit = bore.depth->unit();
    if (window.to.value() > reach->lowest + slack)
        return refuse("to", window.to.withUnit() + " is too low: " + called(stone) +
                                " strikes the closed end or stands out too far; the lower end of "
                                "its abrasive may go down to " +
                                inUnit(reach->lowest, unit) + " in bore " +
                                std::to_string(bore.number));
    if (window.from.value() < reach->highest - slack)
        return refuse(
            "from",
            window.from.withUnit() + " is too high: " + called(stone) +
                " would stand out of the open end by " +
                inUnit(stone.ends.value() - stone.begins.value() - window.from.value(), unit) +
                " and could tip out; the lower end of its abrasive may come up "
                "to " +
                inUnit(reach->highest, unit) + " in bore " + std::to_string(bore.number));
    return {};
}

Result<void> checkHoneItself(const Hone& hone) {
    if (auto good = checkSpeed(hone.speedRpm); !good) return good;
    if (!within(hone.beatsPerMinute, leastBeat, mostBeat))
        return refuse("beat", "lies between 1 and 600 a minute");
    return {};
}

Result<void> checkStages(const HoneStages& stages) {
    for (const auto& [name, stage] : {std::pair{"rough stones stop at", &stages.roughStopsAt},
                                      std::pair{"closed end leads by", &stages.closedEndLead},
                                      std::pair{"next stones stop at", &stages.nextStopsAt},
                                      std::pair{"only cool below", &stages.coolBelow}}) {
        if (!*stage) continue;
        if ((*stage)->value() < Length()) return refuse(name, "is nothing or more");
        if ((*stage)->value() > largestStage)
            return refuse(name, (*stage)->withUnit() + " to go: is the unit right?");
    }
    const auto rises = [](const auto& earlier, const auto& later) {
        return earlier && later && later->value() > earlier->value();
    };
    if (rises(stages.roughStopsAt, stages.nextStopsAt))
        return refuse("next stones stop at", "is more to go than the rough stones leave");
    if (rises(stages.nextStopsAt, stages.coolBelow) || rises(stages.roughStopsAt, stages.coolBelow))
        return refuse("only cool below", "is more to go than the stones before leave");
    return {};
}

template<class Items>
Result<void> checkIds(const char* what, const Items& items, std::size_t most) {
    if (items.size() > most) return refuse(what, "more than " + std::to_string(most));
    std::set<std::string> ids;
    for (const auto& item : items)
        if (item.id.empty() || !ids.insert(item.id).second)
            return refuse(what, "'" + item.id + "' is no id of its own");
    return {};
}

Result<void> checkStones(const HoneRecord& record) {
    if (auto good = checkIds("stones", record.stones, mostStones); !good) return good;
    std::set<std::string> names;
    for (const Stone& stone : record.stones) {
        if (auto good = checkStone(stone); !good) return good;
        if (!names.insert(foldedName(stone.name)).second)
            return refuse(called(stone), "another stone is called so already; capitals and spaces "
                                         "do not tell them apart");
        for (const Stone& other : record.stones)
            if (&other != &stone && foldedName(stone.name) == foldedName(other.id))
                return refuse(called(stone), "that is what the program calls " + called(other));
    }
    return {};
}

Result<void> checkCare(const HoneRecord& record) {
    if (auto good = checkIds("care of the stones", record.care, mostCare); !good) return good;
    std::set<std::string> passes;
    for (const Pass& pass : record.passes)
        passes.insert(pass.id);
    for (const StoneCare& care : record.care) {
        const std::string where = "care " + care.id;
        if (auto good = checkStoneIs(record, care.stone); !good)
            return tl::unexpected(good.error().within(where));
        if (!care.afterPass.empty() && !passes.contains(care.afterPass))
            return refuse(where, "there is no pass '" + care.afterPass + "'");
    }
    return {};
}

} // namespace

std::string surfaceCaution(Surface surface) {
    if (surface == Surface::plated) return "plated bores want diamond; follow the plater";
    if (surface == Surface::bareAluminium)
        return "bare aluminium loads and tears under ordinary stones: follow the engine maker";
    return {};
}

Result<void> checkStone(const Stone& stone) {
    const std::string where = called(stone);
    const auto wrong = [&](const char* name, const char* what) {
        return refuse(where + ": " + name, what);
    };
    if (foldedName(stone.name).empty()) return wrong("name", "a stone needs one");
    if (stone.name.size() > longestName) return wrong("name", "is longer than 80 letters");
    if (stone.begins.value() < Length()) return wrong("begins", "must not be below zero");
    if (stone.ends.value() > largest) return wrong("ends", "is over three metres");
    if (stone.ends.value() <= stone.begins.value())
        return wrong("ends", "the abrasive ends where it begins or below: both are measured from "
                             "the carrier's lower end up");
    const Length length = stone.ends.value() - stone.begins.value();
    for (const auto& [name, out] : {std::pair{"out of the open end", &stone.outOfOpenEnd},
                                    std::pair{"out of the closed end", &stone.outOfClosedEnd}}) {
        if (!*out) continue;
        if ((*out)->value() < Length()) return wrong(name, "is nothing or more");
        if ((*out)->value() >= length) return wrong(name, "is the whole stone: it would fall out");
    }
    if (stone.experience)
        if (auto good = checkExperience(*stone.experience); !good)
            return tl::unexpected(good.error().within(where));
    return {};
}

Result<void> checkPass(const Pass& pass, const HoneRecord& record, const Block& block) {
    const auto check = [&]() -> Result<void> {
        if (auto good = checkShape(pass); !good) return good;
        if (auto good = checkStoneIs(record, pass.stone); !good) return good;
        const Bore* bore = findBore(block, pass.bore);
        if (bore == nullptr) return refuse("bore", "there is no bore " + std::to_string(pass.bore));
        if (bore->surface == Surface::plated)
            return refuse("bore " + std::to_string(pass.bore), surfaceCaution(bore->surface));
        for (std::size_t i = 0; i < pass.windows.size(); ++i)
            if (auto good = checkReach(pass.windows[i], *findStone(record, pass.stone), *bore);
                !good)
                return good.error().where.starts_with("bore")
                           ? good
                           : tl::unexpected(good.error().within(numbered(i, pass)));
        return {};
    };
    return check().map_error([&](const Error& error) { return error.within(called(pass)); });
}

Result<void> checkHone(const HoneRecord& record) {
    if (auto good = checkHoneItself(record.hone); !good)
        return tl::unexpected(good.error().within("hone"));
    if (auto good = checkStones(record); !good) return good;
    if (auto good = checkStages(record.stages); !good)
        return tl::unexpected(good.error().within("stages"));
    if (auto good = checkIds("passes", record.passes, mostPasses); !good) return good;
    for (const Pass& pass : record.passes) {
        auto good = checkShape(pass);
        if (good) good = checkStoneIs(record, pass.stone);
        if (!good) return tl::unexpected(good.error().within(called(pass)));
    }
    if (auto good = checkCare(record); !good) return good;
    for (const auto& [number, ticks] : record.ticks)
        if (number < 1 || number > lastBore)
            return refuse("ticks of bore " + std::to_string(number), "is no number of a bore");
    return {};
}

Result<void> checkHone(const HoneRecord& record, const Block& block) {
    if (auto good = checkHone(record); !good) return good;
    for (const Pass& pass : record.passes)
        if (!pass.struck)
            if (auto good = checkPass(pass, record, block); !good) return good;
    return {};
}

} // namespace borewright
