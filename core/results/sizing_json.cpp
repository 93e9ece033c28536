// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/results/sizing_json.h"

namespace borewright {
namespace {

using Json = nlohmann::ordered_json;

double mm(Length length) {
    return static_cast<double>(length.picometres()) / 1e9;
}

void put(Json& json, const char* key, const std::optional<Length>& length) {
    if (length) json[key] = mm(*length);
}

std::string_view keyOf(Centring centring) {
    return centring == Centring::wornBore ? "worn bore" : "original axis";
}

Json extreme(const MeasuredAt& at) {
    return {{"diameter_mm", mm(at.diameter)}, {"depth_mm", mm(at.depth)}, {"axis", at.axis}};
}

Json cleanUp(const CleanUp& one) {
    Json json{{"size_mm", mm(one.size)}, {"depth_mm", mm(one.depth)}, {"axis", one.axis}};
    if (one.damage) json["damage"] = *one.damage;
    put(json, "u_mm", one.u);
    return json;
}

Json bore(const SizingResult& result, std::size_t b) {
    Json json{{"bore", result.bores[b]}, {"words", result.boreWords[b]}};
    if (!result.cleanUps[b]) {
        json["not_known"] = result.notKnown[b];
        return json;
    }
    const BoreCleanUp& one = *result.cleanUps[b];
    json["survey"] = one.survey;
    json["largest"] = extreme(one.largest);
    json["smallest"] = extreme(one.smallest);
    json["worn_bore"] = cleanUp(one.wornBore);
    json["worn_bore_undamaged"] = cleanUp(one.wornOnly);
    if (one.originalAxis) json["original_axis"] = cleanUp(*one.originalAxis);
    if (one.originalOnly) json["original_axis_undamaged"] = cleanUp(*one.originalOnly);
    json["side_assumed"] = one.sideAssumed;
    json["complete"] = one.complete;
    if (b < result.choice.beyond.size()) json["beyond"] = bool(result.choice.beyond[b]);
    if (b < result.choice.own.size() && result.choice.own[b])
        json["own_size"] = result.choice.offers[*result.choice.own[b]].offer.name;
    return json;
}

Json offer(const SizingResult& result, const OfferResult& one, const OfferResult& otherWay) {
    Json json{{"name", one.offer.name}};
    put(json, "oversize_mm", one.offer.oversize);
    json["beyond_greatest"] = one.offer.beyondGreatest;
    json["cleans_block"] = one.cleansBlock;
    if (one.deciding) json["deciding"] = result.bores[*one.deciding];
    json["bores"] = Json::array();
    for (std::size_t b = 0; b < one.cells.size(); ++b) {
        Json cell{{"bore", result.bores[b]}, {"cleans", nameOf(one.cells[b].cleans)}};
        if (const auto& offered = one.offer.bores[b]) {
            cell["finish_mm"] = mm(offered->finish);
            put(cell, "lower_mm", offered->lower);
            put(cell, "upper_mm", offered->upper);
        }
        if (one.cells[b].cleans != Cleans::unknown) {
            cell["margin_mm"] = mm(one.cells[b].margin);
            put(cell, "u_mm", one.cells[b].u);
            cell["stock_mm"] = mm(one.cells[b].stock);
            cell["other_way"] = nameOf(otherWay.cells[b].cleans);
            cell["other_way_margin_mm"] = mm(otherWay.cells[b].margin);
        }
        json["bores"].push_back(cell);
    }
    return json;
}

} // namespace

Json sizingJson(const Workbook& workbook, const SizingResult& result) {
    Json json{
        {"method", workbook.sizing.method == CutMethod::honeOnly ? "hone only" : "bore and hone"},
        {"centring", keyOf(result.centring)},
        {"own_sizes", workbook.sizing.ownSizes},
        {"finish_allowance_mm", mm(result.finishAllowance)},
        {"hone_stock_mm", mm(result.honeStock)}};
    if (workbook.sizing.greatest) json["greatest_mm"] = mm(workbook.sizing.greatest->value());
    if (result.choice.chosen)
        json["chosen"] = result.choice.offers[*result.choice.chosen].offer.name;
    json["bores"] = Json::array();
    for (std::size_t b = 0; b < result.bores.size(); ++b)
        json["bores"].push_back(bore(result, b));
    json["offers"] = Json::array();
    for (std::size_t o = 0; o < result.choice.offers.size(); ++o)
        json["offers"].push_back(offer(result, result.choice.offers[o], result.otherWay.offers[o]));
    json["targets"] = Json::array();
    for (const auto& [number, target] : workbook.targets) {
        Json one{{"bore", number}, {"size_mm", mm(target.size.value())}, {"from", target.from}};
        if (target.lower) one["lower_mm"] = mm(target.lower->value());
        if (target.upper) one["upper_mm"] = mm(target.upper->value());
        json["targets"].push_back(one);
    }
    json["headline"] = result.headline;
    json["sentences"] = result.sentences;
    json["how"] = result.how;
    json["cautions"] = result.cautions;
    return json;
}

} // namespace borewright
