// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/results/results_file.h"

#include "core/results/doubt_json.h"
#include "core/results/hone_log_json.h"
#include "core/results/sizing_json.h"

#include <algorithm>
#include <nlohmann/json.hpp>

namespace borewright {
namespace {

using doubt_json::Json;

// Dividing by 10⁹ rounds once, to the double nearest to the exact decimal, which prints as it.
double mm(Length length) {
    return static_cast<double>(length.picometres()) / 1e9;
}

void put(Json& json, const char* key, const std::optional<Length>& length) {
    if (length) json[key] = mm(*length);
}

std::string_view zoneKey(Zone zone) {
    switch (zone) {
    case Zone::unmapped:
        return "unmapped";
    case Zone::ridgeLand:
        return "ridge land";
    case Zone::ringTravel:
        return "ring travel";
    case Zone::portBand:
        return "port band";
    case Zone::skirtOnly:
        return "skirt only";
    }
    return "";
}

Json extreme(const Extreme& extreme) {
    return {{"diameter_mm", mm(extreme.value)},
            {"depth_mm", mm(extreme.depth)},
            {"axis", extreme.axis}};
}

Json station(const StationResult& result) {
    Json json{{"depth_mm", mm(result.station.depth)},
              {"axis", result.station.axis},
              {"zone", zoneKey(result.zone)},
              {"judged", result.judged},
              {"asked", result.asked},
              {"wall", result.wall},
              {"repeats", result.repeats}};
    put(json, "diameter_mm", result.diameter);
    put(json, "to_go_mm", result.toGo);
    put(json, "u_mm", result.u);
    if (!result.odd.empty()) json["odd"] = result.odd;
    if (result.refused) json["refused"] = *result.refused;
    return json;
}

Json judgement(const Judgement& judgement) {
    Json json{{"quality", nameOf(judgement.quality)}, {"verdict", nameOf(judgement.verdict)}};
    put(json, "value_mm", judgement.value);
    put(json, "limit_mm", judgement.limit);
    put(json, "below_mm", judgement.below);
    put(json, "above_mm", judgement.above);
    put(json, "guard_mm", judgement.guard);
    put(json, "gauge_alone_mm", judgement.gaugeAlone);
    if (judgement.chanceWrong) json["chance_wrong"] = *judgement.chanceWrong;
    return json;
}

void putForm(Json& json, const BoreForm& form) {
    json["largest"] = extreme(form.largest);
    json["smallest"] = extreme(form.smallest);
    json["mean_mm"] = mm(form.mean);
    if (form.outOfRound)
        json["out_of_round"] = {{"value_mm", mm(form.outOfRound->value)},
                                {"depth_mm", mm(form.outOfRound->depth)}};
    Json tapers = Json::array();
    for (const AxisTaper& taper : form.tapers)
        tapers.push_back({{"axis", taper.axis},
                          {"value_mm", mm(taper.taper)},
                          {"lead_mm", mm(taper.lead)},
                          {"largest_at_mm", mm(taper.largestAt)},
                          {"smallest_at_mm", mm(taper.smallestAt)}});
    json["tapers"] = tapers;
    if (form.worstTaper)
        json["taper"] = {{"axis", form.worstTaper->axis}, {"value_mm", mm(form.worstTaper->taper)}};
    put(json, "lead_mm", form.lead);
}

void putDoubt(Json& json, const BoreResult& result) {
    put(json, "u_mean_mm", result.uMean);
    put(json, "u_lead_mm", result.uLead);
    if (const auto straight = aroundStraightness(result)) {
        json["straightness_below_mm"] = mm(straight->below);
        json["straightness_above_mm"] = mm(straight->above);
    }
    if (result.shape) json["shape"] = doubt_json::shape(*result.shape, result.shapeWords);
    if (!result.settles.empty()) json["settles"] = result.settles;
}

Json bore(const BoreResult& result) {
    Json json{{"bore", result.bore},
              {"verdict", nameOf(result.verdict)},
              {"why", result.why},
              {"asked", result.asked},
              {"measured", result.measured}};
    if (result.form) putForm(json, *result.form);
    put(json, "straightness_mm", result.straightness);
    json["straight_aim"] = nameOf(result.straight);
    putDoubt(json, result);
    put(json, "finish_size_mm", result.finishSize);
    put(json, "least_to_go_mm", result.leastToGo);
    put(json, "most_to_go_mm", result.mostToGo);
    json["judgements"] = Json::array();
    for (const Judgement& one : result.judgements)
        json["judgements"].push_back(judgement(one));
    json["stations"] = Json::array();
    for (const StationResult& one : result.stations)
        json["stations"].push_back(station(one));
    return json;
}

Json survey(const SurveyHeader& header, const SurveyResult& result) {
    Json json{{"id", header.id},
              {"name", header.name},
              {"kind", nameOf(header.kind)},
              {"time", toIso(header.time)}};
    if (header.plate) json["plate"] = *header.plate;
    json["judged_by"] = result.judgedBy;
    json["has_limits"] = result.hasLimits;
    json["temperature_corrected"] = result.temperatureCorrected;
    json["verdict"] = nameOf(result.verdict);
    json["asked"] = result.asked;
    json["measured"] = result.measured;
    if (result.hasLimits) json["rule"] = doubt_json::rule(result.doubts.rule);
    json["budget"] = doubt_json::budget(result.doubts.budget);
    if (!result.doubts.warnings.empty()) json["warnings"] = result.doubts.warnings;
    json["bores"] = Json::array();
    for (const BoreResult& one : result.bores)
        json["bores"].push_back(bore(one));
    if (!result.suspicions.empty()) json["suspicions"] = doubt_json::suspicions(result.suspicions);
    return json;
}

Json begun(const Workbook& workbook, const char* format) {
    return {{"format", format},
            {"version", 1},
            {"invented", workbook.invented},
            {"engine", workbook.job.engine},
            {"serial", workbook.job.serial}};
}

// Text that is not UTF-8 cannot come from a workbook; were it to, it is replaced, not thrown.
std::string written(const Json& json) {
    return json.dump(1, ' ', false, Json::error_handler_t::replace) + "\n";
}

} // namespace

std::string resultsJson(const Workbook& workbook, const Results& results,
                        const std::vector<std::string>& ids) {
    Json json = begun(workbook, "borewright results");
    json["surveys"] = Json::array();
    for (const Survey& one : workbook.surveys) {
        const SurveyResult* result = findResult(results, one.header.id);
        const bool wanted = ids.empty() || std::ranges::find(ids, one.header.id) != ids.end();
        if (result != nullptr && wanted) json["surveys"].push_back(survey(one.header, *result));
    }
    if (!results.sizing.choice.offers.empty())
        json["sizing"] = sizingJson(workbook, results.sizing);
    if (!results.hone.empty) json["hone"] = honeLogJson(workbook, results.hone);
    if (!results.fit.empty) json["fit"] = fitJson(workbook, results.fit);
    json["summary"] = results.summary;
    return written(json);
}

std::string sizingFile(const Workbook& workbook, const Results& results) {
    Json json = begun(workbook, "borewright sizes");
    json["sizing"] = sizingJson(workbook, results.sizing);
    return written(json);
}

std::string fitFile(const Workbook& workbook, const Results& results) {
    Json json = begun(workbook, "borewright fit");
    json["fit"] = fitJson(workbook, results.fit);
    return written(json);
}

} // namespace borewright
