// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/storage/object_reader.h"
#include "core/storage/record_reader.h"

namespace borewright {

// Named so that the templates of object_reader.h find them.
void readValue(const JsonValue& value, Dial& dial, Trouble& trouble);
void readValue(const JsonValue& value, GaugeSetting& gauge, Trouble& trouble);
void readValue(const JsonValue& value, Gear& gear, Trouble& trouble);
void readValue(const JsonValue& value, Cooling& cooling, Trouble& trouble);
void readValue(const JsonValue& value, RepeatRun& run, Trouble& trouble);
void readValue(const JsonValue& value, ZeroCheck& check, Trouble& trouble);
void readValue(const JsonValue& value, Strike& strike, Trouble& trouble);
void readValue(const JsonValue& value, Reading& reading, Trouble& trouble);

namespace {

void takeStation(ObjectReader& fields, const JsonValue& value, Station& station, Trouble& trouble) {
    fields.need("bore", station.bore);
    fields.need("depth", station.depth);
    fields.need("axis", station.axis);
    if (station.depth < Length())
        trouble.at(value.line, "depth", "a depth runs from the open end and is never below zero");
}

} // namespace

void readValue(const JsonValue& value, Dial& dial, Trouble& trouble) {
    ObjectReader fields(value, trouble);
    fields.need("graduation", dial.graduation);
    fields.need("oneTurn", dial.oneTurn);
    fields.need("travel", dial.travel);
    fields.take("face", dial.face);
    fields.take("larger", dial.larger);
    dial.unknown = fields.rest();
    const auto positive = [&](const char* key, const TypedLength& length) {
        if (length.value() <= Length())
            trouble.at(value.line, std::string("dial: ") + key, "must be more than zero");
    };
    positive("graduation", dial.graduation);
    positive("oneTurn", dial.oneTurn);
    positive("travel", dial.travel);
}

void readValue(const JsonValue& value, GaugeSetting& gauge, Trouble& trouble) {
    ObjectReader fields(value, trouble);
    fields.take("gauge", gauge.gauge);
    fields.take("setOn", gauge.setOn);
    fields.take("setSize", gauge.setSize);
    fields.take("entry", gauge.entry);
    fields.take("dial", gauge.dial);
    fields.take("masterTemperature", gauge.masterTemperature);
    fields.take("blockTemperature", gauge.blockTemperature);
    fields.take("masterExpansion", gauge.masterExpansion);
    fields.take("blockExpansion", gauge.blockExpansion);
    fields.take("stoodTogether", gauge.stoodTogether);
    fields.take("closedEndTemperature", gauge.closedEndTemperature);
    fields.take("gaugeWarmedBy", gauge.gaugeWarmedBy);
    fields.take("differenceDoubt", gauge.differenceDoubt);
    fields.take("temperatureDoubt", gauge.temperatureDoubt);
    fields.take("gear", gauge.gear);
    gauge.unknown = fields.rest();
}

void readValue(const JsonValue& value, Gear& gear, Trouble& trouble) {
    ObjectReader fields(value, trouble);
    fields.take("dialError", gear.dialError);
    fields.take("dialLocalError", gear.dialLocalError);
    fields.take("step", gear.step);
    fields.take("repeatability", gear.repeatability);
    fields.take("repeatabilityFreedom", gear.repeatabilityFreedom);
    fields.take("master", gear.master);
    fields.take("masterMeant", gear.masterMeant);
    fields.take("settingScatter", gear.settingScatter);
    fields.take("drift", gear.drift);
    fields.take("driftLimit", gear.driftLimit);
    fields.take("rocking", gear.rocking);
    fields.take("lastChecked", gear.lastChecked);
    gear.unknown = fields.rest();
}

void readValue(const JsonValue& value, Cooling& cooling, Trouble& trouble) {
    ObjectReader fields(value, trouble);
    fields.need("room", cooling.room);
    fields.need("before", cooling.earlier);
    fields.need("after", cooling.later);
    fields.need("minutesApart", cooling.minutesApart);
    cooling.unknown = fields.rest();
}

void readValue(const JsonValue& value, RepeatRun& run, Trouble& trouble) {
    ObjectReader fields(value, trouble);
    fields.take("person", run.person);
    fields.take("spot", run.spot);
    fields.take("typed", run.typed);
    run.unknown = fields.rest();
}

void readValue(const JsonValue& value, RepeatStudy& study, Trouble& trouble) {
    ObjectReader fields(value, trouble);
    fields.need("id", study.id);
    fields.take("gauge", study.gauge);
    fields.take("when", study.when);
    fields.take("runs", study.runs);
    study.unknown = fields.rest();
}

void readValue(const JsonValue& value, ZeroCheck& check, Trouble& trouble) {
    ObjectReader fields(value, trouble);
    fields.need("shows", check.shows);
    fields.need("time", check.time);
    check.unknown = fields.rest();
}

void readValue(const JsonValue& value, Strike& strike, Trouble& trouble) {
    ObjectReader fields(value, trouble);
    fields.need("reason", strike.reason);
    fields.need("time", strike.time);
    fields.take("who", strike.who);
    strike.unknown = fields.rest();
}

void readValue(const JsonValue& value, Station& station, Trouble& trouble) {
    ObjectReader fields(value, trouble);
    takeStation(fields, value, station, trouble);
    if (const UnknownFields unknown = fields.rest(); !unknown.empty())
        trouble.at(value.line, unknown.front().first, "is no part of a station");
}

void readValue(const JsonValue& value, Reading& reading, Trouble& trouble) {
    ObjectReader fields(value, trouble);
    takeStation(fields, value, reading.station, trouble);
    fields.need("typed", reading.typed);
    fields.need("time", reading.time);
    fields.take("angle", reading.angleOffAxis);
    fields.take("struck", reading.struck);
    fields.take("accepted", reading.accepted);
    fields.take("kept", reading.kept);
    reading.unknown = fields.rest();
}

void readValue(const JsonValue& value, Survey& survey, Trouble& trouble) {
    ObjectReader fields(value, trouble);
    SurveyHeader& header = survey.header;
    fields.need("id", header.id);
    fields.take("name", header.name);
    fields.need("kind", header.kind);
    fields.need("time", header.time);
    fields.take("plate", header.plate);
    fields.take("limitSet", header.limitSet);
    fields.need("gauge", header.gauge);
    fields.take("zeroChecks", header.zeroChecks);
    fields.take("minutesSinceWarm", header.minutesSinceWarm);
    fields.take("cooling", header.cooling);
    fields.take("asked", header.asked);
    fields.take("notes", header.notes);
    fields.take("readings", survey.readings);
    header.unknown = fields.rest();
    if (const auto good = checkHeader(header); trouble.none() && !good)
        trouble.at(value.line, good.error().where, good.error().what);
}

} // namespace borewright
