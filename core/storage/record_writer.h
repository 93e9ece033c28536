// SPDX-License-Identifier: GPL-3.0-or-later
// Writes the parts of a workbook as JSON: `fields` of each thing lists what stands in its object.
// Part of the workbook writer; the parts lie in files of their own as those of the reader do.
#pragma once

#include "core/storage/json_writer.h"
#include "core/storage/words.h"
#include "core/workbook/workbook.h"

#include <fmt/format.h>

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace borewright {

class RecordWriter {
public:
    std::string write(const Workbook& workbook);
    std::string writeStones(const HoneRecord& record);

private:
    // One field each; an optional that is not given is left out.
    void field(std::string_view key, const std::string& value) { m_json.text(key, value); }
    void field(std::string_view key, const TypedLength& value) {
        m_json.text(key, value.withUnit());
    }
    void field(std::string_view key, const TypedTemperature& value) {
        m_json.text(key, value.withScale());
    }
    void field(std::string_view key, const Timestamp& value) { m_json.text(key, toIso(value)); }
    void field(std::string_view key, int value) { m_json.raw(key, std::to_string(value)); }
    // The shortest decimal that reads back as this double.
    void field(std::string_view key, double value) { m_json.raw(key, fmt::format("{}", value)); }
    void field(std::string_view key, bool value) { m_json.raw(key, value ? "true" : "false"); }
    template<class Word>
    requires requires { wordsOf(Word{}); }
    void field(std::string_view key, Word value) { m_json.text(key, wordFor(value)); }
    template<class T>
    void field(std::string_view key, const std::optional<T>& value) {
        if (value) field(key, *value);
    }

    // A list of objects, each on one line or on many.
    template<class T>
    void list(std::string_view key, const std::vector<T>& items, Lines lines) {
        m_json.beginList(key);
        for (const T& item : items)
            object({}, item, lines);
        m_json.endList();
    }
    // A list of objects by engine number, which stands in each as its "bore".
    template<class T>
    void byBore(std::string_view key, const std::map<int, T>& items, Lines lines) {
        m_json.beginList(key);
        for (const auto& [number, item] : items) {
            m_json.beginObject({}, lines);
            field("bore", number);
            fields(item);
            m_json.unknown(item.unknown);
            m_json.endObject();
        }
        m_json.endList();
    }
    template<class T>
    void object(std::string_view key, const T& item, Lines lines) {
        m_json.beginObject(key, lines);
        fields(item);
        if constexpr (requires { item.unknown; }) m_json.unknown(item.unknown);
        m_json.endObject();
    }

    void fields(const Workbook& workbook);
    void fields(const Job& job);
    void fields(const Block& block);
    void fields(const Axis& axis);
    void fields(const Bore& bore);
    void fields(const BoreMap& map);
    void fields(const PortBand& band);
    void fields(const Level& level);
    void fields(const WallMark& mark);
    void fields(const LimitSet& set);
    void fields(const Limits& limits);
    void fields(const Survey& survey);
    void fields(const GaugeSetting& gauge);
    void fields(const Dial& dial);
    void fields(const Gear& gear);
    void fields(const Cooling& cooling);
    void fields(const RepeatRun& run);
    void fields(const RepeatStudy& study);
    void fields(const DecisionRule& rule);
    void fields(const ZeroCheck& check);
    void fields(const Station& station);
    void fields(const Reading& reading);
    void fields(const Strike& strike);
    void fields(const SizingPlan& plan);
    void fields(const SizeOnOffer& size);
    void fields(const BoreWear& wear);
    void fields(const Damage& damage);
    void fields(const FinishTarget& target);
    void fields(const FitRecord& fit);
    void fields(const Piston& piston);
    void fields(const SkirtPoint& point);
    void fields(const Ring& ring);
    void fields(const FitLimits& limits);
    void fields(const HoneRecord& record);
    void fields(const Hone& hone);
    void fields(const Stone& stone);
    void fields(const StoneExperience& experience);
    void fields(const HoneStages& stages);
    void fields(const Pass& pass);
    void fields(const StrokeWindow& window);
    void fields(const StoneCare& care);
    void fields(const BoreTicks& ticks);
    void fields(const SheetText& sheet);
    void fields(const History& history);
    void fields(const HistoryEntry& entry);
    void fields(const OldValue& old);
    void fields(const PrintedSheet& sheet);

    [[nodiscard]] TypedLength depthOf(int bore, Length depth) const;

    JsonWriter m_json;
    const Block* m_block = nullptr;
};

} // namespace borewright
