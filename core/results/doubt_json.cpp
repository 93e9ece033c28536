// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/results/doubt_json.h"

#include <cmath>

namespace borewright::doubt_json {
namespace {

double mm(Length length) {
    return static_cast<double>(length.picometres()) / 1e9;
}

void put(Json& json, const char* key, const std::optional<double>& um) {
    if (um) json[key] = *um / 1000;
}

void putFreedom(Json& json, const char* key, double freedom) {
    if (!std::isinf(freedom)) json[key] = freedom;
}

std::string_view keyOf(Distribution distribution) {
    switch (distribution) {
    case Distribution::normal:
        return "normal";
    case Distribution::rectangular:
        return "rectangular";
    case Distribution::triangular:
        return "triangular";
    case Distribution::uShaped:
        return "U-shaped";
    }
    return "";
}

std::string_view keyOf(BudgetLine::In in) {
    switch (in) {
    case BudgetLine::In::micrometre:
        return "um";
    case BudgetLine::In::celsius:
        return "C";
    case BudgetLine::In::perCelsius:
        return "1/C";
    }
    return "";
}

std::string_view keyOf(DecisionRule::Kind kind) {
    switch (kind) {
    case DecisionRule::Kind::plain:
        return "plain comparison";
    case DecisionRule::Kind::fivePercent:
        return "5 % risk";
    case DecisionRule::Kind::twoAndHalfPercent:
        return "2.5 % risk";
    case DecisionRule::Kind::own:
        return "own risk";
    }
    return "";
}

Json line(const BudgetLine& line) {
    Json json{{"source", nameOf(line.source)},
              {"shared", isShared(line.source)},
              {"value", line.value},
              {"value_in", keyOf(line.in)},
              {"distribution", keyOf(line.distribution)},
              {"divisor", line.divisor},
              {"sensitivity", line.sensitivity},
              {"contribution_mm", line.contribution_um / 1000}};
    putFreedom(json, "freedom", line.freedom);
    return json;
}

Json fix(const SlipFix& fix) {
    Json json{{"bore", fix.station.bore},
              {"depth_mm", mm(fix.station.depth)},
              {"axis", fix.station.axis}};
    if (fix.replaces) json["replaces"] = *fix.replaces;
    if (fix.value) json["value"] = fix.value->withUnit();
    return json;
}

} // namespace

Json shape(const BoreShape& shape, const std::string& words) {
    Json json{{"kind", shapeWord(shape)},
              {"words", words},
              {"amount_mm", shape.amount_um / 1000},
              {"u_mm", shape.u_um / 1000},
              {"uneven", shape.uneven}};
    if (shape.kind != ShapeKind::straight && shape.kind != ShapeKind::vee)
        json["where_mm"] = shape.where_mm;
    if (shape.kind == ShapeKind::vee || shape.kind == ShapeKind::bellMouth) {
        json["end"] = shape.end == End::open ? "open" : "closed";
        json["end_is_wide"] = shape.wide;
    }
    json["or_else"] = Json::array();
    for (const ShapeKind kind : shape.orElse) {
        BoreShape other = shape;
        other.kind = kind;
        json["or_else"].push_back(shapeWord(other));
    }
    Json smallest = Json::object();
    put(smallest, "vee_mm", shape.smallest.vee_um);
    put(smallest, "bell_mouth_mm", shape.smallest.bellMouth_um);
    put(smallest, "barrel_mm", shape.smallest.barrel_um);
    put(smallest, "ridge_mm", shape.smallest.ridge_um);
    json["smallest_seen"] = smallest;
    return json;
}

Json rule(const DecisionRule& rule) {
    return {{"kind", keyOf(rule.kind)}, {"risk_percent", 100 * riskOf(rule)}};
}

Json budget(const Budget& budget) {
    Json json{{"known", budget.known()}};
    if (!budget.known()) {
        json["missing"] = budget.missing;
        return json;
    }
    json["lines"] = Json::array();
    for (const BudgetLine& one : budget.lines)
        json["lines"].push_back(line(one));
    json["own_mm"] = budget.own_um / 1000;
    json["shared_mm"] = budget.shared_um / 1000;
    json["single_mm"] = budget.single_um / 1000;
    json["difference_mm"] = budget.difference_um / 1000;
    putFreedom(json, "freedom", budget.freedom);
    putFreedom(json, "difference_freedom", budget.differenceFreedom);
    json["coverage"] = budget.coverage;
    return json;
}

Json suspicions(const std::vector<Suspicion>& suspicions) {
    Json list = Json::array();
    for (const Suspicion& suspicion : suspicions) {
        Json one{{"readings", suspicion.readings}};
        one["stories"] = Json::array();
        for (const SlipStory& story : suspicion.stories) {
            Json told{{"words", story.words}, {"weight", story.weight}};
            told["fixes"] = Json::array();
            for (const SlipFix& each : story.fixes)
                told["fixes"].push_back(fix(each));
            one["stories"].push_back(told);
        }
        list.push_back(one);
    }
    return list;
}

} // namespace borewright::doubt_json
