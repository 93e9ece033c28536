// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/results/hone_aim.h"
#include "core/results/hone_outlook.h"

#include <cmath>
#include <nlohmann/json.hpp>

namespace borewright {
namespace {

using Json = nlohmann::ordered_json;

double mm(Length length) {
    return static_cast<double>(length.picometres()) / 1e9;
}

// What formulas give is written to the nanometre: more would be no truth.
double rounded_mm(double um) {
    return std::round(um * 1e3) / 1e6;
}

// Nothing over its unit's bounds, and no digits without a meaning.
double chance(double value) {
    return std::round(value * 1e6) / 1e6;
}

std::string_view statusOf(const BoreOutlook& bore) {
    if (bore.waits) return "waits";
    switch (bore.outcome) {
    case HoneOutcome::next:
        return "next";
    case HoneOutcome::done:
        return "done";
    case HoneOutcome::asGoodAsItGets:
        return "as-good-as-it-gets";
    case HoneOutcome::gaugeCannotTell:
        return "gauge-cannot-tell";
    case HoneOutcome::wouldGoOver:
        return "would-go-over";
    case HoneOutcome::overAlready:
        return "over-already";
    case HoneOutcome::noStone:
        return "no-stone";
    case HoneOutcome::notMeasured:
        break;
    }
    return "not-measured";
}

class Writer {
public:
    Writer(const Workbook& workbook, const HoneOutlook& outlook)
        : m_workbook(workbook)
        , m_outlook(outlook) {}

    Json write() {
        Json json{{"headline", m_outlook.headline}, {"sentences", m_outlook.sentences}};
        if (!m_outlook.refused.empty()) json["refused"] = m_outlook.refused;
        if (m_outlook.fit) {
            json["fit"] = nameOf(*m_outlook.fit);
            json["fit_id"] = *m_outlook.fit;
        }
        json["stops_left"] = m_outlook.stopsLeft;
        json["changes_left"] = m_outlook.changesLeft;
        json["bores"] = Json::array();
        for (const BoreOutlook& one : m_outlook.bores)
            json["bores"].push_back(bore(one));
        json["stones"] = Json::array();
        for (const StoneOutlook& one : m_outlook.stones)
            json["stones"].push_back(stone(one));
        json["cautions"] = m_outlook.cautions;
        return json;
    }

private:
    [[nodiscard]] std::string nameOf(const std::string& id) const {
        const Stone* stone = findStone(m_workbook.hone, id);
        return stone != nullptr ? stone->name : id;
    }

    [[nodiscard]] Json bore(const BoreOutlook& one) const {
        Json json{{"bore", one.bore},
                  {"status", statusOf(one)},
                  {"sentence", one.headline},
                  {"sentences", one.sentences},
                  {"oddities", one.oddities}};
        if (one.finishSize) sizes(one, json);
        json["set_ups_left"] = one.setUpsLeft;
        json["stone_changes"] = one.stoneChanges;
        json["model_only"] = one.modelOnly;
        if (one.next) next(*one.next, json);
        json["outline"] = one.outline;
        if (one.finishSize) {
            json["now"] = profile(*one.finishSize, one.curves.depth_mm, one.curves.now);
            json["expected"] = profile(*one.finishSize, one.curves.depth_mm, one.curves.then);
        }
        if (one.checked && one.finishSize) json["checked"] = checked(*one.finishSize, *one.checked);
        if (!one.alternatives.empty()) json["alternatives"] = alternatives(one);
        return json;
    }

    static void sizes(const BoreOutlook& one, Json& json) {
        const double finish = mm(*one.finishSize);
        json["finish_mm"] = finish;
        if (one.lower_um) json["lower_mm"] = rounded_mm(finish * 1e3 + *one.lower_um);
        if (one.cap_um) json["upper_mm"] = rounded_mm(finish * 1e3 + *one.cap_um);
    }

