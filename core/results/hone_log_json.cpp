// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/results/hone_log_json.h"

#include <algorithm>
#include <cmath>
#include <string_view>

namespace borewright {
namespace {

using Json = nlohmann::ordered_json;

double mm(const Length& length) {
    return static_cast<double>(length.picometres()) / 1e9;
}

void put(Json& json, const char* key, const std::optional<Length>& length) {
    if (length) json[key] = mm(*length);
}

void put(Json& json, const char* key, const std::string& text) {
    if (!text.empty()) json[key] = text;
}

Json window(const StrokeWindow& window, const Hone& hone) {
    Json json{{"from_mm", mm(window.from.value())},
              {"to_mm", mm(window.to.value())},
              {"strokes", strokesOf(window, hone)}};
    if (window.seconds) json["seconds"] = *window.seconds;
    if (window.holdSeconds > 0) json["hold_s"] = window.holdSeconds;
    return json;
}

Json pass(const LoggedPass& logged, const Workbook& workbook) {
    Json json{{"pass", logged.pass}, {"stone", logged.stone}};
    const auto& passes = workbook.hone.passes;
    const auto found = std::ranges::find(passes, logged.pass, &Pass::id);
    if (found != passes.end()) {
        json["stone_id"] = found->stone;
        json["time"] = toIso(found->time);
        json["windows"] = Json::array();
        for (const StrokeWindow& one : found->windows)
            json["windows"].push_back(window(one, workbook.hone.hone));
        if (found->speedRpm) json["speed_rpm"] = *found->speedRpm;
        put(json, "note", found->notes);
        if (found->struck) json["struck"] = *found->struck;
    }
    json["words"] = logged.words;
    put(json, "survey_before", logged.before);
    put(json, "survey_after", logged.behind);
    put(json, "took_off_mm", logged.tookOff);
    put(json, "lead_before_mm", logged.leadBefore);
    put(json, "lead_after_mm", logged.leadBehind);
    json["simulated"] = logged.simulated;
    return json;
}

Json bore(const BoreHoneLog& log, const Workbook& workbook) {
    constexpr double tenths = 10; // of a degree
    Json json{{"bore", log.bore}, {"waits_for_survey", log.waitsForSurvey}};
    json["passes"] = Json::array();
    for (const LoggedPass& one : log.passes)
        json["passes"].push_back(pass(one, workbook));
    json["oddities"] = log.oddities;
    json["to_tick"] = log.toTick;
    if (log.crosshatchDegrees)
        json["crosshatch_degrees"] = std::round(*log.crosshatchDegrees * tenths) / tenths;
    put(json, "crosshatch", log.crosshatchWords);
    return json;
}

std::string_view wordsFor(StoneCare::Kind kind) {
    switch (kind) {
    case StoneCare::Kind::turnedEndForEnd:
        return "turned end for end";
    case StoneCare::Kind::runInReverse:
        return "run in reverse";
    case StoneCare::Kind::dressed:
        return "dressed";
    }
    return "";
}

Json care(const StoneCare& care, const HoneRecord& record) {
    const Stone* stone = findStone(record, care.stone);
    Json json{{"stone", stone != nullptr ? stone->name : care.stone},
              {"stone_id", care.stone},
              {"done", wordsFor(care.kind)},
              {"time", toIso(care.time)}};
    put(json, "after_pass", care.afterPass);
    if (care.struck) json["struck"] = *care.struck;
    return json;
}

} // namespace

Json honeLogJson(const Workbook& workbook, const HoneLog& log) {
    const HoneRecord& record = workbook.hone;
    Json json = Json::object();
    if (record.hone.speedRpm) json["speed_rpm"] = *record.hone.speedRpm;
    json["beats_per_minute"] = record.hone.beatsPerMinute;
    put(json, "feed", record.hone.feed);
    if (record.hone.oil) json["oil"] = *record.hone.oil;
    json["bores"] = Json::array();
    for (const BoreHoneLog& one : log.bores)
        json["bores"].push_back(bore(one, workbook));
    json["care"] = Json::array();
    for (const StoneCare& one : record.care)
        json["care"].push_back(care(one, record));
    json["warnings"] = log.warnings;
    json["cautions"] = log.cautions;
    return json;
}

} // namespace borewright
