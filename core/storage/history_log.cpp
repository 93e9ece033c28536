// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/storage/history_log.h"

#include "core/storage/old_values.h"
#include "core/storage/workbook_file.h"

#include <algorithm>
#include <map>
#include <string_view>

namespace borewright {
namespace {

using Kind = JsonValue::Kind;
using Found = std::vector<OldValue>;

bool same(const JsonValue& a, const JsonValue& b) {
    return a.kind == b.kind && a.key == b.key && a.text == b.text &&
           std::ranges::equal(a.items, b.items, same);
}

const JsonValue* member(const JsonValue& object, std::string_view key) {
    const auto place = std::ranges::find(object.items, key, &JsonValue::key);
    return place == object.items.end() ? nullptr : &*place;
}

// A step of a JSON pointer (RFC 6901): "~" and "/" in a key are written ~0 and ~1.
std::string step(std::string_view key) {
    std::string text = "/";
    for (const char c : key)
        if (c == '~')
            text += "~0";
        else if (c == '/')
            text += "~1";
        else
            text += c;
    return text;
}

void compare(const JsonValue& was, const JsonValue& is, const std::string& at, Found& found);

void compareObjects(const JsonValue& was, const JsonValue& is, const std::string& at,
                    Found& found) {
    for (const JsonValue& now : is.items) {
        if (const JsonValue* before = member(was, now.key))
            compare(*before, now, at + step(now.key), found);
        else
            found.push_back({at + step(now.key), {}, {}});
    }
    for (const JsonValue& before : was.items)
        if (member(is, before.key) == nullptr)
            found.push_back({at + step(before.key), compactJson(before), {}});
}

// What both lists begin and end with stays; items are taken one by one where as many stand there.
void compareLists(const JsonValue& was, const JsonValue& is, const std::string& at, Found& found) {
    const std::size_t least = std::min(was.items.size(), is.items.size());
    if (was.items.size() == is.items.size()) {
        for (std::size_t i = 0; i < least; ++i)
            compare(was.items[i], is.items[i], at + '/' + std::to_string(i), found);
        return;
    }
    std::size_t front = 0;
    while (front < least && same(was.items[front], is.items[front]))
        ++front;
    std::size_t back = 0;
    while (back < least - front &&
           same(was.items[was.items.size() - 1 - back], is.items[is.items.size() - 1 - back]))
        ++back;
    JsonValue items{Kind::array, 0, {}, {}, {}};
    for (std::size_t i = front; i < was.items.size() - back; ++i)
        items.items.push_back(was.items[i]);
    found.push_back(
        {at, compactJson(items),
         Splice{static_cast<int>(front), static_cast<int>(is.items.size() - back - front)}});
}

void compare(const JsonValue& was, const JsonValue& is, const std::string& at, Found& found) {
    if (was.kind == is.kind && was.kind == Kind::object) return compareObjects(was, is, at, found);
    if (was.kind == is.kind && was.kind == Kind::array) return compareLists(was, is, at, found);
    if (was.kind != is.kind || was.text != is.text) found.push_back({at, compactJson(was), {}});
}

// Whether a file can hold this value where entries stand, though it stands deeper there.
bool fits(const OldValue& old) {
    constexpr int deepest = JsonBounds::depth / 2;
    int depth = 0;
    bool text = false;
    const std::string json = old.was.value_or("");
    for (std::size_t i = 0; i < json.size(); ++i) {
        const char c = json[i];
        if (text && c == '\\')
            ++i;
        else if (c == '"')
            text = !text;
        else if (!text && (c == '{' || c == '['))
            if (++depth > deepest) return false;
        if (!text && (c == '}' || c == ']')) --depth;
    }
    return json.size() <= largestEntry;
}

std::size_t sizeOf(const HistoryEntry& entry) {
    std::size_t size = 0;
    for (const OldValue& old : entry.was)
        size += old.at.size() + old.was.value_or("").size();
    return size;
}

std::string readingsAt(const Workbook& workbook, const std::string& survey) {
    const Survey* found = findSurvey(workbook, survey);
    return "/surveys/" + std::to_string(found - workbook.surveys.data()) + "/readings";
}

// A reading, or its strike, as the file has it.
std::string readingJson(const Workbook& workbook, const Reading& reading) {
    Workbook bare;
    bare.block = workbook.block; // the unit of depths
    bare.surveys.push_back({{}, {reading}});
    const auto root = parseJson(writeWorkbook(bare));
    if (!root) return {};
    return compactJson(member(member(*root, "surveys")->items.front(), "readings")->items.front());
}

std::string strikeJson(const Strike& strike) {
    Reading reading;
    reading.struck = strike;
    const auto json = parseJson(readingJson(Workbook(), reading));
    return json ? compactJson(*member(*json, "struck")) : std::string();
}

class ReadingLog {
public:
    explicit ReadingLog(const Workbook& is)
        : m_is(is) {
        for (const Survey& survey : is.surveys)
            m_counts[survey.header.id] = survey.readings.size();
    }