    void next(const PlannedSetUp& setUp, Json& json) const {
        json["stone"] = nameOf(setUp.stone);
        json["stone_id"] = setUp.stone;
        json["windows"] = Json::array();
        for (const PlannedWindow& window : setUp.windows)
            json["windows"].push_back({{"from_mm", mm(window.from.value())},
                                       {"to_mm", mm(window.to.value())},
                                       {"strokes", window.strokes},
                                       {"seconds", window.seconds},
                                       {"hold_s", window.holdSeconds}});
        json["measure"] = Json::array();
        for (const Station& station : setUp.measure)
            json["measure"].push_back({{"depth_mm", mm(station.depth)}, {"axis", station.axis}});
        json["minutes"] = setUp.minutes;
        json["chance_over"] = chance(setUp.chanceOver);
        json["chance_over_limit"] = HoneAim().chance;
        json["expected_straight_mm"] = rounded_mm(setUp.spread_um);
        json["expected_straight_all_mm"] = rounded_mm(setUp.spreadAll_um);
    }

    static Json profile(Length finish, const std::vector<double>& depths, const HoneLine& line) {
        Json json = Json::array();
        for (std::size_t i = 0; i < line.mean_um.size() && i < depths.size(); ++i)
            json.push_back({{"depth_mm", rounded_mm(depths[i] * 1e3)},
                            {"diameter_mm", rounded_mm(mm(finish) * 1e3 + line.mean_um[i])},
                            {"band_mm", rounded_mm(line.band_um[i])}});
        return json;
    }

    [[nodiscard]] std::string axisOf(const Look& look) const {
        for (const Axis& axis : m_workbook.block.axes)
            if (axisShare(m_workbook.block, axis.id) == look.axis) return axis.id;
        return {};
    }

    [[nodiscard]] Json checked(Length finish, const BoreOutlook::Checked& one) const {
        constexpr double normal95 = 1.96;
        Json json{{"survey", one.survey}, {"surprised", one.surprised}};
        json["readings"] = Json::array();
        for (const Found::At& at : one.readings)
            json["readings"].push_back(
                {{"depth_mm", rounded_mm(at.look.depth_mm * 1e3)},
                 {"axis", axisOf(at.look)},
                 {"found_mm", rounded_mm(mm(finish) * 1e3 + at.found_um)},
                 {"expected_mm", rounded_mm(mm(finish) * 1e3 + at.expected.mean_um)},
                 {"band_mm", rounded_mm(normal95 * at.expected.deviation_um)},
                 {"odd", at.odd}});
        json["sentences"] = one.sentences;
        return json;
    }

    static Json alternatives(const BoreOutlook& one) {
        Json json = Json::array();
        for (const HoneAlternative& other : one.alternatives)
            json.push_back(
                {{"name", other.name}, {"sentence", other.sentence}, {"possible", other.possible}});
        return json;
    }

    [[nodiscard]] Json stone(const StoneOutlook& one) const {
        Json json{{"stone", nameOf(one.stone)}, {"stone_id", one.stone}, {"passes", one.passes}};
        if (one.rate_um > 0) {
            json["rate_mm"] = rounded_mm(one.rate_um);
            json["rate_factor"] = std::round(one.rateFactor95 * 1e3) / 1e3;
            json["wedge_mm"] = rounded_mm(one.wedge_um);
            json["u_wedge_mm"] = rounded_mm(one.wedgeDoubt_um);
            if (one.longer_mm != 0) json["longer_mm"] = one.longer_mm;
        }
        json["sentence"] = one.sentence;
        if (one.advice) json["advice"] = *one.advice;
        return json;
    }

    const Workbook& m_workbook;
    const HoneOutlook& m_outlook;
};

} // namespace

std::string honePlanFile(const Workbook& workbook, const HoneOutlook& outlook) {
    Json json{{"format", "borewright plan"},
              {"version", 1},
              {"invented", workbook.invented},
              {"engine", workbook.job.engine},
              {"serial", workbook.job.serial}};
    json["plan"] = Writer(workbook, outlook).write();
    return json.dump(1, ' ', false, Json::error_handler_t::replace) + "\n";
}

} // namespace borewright
