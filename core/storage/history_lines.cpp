// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/storage/history_lines.h"

#include "core/storage/old_values.h"
#include "core/storage/record_differences.h"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <span>

namespace borewright {
namespace {

using Kind = JsonValue::Kind;
using Found = std::vector<Difference>;

const std::string notThere = "not there";

std::string textOf(const JsonValue& object, std::string_view key) {
    const auto place = std::ranges::find(object.items, key, &JsonValue::key);
    return place == object.items.end() ? std::string() : place->text;
}

bool isTrue(const JsonValue& object, std::string_view key) {
    return textOf(object, key) == "true";
}

// A reading as differences() tells it, from the form that the file has.
std::string readingInWords(const JsonValue& reading) {
    std::string text = textOf(reading, "typed");
    const std::string angle = textOf(reading, "angle");
    const std::string accepted = textOf(reading, "accepted");
    if (!angle.empty()) text += ", " + angle + "° off the axis";
    if (!accepted.empty()) text += ", accepted (" + accepted + ')';
    if (isTrue(reading, "kept")) text += ", kept as it is";
    const auto struck = std::ranges::find(reading.items, "struck", &JsonValue::key);
    if (struck != reading.items.end()) text += ", struck out (" + textOf(*struck, "reason") + ')';
    return text;
}

// Bore, depth and axis: which reading it is.
std::array<std::string, 3> placeOf(const JsonValue& reading) {
    return {textOf(reading, "bore"), textOf(reading, "depth"), textOf(reading, "axis")};
}

// What is left of a pointer behind so many steps.
std::string behindSteps(const std::string& pointer, int steps) {
    std::size_t at = 0;
    for (int i = 0; i < steps && at != std::string::npos; ++i)
        at = pointer.find('/', at + 1);
    return at == std::string::npos ? std::string() : pointer.substr(at);
}

Difference atReading(Difference around, const JsonValue& reading) {
    const std::string bore = textOf(reading, "bore");
    if (!bore.empty() && bore.size() < 9) around.bore = std::atoi(bore.c_str());
    around.place +=
        ", bore " + bore + ", " + textOf(reading, "depth") + ", " + textOf(reading, "axis");
    around.what = "reading";
    return around;
}

Difference atSurvey(const JsonValue& survey) {
    Difference around;
    around.survey = textOf(survey, "id");
    const std::string name = textOf(survey, "name");
    around.place = name.empty() ? textOf(survey, "kind") : name;
    return around;
}

void compareReadings(const JsonValue* was, const JsonValue* is, const Difference& survey,
                     Found& found) {
    Difference made = atReading(survey, was != nullptr ? *was : *is);
    if (was != nullptr) made.was = readingInWords(*was);
    if (is != nullptr) made.is = readingInWords(*is);
    found.push_back(std::move(made));
}

// The part of the list that stands where the old items stood.
std::vector<const JsonValue*> standingNow(const JsonValue& list, const Splice& splice) {
    std::vector<const JsonValue*> items;
    const auto from = static_cast<std::size_t>(std::max(0, splice.from));
    const auto count = static_cast<std::size_t>(std::max(0, splice.now));
    for (std::size_t i = from; i < list.items.size() && i - from < count; ++i)
        items.push_back(&list.items[i]);
    return items;
}

JsonValue listOf(const std::vector<const JsonValue*>& items) {
    JsonValue list{Kind::array, 0, {}, {}, {}};
    for (const JsonValue* item : items)
        list.items.push_back(*item);
    return list;
}

JsonValue objectWith(const JsonValue* value, const std::string& key) {
    JsonValue object{Kind::object, 0, {}, {}, {}};
    if (value == nullptr) return object;
    object.items.push_back(*value);
    object.items.back().key = key;
    return object;
}

// Goes back through the history over the record as it stood behind each entry.
class Way {
public:
    explicit Way(const Workbook& workbook) {
        if (auto root = recordJson(workbook))
            m_root = std::move(*root);
        else
            m_whole = false;
    }

    [[nodiscard]] bool isWhole() const { return m_whole; }

    // What the entry changed; goes back behind it.
    Found back(const HistoryEntry& entry) {
        Found found;
        const std::span all(entry.was);
        for (std::size_t i = 0, count = 0; i < all.size(); i += count) {
            count = fieldsOfOneReading(all.subspan(i));
            const auto some = all.subspan(i, count);
            if (m_whole) compare(some, found);
            for (const OldValue& old : some) {
                m_whole = m_whole && putBack(m_root, old);
                if (!m_whole) tellOld(old, found);
            }
        }
        if (entry.dropped) m_whole = false;
        return found;
    }

private:
    // How many old values from the beginning are fields of one reading; at least 1.
    static std::size_t fieldsOfOneReading(std::span<const OldValue> all) {
        const auto reading = [](const OldValue& old) {
            auto steps = pointerSteps(old.at);
            const bool field = steps.size() > 4 && isReading(steps);
            steps.resize(field ? 4 : 0);
            return steps;
        };
        const auto first = reading(all.front());
        std::size_t count = 1;
        while (!first.empty() && count < all.size() && reading(all[count]) == first)
            ++count;
        return count;
    }

    static bool isReading(const std::vector<std::string>& steps) {
        return steps.size() > 2 && steps[0] == "surveys" && steps[2] == "readings";
    }