    void add(const Edit& inverse) {
        if (const auto* group = std::get_if<EditGroup>(&inverse)) {
            for (const Edit& edit : group->edits)
                add(edit);
        } else if (const auto* strike = std::get_if<SetStrike>(&inverse)) {
            field(strike->survey, strike->index, "struck",
                  strike->strike ? std::optional(strikeJson(*strike->strike)) : std::nullopt);
        } else if (const auto* kept = std::get_if<SetKept>(&inverse)) {
            field(kept->survey, kept->index, "kept",
                  kept->kept ? std::optional<std::string>("true") : std::nullopt);
        } else if (const auto* erase = std::get_if<EraseReading>(&inverse)) {
            // The last one was appended and needs nothing.
            if (erase->index + 1 != m_counts[erase->survey])
                m_found.push_back({readingsAt(m_is, erase->survey), "[]",
                                   Splice{static_cast<int>(erase->index), 1}});
            --m_counts[erase->survey];
        } else if (const auto* insert = std::get_if<InsertReading>(&inverse)) {
            m_found.push_back({readingsAt(m_is, insert->survey),
                               '[' + readingJson(m_is, insert->reading) + ']',
                               Splice{static_cast<int>(insert->index), 0}});
            ++m_counts[insert->survey];
        }
    }
    std::vector<OldValue> take() { return std::move(m_found); }

private:
    void field(const std::string& survey, std::size_t index, const char* key,
               std::optional<std::string> was) {
        m_found.push_back({readingsAt(m_is, survey) + '/' + std::to_string(index) + '/' + key,
                           std::move(was),
                           {}});
    }

    const Workbook& m_is;
    std::map<std::string, std::size_t> m_counts;
    std::vector<OldValue> m_found;
};

} // namespace

std::vector<OldValue> oldValues(const Workbook& was, const Workbook& is) {
    Workbook before = was;
    Workbook now = is;
    // Surveys that stayed need not be written and read for it.
    const std::size_t least = std::min(before.surveys.size(), now.surveys.size());
    for (std::size_t i = 0; i < least; ++i)
        if (before.surveys[i].readings == now.surveys[i].readings) {
            before.surveys[i].readings.clear();
            now.surveys[i].readings.clear();
        }
    const auto a = recordJson(std::move(before));
    const auto b = recordJson(std::move(now));
    Found found;
    if (a && b) compare(*a, *b, {}, found);
    return found;
}

std::vector<OldValue> oldReadings(const Workbook& is, const Edit& inverse) {
    ReadingLog log(is);
    log.add(inverse);
    return log.take();
}

bool noteChange(Workbook& workbook, HistoryEntry entry) {
    if (entry.was.empty() && !entry.dropped) return false;
    std::size_t size = sizeOf(entry);
    for (const HistoryEntry& before : workbook.history.entries)
        size += sizeOf(before);
    if (sizeOf(entry) > largestEntry || size > largestHistory ||
        !std::ranges::all_of(entry.was, fits)) {
        entry.was.clear();
        entry.dropped = true;
    }
    workbook.history.entries.push_back(std::move(entry));
    return true;
}

void noteSheet(Workbook& workbook, HistoryEntry entry) {
    if (!entry.sheet) return;
    entry.sheet->readings.clear();
    for (const Survey& survey : workbook.surveys)
        entry.sheet->readings.push_back(static_cast<int>(survey.readings.size()));
    workbook.history.entries.push_back(std::move(entry));
}

namespace {

tl::unexpected<Error> broken() {
    return refuse("something changed the file since without noting what stood there before");
}

} // namespace

Result<Workbook> behind(const Workbook& workbook, std::size_t count) {
    const auto& entries = workbook.history.entries;
    auto root = recordJson(workbook);
    if (!root) return tl::unexpected(root.error());
    for (std::size_t i = entries.size(); i > count; --i) {
        if (entries[i - 1].dropped)
            return refuse("a change of " + dateInWords(entries[i - 1].time) +
                          " was too large for what stood before to be kept");
        for (const OldValue& old : entries[i - 1].was)
            if (!putBack(*root, old)) return broken();
    }
    auto then = readWorkbook(compactJson(*root));
    if (!then) return broken();
    return then;
}

Result<Workbook> atSheet(const Workbook& workbook, std::size_t entry) {
    const auto& entries = workbook.history.entries;
    if (entry >= entries.size() || !entries[entry].sheet)
        return refuse("no sheet was printed then");
    auto then = behind(workbook, entry + 1);
    if (!then) return then;
    const std::vector<int>& counts = entries[entry].sheet->readings;
    if (counts.size() != then->surveys.size()) return broken();
    for (std::size_t i = 0; i < counts.size(); ++i) {
        auto& readings = then->surveys[i].readings;
        const auto count = static_cast<std::size_t>(std::max(0, counts[i]));
        if (count > readings.size()) return broken();
        readings.erase(readings.begin() + static_cast<std::ptrdiff_t>(count), readings.end());
    }
    return then;
}

bool changedSince(const Workbook& workbook, std::size_t entry) {
    auto then = atSheet(workbook, entry);
    if (!then) return true;
    Workbook now = workbook;
    now.history = {};
    return *then != now;
}

} // namespace borewright
