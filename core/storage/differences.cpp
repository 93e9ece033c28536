// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/storage/differences.h"

#include "core/storage/record_differences.h"
#include "core/storage/workbook_file.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

namespace borewright {
namespace {

using Found = std::vector<Difference>;

std::string called(const SurveyHeader& header) {
    return header.name.empty() ? std::string(nameOf(header.kind)) : header.name;
}

std::string inWords(const Reading& reading) {
    std::string text = reading.typed.withUnit();
    if (reading.angleOffAxis) text += fmt::format(", {}° off the axis", *reading.angleOffAxis);
    if (reading.accepted) text += ", accepted (" + *reading.accepted + ')';
    if (reading.kept) text += ", kept as it is";
    if (reading.struck) text += ", struck out (" + reading.struck->reason + ')';
    return text;
}

// The moments too, for two readings that are alike but for these.
std::string inFull(const Reading& reading) {
    std::string text = inWords(reading) + ", typed " + toIso(reading.time);
    if (reading.struck) text += ", struck out " + toIso(reading.struck->time);
    return text;
}

Difference at(const SurveyHeader& header, const Station& station, const Block& block) {
    Difference made;
    made.survey = header.id;
    made.bore = station.bore;
    made.station = station;
    made.place = called(header) + ", " + describe(station, block);
    made.what = "reading";
    return made;
}

void compareReading(const Reading* was, const Reading* is, Difference made, Found& found) {
    if (was != nullptr && is != nullptr) {
        if (*was == *is) return;
        const bool alike = inWords(*was) == inWords(*is);
        made.was = alike ? inFull(*was) : inWords(*was);
        made.is = alike ? inFull(*is) : inWords(*is);
        if (made.was == made.is) made.what = "reading: a field of a later version";
    } else if (was != nullptr) {
        made.was = inWords(*was);
    } else {
        made.is = inWords(*is);
    }
    found.push_back(std::move(made));
}

using AtStation = std::vector<const Reading*>;

// Several readings at one station: what both begin and end with is the same; the rest is compared
// one by one, in the order typed.
void compareStation(const AtStation& was, const AtStation& is, const Difference& there,
                    Found& found) {
    std::size_t first = 0;
    while (first < was.size() && first < is.size() && *was[first] == *is[first])
        ++first;
    std::size_t wasEnd = was.size();
    std::size_t isEnd = is.size();
    while (wasEnd > first && isEnd > first && *was[wasEnd - 1] == *is[isEnd - 1])
        --wasEnd, --isEnd;
    for (std::size_t i = first; i < std::max(wasEnd, isEnd); ++i)
        compareReading(i < wasEnd ? was[i] : nullptr, i < isEnd ? is[i] : nullptr, there, found);
}

void compareReadings(const Survey& was, const Survey& is, const Block& block, Found& found) {
    if (was.readings == is.readings) return;
    std::map<Station, std::pair<AtStation, AtStation>> stations;
    for (const Reading& reading : was.readings)
        stations[reading.station].first.push_back(&reading);
    for (const Reading& reading : is.readings)
        stations[reading.station].second.push_back(&reading);
    const std::size_t before = found.size();
    for (const auto& [station, both] : stations)
        if (!std::ranges::equal(
                both.first, both.second, {}, [](auto* r) { return *r; },
                [](auto* r) { return *r; }))
            compareStation(both.first, both.second, at(is.header, station, block), found);
    if (found.size() != before) return;
    found.push_back(
        {is.header.id, {}, {}, called(is.header), "order of the readings", "another", "changed"});
}

Difference wholeSurvey(const Survey& survey) {
    Difference made;
    made.survey = survey.header.id;
    made.place = called(survey.header);
    made.what = "survey";
    return made;
}

std::string inWords(const Survey& survey) {
    return fmt::format("{} of {}, {} readings", nameOf(survey.header.kind),
                       dateInWords(survey.header.time), survey.readings.size());
}

// The file leaves out parts that are as a new workbook has them. Marked alike on both sides they
// are written, and compared field by field.
void writeAllParts(Workbook& workbook) {
    const UnknownFields mark{{"compared side by side", "true"}};
    const auto add = [&](UnknownFields& fields) {
        fields.insert(fields.end(), mark.begin(), mark.end());
    };
    add(workbook.sizing.unknown);
    add(workbook.hone.unknown);
    add(workbook.hone.stages.unknown);
    add(workbook.fit.unknown);
    for (FitLimits* limits : {&workbook.fit.clearance, &workbook.fit.ringGap}) {
        add(limits->unknown);
        add(limits->decision.unknown);
    }
    for (LimitSet& set : workbook.limitSets)
        add(set.decision.unknown);
    for (Survey& survey : workbook.surveys)
        add(survey.header.gauge.gear.unknown);
}

// The heading of a survey alone, or all of a workbook but its surveys, as the file has it.
Result<JsonValue> withoutReadings(const Workbook& workbook, const Survey* survey) {
    Workbook bare;
    if (survey == nullptr) {
        bare = workbook;
        bare.surveys.clear();
        bare.history = {};
    } else {
        bare.block = workbook.block; // the unit of depths
        bare.surveys.push_back({survey->header, {}});
    }
    writeAllParts(bare);
    auto json = parseJson(writeWorkbook(bare));
    if (!json || survey == nullptr) return json;
    const auto list = std::ranges::find(json->items, "surveys", &JsonValue::key);
    JsonValue heading = list->items.front();
    return heading;
}

// Where a text is longer than any file may hold it cannot be taken apart, but it differs.
void compareBare(const Result<JsonValue>& was, const Result<JsonValue>& is, Difference around,
                 bool differ, Found& found) {
    if (!differ) return;
    if (was && is) return compareObjects(*was, *is, around, found);
    around.what = "what could not be compared";
    around.is = was ? is.error().message() : was.error().message();
    found.push_back(std::move(around));
}

void compareSurvey(const Workbook& was, const Survey& before, const Workbook& is, const Survey& now,
                   Found& found) {
    if (before.header != now.header) {
        Difference around;
        around.survey = now.header.id;
        around.place = called(now.header);
        compareBare(withoutReadings(was, &before), withoutReadings(is, &now), around, true, found);
    }
    compareReadings(before, now, is.block, found);
}

// The ids of surveys that both have, in the order of the first.
std::vector<std::string> sharedIds(const Workbook& of, const Workbook& with) {
    std::vector<std::string> ids;
    for (const Survey& survey : of.surveys)
        if (findSurvey(with, survey.header.id) != nullptr) ids.push_back(survey.header.id);
    return ids;
}

void compareSurveys(const Workbook& was, const Workbook& is, Found& found) {
    for (const Survey& now : is.surveys) {
        if (const Survey* before = findSurvey(was, now.header.id)) {
            compareSurvey(was, *before, is, now, found);
            continue;
        }
        Difference made = wholeSurvey(now);
        made.is = inWords(now);
        found.push_back(std::move(made));
    }
    for (const Survey& before : was.surveys) {
        if (findSurvey(is, before.header.id) != nullptr) continue;
        Difference made = wholeSurvey(before);
        made.was = inWords(before);
        found.push_back(std::move(made));
    }
    if (sharedIds(was, is) != sharedIds(is, was))
        found.push_back({{}, {}, {}, {}, "order of the surveys", "another", "changed"});
}

std::string entriesOf(const Workbook& workbook) {
    return std::to_string(workbook.history.entries.size()) + " entries";
}

std::string shown(const std::string& text) {
    return text.empty() ? "empty" : text;
}

} // namespace

std::vector<Difference> differences(const Workbook& was, const Workbook& is) {
    Found found;
    if (was == is) return found;
    compareBare(withoutReadings(was, nullptr), withoutReadings(is, nullptr), {}, true, found);
    compareSurveys(was, is, found);
    // Entries tell of differences that stand above already.
    if (found.empty() && was.history != is.history)
        found.push_back({{}, {}, {}, {}, "history", entriesOf(was), entriesOf(is)});
    if (found.empty())
        found.push_back({{}, {}, {}, {}, "something that has no name here", "another", "changed"});
    return found;
}

std::string inWords(const Difference& difference, const std::string& wasWord,
                    const std::string& isWord) {
    std::string text = difference.place;
    if (!difference.what.empty())
        text += (text.empty() ? "" : ": ") + difference.what;
    else
        text += ':';
    const auto side = [&](const std::string& word, const std::optional<std::string>& value) {
        return ' ' + word + ' ' + (value ? shown(*value) : "not there");
    };
    return text + side(wasWord, difference.was) + ',' + side(isWord, difference.is);
}

} // namespace borewright
