// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/storage/json_writer.h"
#include "core/storage/words.h"
#include "core/storage/workbook_file.h"

#include <fmt/format.h>

namespace borewright {
namespace {

class Writer {
public:
    std::string write(const Workbook& workbook);

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
    void fields(const SheetText& sheet);

    [[nodiscard]] TypedLength depthOf(int bore, Length depth) const;

    JsonWriter m_json;
    const Block* m_block = nullptr;
};

std::string Writer::write(const Workbook& workbook) {
    m_block = &workbook.block;
    object({}, workbook, Lines::many);
    return m_json.take();
}

void Writer::fields(const Workbook& workbook) {
    m_json.text("format", "borewright workbook");
    field("version", workbookVersion);
    field("invented", workbook.invented);
    object("job", workbook.job, Lines::many);
    object("block", workbook.block, Lines::many);
    list("limitSets", workbook.limitSets, Lines::many);
    field("straightAim", workbook.straightAim);
    list("surveys", workbook.surveys, Lines::many);
    if (!workbook.studies.empty()) list("studies", workbook.studies, Lines::many);
    object("sheet", workbook.sheet, Lines::many);
}

void Writer::fields(const Job& job) {
    field("customer", job.customer);
    field("engine", job.engine);
    field("serial", job.serial);
    field("reason", job.reason);
    field("measuredBy", job.measuredBy);
    field("notes", job.notes);
}

void Writer::fields(const Block& block) {
    field("arrangement", block.arrangement);
    list("axes", block.axes, Lines::one);
    list("bores", block.bores, Lines::many);
}

void Writer::fields(const Axis& axis) {
    field("id", axis.id);
    field("label", axis.label);
    field("angle", axis.angleDegrees);
}

void Writer::fields(const Bore& bore) {
    field("number", bore.number);
    field("standardSize", bore.standardSize);
    field("depth", bore.depth);
    field("surface", bore.surface);
    field("openEnd", bore.openEnd);
    field("roomAtOpenEnd", bore.roomAtOpenEnd);
    field("roomAtClosedEnd", bore.roomAtClosedEnd);
    field("combustionEnd", bore.combustionEnd);
    object("map", bore.map, Lines::many);
    list("levels", bore.levels, Lines::one);
    m_json.beginList("wallMarks");
    for (const WallMark& mark : bore.wallMarks) {
        m_json.beginObject({}, Lines::one);
        field("depth", depthOf(bore.number, mark.depth));
        fields(mark);
        m_json.unknown(mark.unknown);
        m_json.endObject();
    }
    m_json.endList();
}

void Writer::fields(const BoreMap& map) {
    field("topRingLine", map.topRingLine);
    field("lowestRingLine", map.lowestRingLine);
    list("ports", map.ports, Lines::one);
    field("gaugeFoot", map.gaugeFoot);
}

void Writer::fields(const PortBand& band) {
    field("from", band.from);
    field("to", band.to);
    m_json.beginList("axes", Lines::one);
    for (const std::string& axis : band.axes)
        m_json.text({}, axis);
    m_json.endList();
}

void Writer::fields(const Level& level) {
    field("depth", level.depth);
    field("judging", level.judging);
}

void Writer::fields(const WallMark& mark) {
    field("axis", mark.axis);
    field("wall", mark.wall);
}

void Writer::fields(const LimitSet& set) {
    field("id", set.id);
    field("name", set.name);
    field("purpose", set.purpose);
    field("oversize", set.oversize);
    field("finishSize", set.finishSize);
    field("taperRule", set.taperRule);
    if (set.decision != DecisionRule()) object("decision", set.decision, Lines::one);
    object("limits", set.limits, Lines::many);
    m_json.beginList("perBore");
    for (const auto& [number, limits] : set.perBore) {
        m_json.beginObject({}, Lines::one);
        field("bore", number);
        fields(limits);
        m_json.unknown(limits.unknown);
        m_json.endObject();
    }
    m_json.endList();
}

void Writer::fields(const Limits& limits) {
    field("sizeLower", limits.sizeLower);
    field("sizeUpper", limits.sizeUpper);
    field("outOfRound", limits.outOfRound);
    field("taper", limits.taper);
}

void Writer::fields(const Survey& survey) {
    const SurveyHeader& header = survey.header;
    field("id", header.id);
    field("name", header.name);
    field("kind", header.kind);
    field("time", header.time);
    field("plate", header.plate);
    field("limitSet", header.limitSet);
    object("gauge", header.gauge, Lines::many);
    list("zeroChecks", header.zeroChecks, Lines::one);
    field("minutesSinceWarm", header.minutesSinceWarm);
    if (header.cooling) object("cooling", *header.cooling, Lines::one);
    if (header.asked) list("asked", *header.asked, Lines::one);
    field("notes", header.notes);
    list("readings", survey.readings, Lines::one);
    m_json.unknown(header.unknown);
}

void Writer::fields(const GaugeSetting& gauge) {
    field("gauge", gauge.gauge);
    field("setOn", gauge.setOn);
    field("setSize", gauge.setSize);
    field("entry", gauge.entry);
    object("dial", gauge.dial, Lines::many);
    field("masterTemperature", gauge.masterTemperature);
    field("blockTemperature", gauge.blockTemperature);
    field("masterExpansion", gauge.masterExpansion);
    field("blockExpansion", gauge.blockExpansion);
    if (gauge.stoodTogether) field("stoodTogether", true);
    field("closedEndTemperature", gauge.closedEndTemperature);
    field("gaugeWarmedBy", gauge.gaugeWarmedBy);
    field("differenceDoubt", gauge.differenceDoubt);
    field("temperatureDoubt", gauge.temperatureDoubt);
    if (gauge.gear != Gear()) object("gear", gauge.gear, Lines::many);
}

void Writer::fields(const Gear& gear) {
    field("dialError", gear.dialError);
    field("dialLocalError", gear.dialLocalError);
    field("step", gear.step);
    field("repeatability", gear.repeatability);
    field("repeatabilityFreedom", gear.repeatabilityFreedom);
    field("master", gear.master);
    field("masterMeant", gear.masterMeant);
    field("settingScatter", gear.settingScatter);
    field("drift", gear.drift);
    field("driftLimit", gear.driftLimit);
    field("rocking", gear.rocking);
    field("lastChecked", gear.lastChecked);
}

void Writer::fields(const Cooling& cooling) {
    field("room", cooling.room);
    field("before", cooling.earlier);
    field("after", cooling.later);
    field("minutesApart", cooling.minutesApart);
}

void Writer::fields(const RepeatStudy& study) {
    field("id", study.id);
    field("gauge", study.gauge);
    field("when", study.when);
    list("runs", study.runs, Lines::many);
}

void Writer::fields(const RepeatRun& run) {
    field("person", run.person);
    field("spot", run.spot);
    m_json.beginList("typed", Lines::one);
    for (const TypedLength& typed : run.typed)
        m_json.text({}, typed.withUnit());
    m_json.endList();
}

void Writer::fields(const DecisionRule& rule) {
    field("rule", rule.kind);
    field("ownPercent", rule.ownPercent);
}

void Writer::fields(const Dial& dial) {
    field("graduation", dial.graduation);
    field("oneTurn", dial.oneTurn);
    field("travel", dial.travel);
    field("face", dial.face);
    field("larger", dial.larger);
}

void Writer::fields(const ZeroCheck& check) {
    field("shows", check.shows);
    field("time", check.time);
}

void Writer::fields(const Station& station) {
    field("bore", station.bore);
    field("depth", depthOf(station.bore, station.depth));
    field("axis", station.axis);
}

void Writer::fields(const Reading& reading) {
    fields(reading.station);
    field("typed", reading.typed);
    field("time", reading.time);
    field("angle", reading.angleOffAxis);
    if (reading.struck) object("struck", *reading.struck, Lines::one);
    field("accepted", reading.accepted);
    if (reading.kept) field("kept", true);
}

void Writer::fields(const Strike& strike) {
    field("reason", strike.reason);
    field("time", strike.time);
}

void Writer::fields(const SheetText& sheet) {
    field("summary", sheet.summary);
}

// A depth in the unit that the bore's own depth was typed in.
TypedLength Writer::depthOf(int bore, Length depth) const {
    const Bore* found = findBore(*m_block, bore);
    if (found != nullptr && found->depth) return typedFrom(depth, found->depth->unit());
    if (found != nullptr && found->standardSize)
        return typedFrom(depth, found->standardSize->unit());
    return typedFrom(depth, Unit::millimetre);
}

} // namespace

std::string writeWorkbook(const Workbook& workbook) {
    return Writer().write(workbook);
}

} // namespace borewright
