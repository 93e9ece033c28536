// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/kept_stones.h"

#include <array>
#include <cmath>

namespace borewright {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::array kinds{"rough", "finish"};
constexpr std::size_t mostStones = 100;

Json stoneJson(const Stone& stone) {
    Json json{{"name", stone.name},
              {"grit", stone.grit},
              {"kind", kinds.at(static_cast<std::size_t>(stone.kind))},
              {"begins", stone.begins.withUnit()},
              {"ends", stone.ends.withUnit()}};
    if (stone.outOfOpenEnd) json["outOfOpenEnd"] = stone.outOfOpenEnd->withUnit();
    if (stone.outOfClosedEnd) json["outOfClosedEnd"] = stone.outOfClosedEnd->withUnit();
    if (stone.experience)
        json["experience"] = {{"logRate", stone.experience->logRate},
                              {"logRateDoubt", stone.experience->logRateDoubt},
                              {"passes", stone.experience->passes}};
    return json;
}

bool readText(const Json& json, const char* key, std::string& text) {
    const auto field = json.find(key);
    if (field == json.end() || !field->is_string()) return false;
    text = field->get<std::string>();
    return true;
}

bool readLengthOf(const Json& json, const char* key, TypedLength& length) {
    std::string text;
    if (!readText(json, key, text)) return false;
    const auto read = readTyped(text, Unit::millimetre);
    if (read) length = *read;
    return read.has_value();
}

bool readSpare(const Json& json, const char* key, std::optional<TypedLength>& length) {
    return !json.contains(key) || readLengthOf(json, key, length.emplace());
}

bool readExperience(const Json& json, std::optional<StoneExperience>& experience) {
    const auto field = json.find("experience");
    if (field == json.end()) return true;
    if (!field->is_object()) return false;
    const auto number = [&](const char* key) {
        const auto value = field->find(key);
        return value != field->end() && value->is_number() ? value->get<double>() : NAN;
    };
    constexpr double mostPasses = 1e6;
    const double passes = number("passes");
    if (!(passes >= 0 && passes < mostPasses)) return false;
    experience =
        StoneExperience{number("logRate"), number("logRateDoubt"), static_cast<int>(passes)};
    return true;
}

bool readStone(const Json& json, Stone& stone) {
    std::string kind;
    if (!json.is_object() || !readText(json, "name", stone.name) ||
        !readText(json, "grit", stone.grit) || !readText(json, "kind", kind) ||
        (kind != kinds[0] && kind != kinds[1]))
        return false;
    stone.kind = kind == kinds[0] ? StoneKind::rough : StoneKind::finish;
    if (!readLengthOf(json, "begins", stone.begins) || !readLengthOf(json, "ends", stone.ends) ||
        !readSpare(json, "outOfOpenEnd", stone.outOfOpenEnd) ||
        !readSpare(json, "outOfClosedEnd", stone.outOfClosedEnd) ||
        !readExperience(json, stone.experience))
        return false;
    Stone judged = stone; // kept without an id
    judged.id = "k1";
    return checkStone(judged).has_value();
}

} // namespace

Json stonesJson(const std::vector<Stone>& stones) {
    Json list = Json::array();
    for (const Stone& stone : stones)
        list.push_back(stoneJson(stone));
    return list;
}

std::string readStones(const Json& list, std::vector<Stone>& stones) {
    if (list.size() > mostStones) return "stones: more than 100 of them";
    for (const Json& json : list)
        if (!readStone(json, stones.emplace_back()))
            return "stones: stone " + std::to_string(stones.size()) + " is none";
    return {};
}

} // namespace borewright
