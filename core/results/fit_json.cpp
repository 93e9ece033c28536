// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/results/fit_words.h"
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

void putText(Json& json, const char* key, const std::string& text) {
    if (!text.empty()) json[key] = text;
}

Json clearance(const Clearance& one) {
    Json json{{"value_mm", mm(one.value)}, {"depth_mm", mm(one.depth)}, {"axis", one.axis}};
    put(json, "u_mm", one.u);
    json["piston_doubt_known"] = one.pistonDoubtKnown;
    json["verdict"] = nameOf(one.verdict);
    putText(json, "why", one.why);
    json["at"] = Json::array();
    for (const ClearanceAt& at : one.at)
        json["at"].push_back(
            {{"depth_mm", mm(at.depth)}, {"axis", at.axis}, {"value_mm", mm(at.value)}});
    return json;
}

Json gapAt(const GapAt& at) {
    return {{"depth_mm", mm(at.depth)}, {"gap_mm", mm(at.gap)}};
}

Json gap(const RingGap& one) {
    Json json{{"smallest", gapAt(one.smallest)}, {"largest", gapAt(one.largest)}};
    if (one.abovePorts) json["above_ports"] = gapAt(*one.abovePorts);
    if (one.belowPorts) json["below_ports"] = gapAt(*one.belowPorts);
    put(json, "u_mm", one.u);
    json["smallest_verdict"] = nameOf(one.smallestVerdict);
    json["largest_verdict"] = nameOf(one.largestVerdict);
    if (one.filing) {
        json["file_mm"] = mm(one.filing->total);
        json["file_steps_mm"] = Json::array();
        for (const Length step : one.filing->steps)
            json["file_steps_mm"].push_back(mm(step));
    }
    putText(json, "why", one.why);
    json["at"] = Json::array();
    for (const GapAt& at : one.at)
        json["at"].push_back(gapAt(at));
    return json;
}

class Writer {
public:
    Writer(const Workbook& workbook, const FitResult& result)
        : m_record(workbook.fit)
        , m_result(result) {}

    Json write() {
        Json json{{"bores", Json::array()}, {"matching", matching()}, {"finish", Json::array()}};
        for (const BoreFit& one : m_result.bores)
            json["bores"].push_back(bore(one));
        for (const FinishForPiston& one : m_result.finish) {
            Json finish{
                {"bore", one.bore}, {"piston", piston(one.piston)}, {"finish_mm", mm(one.finish)}};
            put(finish, "lower_mm", one.lower);
            put(finish, "upper_mm", one.upper);
            json["finish"].push_back(finish);
        }
        putText(json, "finish_refused", m_result.finishRefused);
        json["headline"] = m_result.headline;
        json["sentences"] = m_result.sentences;
        json["ring_headline"] = m_result.ringHeadline;
        json["ring_sentences"] = m_result.ringSentences;
        json["cautions"] = m_result.cautions;
        return json;
    }

private:
    [[nodiscard]] Json piston(std::size_t place) const { return nameOf(m_record.pistons[place]); }
    [[nodiscard]] Json bore(const BoreFit& one) const;
    [[nodiscard]] Json ringHere(const BoreFit::RingHere& one) const;
    [[nodiscard]] Json matching() const;
    [[nodiscard]] Json pairs() const;
    [[nodiscard]] Json worth(const Matching::Worth& one) const;

    const FitRecord& m_record;
    const FitResult& m_result;
};

Json Writer::bore(const BoreFit& one) const {
    Json json{{"bore", one.bore}};
    putText(json, "survey", one.survey);
    json["finished"] = one.finished;
    if (one.piston) json["piston"] = piston(*one.piston);
    json["decided"] = one.decided;
    if (one.clearance) json["clearance"] = clearance(*one.clearance);
    putText(json, "refused", one.clearanceRefused);
    json["rings"] = Json::array();
    for (const BoreFit::RingHere& ring : one.rings)
        json["rings"].push_back(ringHere(ring));
    return json;
}

Json Writer::ringHere(const BoreFit::RingHere& one) const {
    Json json{{"groove", one.groove}, {"decided", one.decided}};
    if (one.ring) json["ring"] = nameOf(m_record.rings[*one.ring]);
    if (one.gap) json["gap"] = gap(*one.gap);
    putText(json, "refused", one.refused);
    return json;
}

Json Writer::worth(const Matching::Worth& one) const {
    Json json{{"worst_mm", mm(one.worst)}, {"sum_mm", mm(one.sum)}, {"pistons", Json::array()}};
    for (const auto& place : one.piston)
        json["pistons"].push_back(place ? piston(m_result.matching.pistons[*place]) : Json(""));
    return json;
}

// Every bore with every piston.
Json Writer::pairs() const {
    const Matching& matching = m_result.matching;
    Json pairs = Json::array();
    for (std::size_t b = 0; b < matching.cells.size(); ++b)
        for (std::size_t p = 0; p < matching.cells[b].size(); ++p) {
            const MatchCell& cell = matching.cells[b][p];
            Json pair{{"bore", matching.bores[b]}, {"piston", piston(matching.pistons[p])}};
            pair["chosen"] = b < matching.chosen.size() && matching.chosen[b] == p;
            if (cell.clearance) {
                pair["clearance_mm"] = mm(cell.clearance->value);
                pair["miss_mm"] = mm(cell.miss);
            }
            putText(pair, "refused", cell.refused);
            if (cell.swap)
                pair["swap"] = {{"worst_mm", mm(cell.swap->worst)}, {"sum_mm", mm(cell.swap->sum)}};
            pairs.push_back(pair);
        }
    return pairs;
}

Json Writer::matching() const {
    const Matching& matching = m_result.matching;
    Json json{{"bores", matching.bores}, {"pairs", pairs()}};
    if (matching.best) {
        json["best"] = worth(*matching.best);
        json["equals"] = matching.equals;
    }
    if (matching.ownOrder) json["own_order"] = worth(*matching.ownOrder);
    put(json, "tell_apart_mm", matching.tellApart);
    json["any_of_these"] = matching.anyOfThese;
    putText(json, "why", matching.why);
    return json;
}

} // namespace

Json fitJson(const Workbook& workbook, const FitResult& result) {
    return Writer(workbook, result).write();
}

} // namespace borewright
