// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/storage/record_writer.h"
#include "core/storage/workbook_file.h"

namespace borewright {

void RecordWriter::fields(const HoneRecord& record) {
    object("drive", record.hone, Lines::one);
    list("stones", record.stones, Lines::one);
    if (record.stages != HoneStages()) object("stages", record.stages, Lines::one);
    list("passes", record.passes, Lines::one);
    if (!record.care.empty()) list("care", record.care, Lines::one);
    if (!record.ticks.empty()) byBore("ticks", record.ticks, Lines::one);
}

std::string RecordWriter::writeStones(const HoneRecord& record) {
    m_json.beginObject({});
    m_json.text("format", "borewright stones");
    list("stones", record.stones, Lines::one);
    list("care", record.care, Lines::one);
    m_json.endObject();
    return m_json.take();
}

std::string writeStones(const HoneRecord& record) {
    return RecordWriter().writeStones(record);
}

void RecordWriter::fields(const Hone& hone) {
    field("speedRpm", hone.speedRpm);
    field("beatsPerMinute", hone.beatsPerMinute);
    field("feed", hone.feed);
    field("oil", hone.oil);
}

void RecordWriter::fields(const Stone& stone) {
    field("id", stone.id);
    field("name", stone.name);
    field("grit", stone.grit);
    field("kind", stone.kind);
    field("begins", stone.begins);
    field("ends", stone.ends);
    field("outOfOpenEnd", stone.outOfOpenEnd);
    field("outOfClosedEnd", stone.outOfClosedEnd);
    if (stone.experience) object("experience", *stone.experience, Lines::one);
}

void RecordWriter::fields(const StoneExperience& experience) {
    field("logRate", experience.logRate);
    field("logRateDoubt", experience.logRateDoubt);
    field("passes", experience.passes);
}

void RecordWriter::fields(const HoneStages& stages) {
    field("roughStopsAt", stages.roughStopsAt);
    field("closedEndLead", stages.closedEndLead);
    field("nextStopsAt", stages.nextStopsAt);
    field("coolBelow", stages.coolBelow);
}

void RecordWriter::fields(const Pass& pass) {
    field("id", pass.id);
    field("bore", pass.bore);
    field("stone", pass.stone);
    field("time", pass.time);
    field("after", pass.after);
    m_json.beginList("windows", Lines::one);
    for (const StrokeWindow& window : pass.windows)
        object({}, window, Lines::one);
    m_json.endList();
    field("speedRpm", pass.speedRpm);
    if (pass.simulated) field("simulated", true);
    if (!pass.notes.empty()) field("notes", pass.notes);
    field("struck", pass.struck);
}

void RecordWriter::fields(const StrokeWindow& window) {
    field("from", window.from);
    field("to", window.to);
    field("strokes", window.strokes);
    field("seconds", window.seconds);
    if (window.holdSeconds != 0) field("holdSeconds", window.holdSeconds);
}

void RecordWriter::fields(const StoneCare& care) {
    field("id", care.id);
    field("stone", care.stone);
    field("kind", care.kind);
    field("time", care.time);
    field("afterPass", care.afterPass);
    field("struck", care.struck);
}

void RecordWriter::fields(const BoreTicks& ticks) {
    field("portsChamfered", ticks.portsChamfered);
    field("washed", ticks.washed);
}

} // namespace borewright
