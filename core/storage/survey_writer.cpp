// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/storage/record_writer.h"

namespace borewright {

void RecordWriter::fields(const Survey& survey) {
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

void RecordWriter::fields(const GaugeSetting& gauge) {
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

void RecordWriter::fields(const Gear& gear) {
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

void RecordWriter::fields(const Cooling& cooling) {
    field("room", cooling.room);
    field("before", cooling.earlier);
    field("after", cooling.later);
    field("minutesApart", cooling.minutesApart);
}

void RecordWriter::fields(const RepeatStudy& study) {
    field("id", study.id);
    field("gauge", study.gauge);
    field("when", study.when);
    list("runs", study.runs, Lines::many);
}

void RecordWriter::fields(const RepeatRun& run) {
    field("person", run.person);
    field("spot", run.spot);
    m_json.beginList("typed", Lines::one);
    for (const TypedLength& typed : run.typed)
        m_json.text({}, typed.withUnit());
    m_json.endList();
}

void RecordWriter::fields(const Dial& dial) {
    field("graduation", dial.graduation);
    field("oneTurn", dial.oneTurn);
    field("travel", dial.travel);
    field("face", dial.face);
    field("larger", dial.larger);
}

void RecordWriter::fields(const ZeroCheck& check) {
    field("shows", check.shows);
    field("time", check.time);
}

void RecordWriter::fields(const Station& station) {
    field("bore", station.bore);
    field("depth", depthOf(station.bore, station.depth));
    field("axis", station.axis);
}

void RecordWriter::fields(const Reading& reading) {
    fields(reading.station);
    field("typed", reading.typed);
    field("time", reading.time);
    field("angle", reading.angleOffAxis);
    if (reading.struck) object("struck", *reading.struck, Lines::one);
    field("accepted", reading.accepted);
    if (reading.kept) field("kept", true);
}

void RecordWriter::fields(const Strike& strike) {
    field("reason", strike.reason);
    field("time", strike.time);
    if (!strike.who.empty()) field("who", strike.who);
}

} // namespace borewright
