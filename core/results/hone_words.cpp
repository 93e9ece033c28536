// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/results/hone_words.h"

#include "core/results/doubt_words.h"
#include "core/results/sizing_words.h"
#include "core/results/words.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace borewright {
namespace {

constexpr double secondsAMinute = 60;

std::string number(double value) {
    return fmt::format("{:.1f}", value).ends_with(".0") ? fmt::format("{:.0f}", value)
                                                        : fmt::format("{:.1f}", value);
}

std::string range(const StrokeWindow& window, const DisplayUnits& units) {
    const std::string from = formatDepth(window.from.value(), units);
    const std::string to = formatDepth(window.to.value(), units);
    return from == to ? "at " + to : from + "–" + to;
}

// At a beat of sixty a second is a stroke; else both are said.
std::string howLong(const PlannedWindow& window, const Hone& hone) {
    std::string text;
    if (window.strokes > 0) {
        const std::string seconds = number(window.seconds) + " s";
        text = hone.beatsPerMinute == secondsAMinute
                   ? seconds
                   : fmt::format("{} strokes ({})", number(window.strokes), seconds);
    }
    if (window.holdSeconds > 0)
        text += (text.empty() ? "" : " and ") + ("a hold of " + number(window.holdSeconds) + " s");
    return text;
}

} // namespace

std::string strokingWords(const std::vector<StrokeWindow>& windows, const Hone& hone,
                          const DisplayUnits& units) {
    std::string text;
    for (const StrokeWindow& window : windows) {
        if (!text.empty()) text += ", ";
        const double strokes = strokesOf(window, hone);
        text += number(strokes) + (strokes == 1 ? " stroke " : " strokes ") + range(window, units);
        if (window.holdSeconds > 0) text += " with a hold of " + number(window.holdSeconds) + " s";
    }
    return text.empty() ? text : text + " " + std::string(symbol(units.size));
}

std::string windowsWords(const std::vector<PlannedWindow>& windows, const Hone& hone,
                         const DisplayUnits& units) {
    std::string text;
    for (const PlannedWindow& window : windows) {
        const bool first = text.empty();
        const std::string from = formatDepth(window.from.value(), units);
        const std::string to = formatDepth(window.to.value(), units);
        text += (first ? "" : ", then ") + howLong(window, hone);
        if (first) text += " with its lower end";
        text += from == to ? " at " + to : " from " + from + " to " + to;
        if (first) text += " " + std::string(symbol(units.size));
    }
    return text;
}

std::string measureWords(const std::vector<Station>& stations, const Block& block,
                         const DisplayUnits& units) {
    struct Part {
        std::vector<std::string> axes;
        std::string depths;
    };
    std::vector<Part> parts;
    for (const Axis& axis : block.axes) {
        std::vector<Length> depths;
        for (const Station& station : stations)
            if (station.axis == axis.id) depths.push_back(station.depth);
        if (depths.empty()) continue;
        std::ranges::sort(depths);
        std::string text;
        for (const Length depth : depths)
            text += (text.empty() ? "" : ", ") + formatDepth(depth, units);
        const auto alike = std::ranges::find(parts, text, &Part::depths);
        if (alike == parts.end())
            parts.push_back({{axis.id}, text});
        else
            alike->axes.push_back(axis.id);
    }
    std::vector<std::string> texts;
    for (const Part& part : parts)
        texts.push_back(listed(part.axes) + " at " + part.depths);
    return listed(texts);
}

std::string setUpSentence(const PlannedSetUp& setUp, const Stone& stone, const Workbook& workbook,
                          const DisplayUnits& units) {
    std::string text =
        capitalized(stone.name) + ": " + windowsWords(setUp.windows, workbook.hone.hone, units);
    if (!setUp.measure.empty())
        text += "; then measure " + measureWords(setUp.measure, workbook.block, units);
    return text + ".";
}

std::string amountWords(double um, const DisplayUnits& units, int extra) {
    return smallWithUnit(Length::nearest(um, Unit::micrometre), units, Sign::negative, extra);
}

std::string claimWords(double um, const DisplayUnits& units) {
    return claimed(Length::nearest(std::max(0.0, um), Unit::micrometre), units);
}

std::string overWords(double chance) {
    return chanceWords(chance) + " that any depth goes over";
}

std::vector<std::string> honingCautions() {
    return {
        "A hone driven by a hand drill can catch: it breaks a wrist or throws its stones. Keep to "
        "the speed its maker gives, brace the drill, and never draw a turning hone out of the "
        "bore.",
        "Wear eye protection. Dry honing makes fine dust that is not to be breathed; solvents near "
        "sparks or a hot casting catch fire.",
        "A casting warm from the hone measures large: let it cool, or take its temperature.",
        "Wash out the grit with hot water, soap and a brush until a white cloth stays white, then "
        "oil the wall.",
        "The engine maker's manual and the hone maker's rules count before what is said here.",
    };
}

} // namespace borewright