    // `some`: one, or all fields of one reading.
    void compare(std::span<const OldValue> some, Found& found) {
        const OldValue& old = some.front();
        const std::vector<std::string> steps = pointerSteps(old.at);
        const auto was = old.was ? parseJson(*old.was) : Result<JsonValue>(refuse(""));
        if (steps.empty() || (old.was && !was)) return;
        const JsonValue* before = was ? &*was : nullptr;
        if (isReading(steps) && compareReading(some, steps, before, found)) return;
        Difference around;
        std::string list; // that the place is an item of
        JsonValue* place = &m_root;
        for (std::size_t i = 0; i + 1 < steps.size(); ++i) {
            JsonValue* next = stepInto(*place, steps[i]);
            if (next == nullptr) return;
            around = below(around, *place, *next, steps[i], list);
            if (place->kind == Kind::object) list = steps[i];
            place = next;
        }
        compareLast(old, *place, steps.back(), list, before, around, found);
    }

    static Difference below(const Difference& around, const JsonValue& place, const JsonValue& next,
                            const std::string& step, const std::string& list) {
        if (place.kind == Kind::array)
            return list == "surveys" ? atSurvey(next)
                                     : inItem(around, list, next,
                                              static_cast<std::size_t>(&next - place.items.data()));
        return next.kind == Kind::object ? underKey(around, step) : around;
    }

    static void compareLast(const OldValue& old, JsonValue& place, const std::string& step,
                            const std::string& list, const JsonValue* was, const Difference& around,
                            Found& found) {
        const JsonValue* is = stepInto(place, step);
        if (old.splice && was != nullptr && is != nullptr)
            return compareValues(*was, listOf(standingNow(*is, *old.splice)), around, step, found);
        if (place.kind == Kind::object)
            return compareObjects(objectWith(was, step), objectWith(is, step), around, found);
        if (was != nullptr && is != nullptr)
            compareValues(*was, *is, below(around, place, *is, step, list), {}, found);
    }

    // Readings that were replaced, or a field of one; false where it is neither.
    bool compareReading(std::span<const OldValue> some, const std::vector<std::string>& steps,
                        const JsonValue* was, Found& found) {
        const OldValue& old = some.front();
        JsonValue* surveys = stepInto(m_root, steps[0]);
        JsonValue* survey = surveys != nullptr ? stepInto(*surveys, steps[1]) : nullptr;
        JsonValue* readings = survey != nullptr ? stepInto(*survey, steps[2]) : nullptr;
        if (readings == nullptr) return false;
        const Difference around = atSurvey(*survey);
        if (steps.size() == 3) {
            if (!old.splice || was == nullptr) return false;
            const auto now = standingNow(*readings, *old.splice);
            for (std::size_t i = 0; i < std::max(was->items.size(), now.size()); ++i)
                compareReadings(i < was->items.size() ? &was->items[i] : nullptr,
                                i < now.size() ? now[i] : nullptr, around, found);
            return true;
        }
        const JsonValue* reading = stepInto(*readings, steps[3]);
        if (reading == nullptr) return false;
        JsonValue before = *reading;
        if (steps.size() == 4) {
            if (was == nullptr) return false;
            before = *was;
        } else {
            for (OldValue inside : some) {
                inside.at = behindSteps(inside.at, 4);
                if (!putBack(before, inside)) return false;
            }
        }
        // Another one came to stand in its place: that one was only added.
        const bool same = placeOf(before) == placeOf(*reading) ||
                          textOf(before, "typed") == textOf(*reading, "typed");
        compareReadings(&before, same ? reading : nullptr, around, found);
        return true;
    }

    // Where nobody can say any more what stood there then.
    static void tellOld(const OldValue& old, Found& found) {
        Difference made;
        for (const std::string& step : pointerSteps(old.at))
            if (step.empty() || step[0] < '0' || step[0] > '9') made.what = wordsForKey(step);
        const auto was = old.was ? parseJson(*old.was) : Result<JsonValue>(refuse(""));
        made.was = was ? inShort(*was) : notThere;
        found.push_back(std::move(made));
    }

    JsonValue m_root;
    bool m_whole = true;
};

std::string shown(const std::optional<std::string>& text) {
    return !text ? notThere : text->empty() ? "empty" : *text;
}

HistoryLine lineOf(const HistoryEntry& entry, std::size_t place) {
    HistoryLine line;
    line.entry = place;
    line.time = entry.time;
    line.who = entry.who;
    line.what = entry.sheet ? "sheet printed" : entry.what;
    if (entry.sheet) line.code = entry.sheet->code;
    return line;
}

} // namespace

std::vector<HistoryLine> historyLines(const Workbook& workbook) {
    std::vector<HistoryLine> lines;
    Way way(workbook);
    const auto& entries = workbook.history.entries;
    for (std::size_t i = entries.size(); i-- > 0;) {
        const HistoryEntry& entry = entries[i];
        const Found found = way.back(entry);
        const bool known = way.isWhole();
        const HistoryLine line = lineOf(entry, i);
        if (found.empty()) {
            lines.push_back(line);
            if (entry.dropped) lines.back().where = "what stood before was too large to be kept";
        }
        for (std::size_t k = 0; k < found.size(); ++k) {
            HistoryLine one = line;
            if (k + 1 == mostLinesOfEntry && found.size() > mostLinesOfEntry) {
                one.where = "and " + std::to_string(found.size() - k) + " more";
                lines.push_back(one);
                break;
            }
            const Difference& change = found[k];
            one.where = change.place;
            if (!change.what.empty()) one.where += (one.where.empty() ? "" : ": ") + change.what;
            one.bore = change.bore;
            one.before = shown(change.was);
            if (known || change.is) one.after = shown(change.is);
            lines.push_back(std::move(one));
        }
    }
    return lines;
}

} // namespace borewright
