// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/storage/dated_copies.h"

#include "core/storage/hash.h"
#include "core/storage/json_value.h"
#include "core/storage/json_writer.h"
#include "core/storage/saver.h"
#include "core/storage/workbook_file.h"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <functional>
#include <numeric>
#include <set>

namespace borewright {
namespace {

constexpr std::size_t longestStem = 120; // bytes; a name may have 255 on the usual disks

std::string stemOf(const std::string& path) {
    std::string stem = std::filesystem::path(path).stem().string();
    if (stem.size() <= longestStem) return stem;
    std::size_t end = longestStem;
    while (end > 0 && (static_cast<unsigned char>(stem[end]) & 0xC0U) == 0x80U)
        --end; // whole characters
    return stem.substr(0, end);
}

// "2026-03-14T092653+0100": ISO 8601 without the colons, which some disks refuse in a name.
std::string inName(const Timestamp& time) {
    std::string text = toIso(time);
    if (text.ends_with('Z')) text.replace(text.size() - 1, 1, "+00:00");
    std::erase(text, ':');
    return text;
}

// The time in a copy's name; nothing where the name is none of ours, to the letter.
std::optional<Timestamp> timeIn(const std::string& name, const std::string& stem) {
    constexpr std::size_t length = 22;
    const std::string head = stem + ' ';
    if (!name.starts_with(head) || !name.ends_with(workbookExtension) ||
        name.size() != head.size() + length + workbookExtension.size())
        return std::nullopt;
    std::string text = name.substr(head.size(), length);
    for (const std::size_t colon : {13U, 16U, 22U})
        text.insert(colon, ":");
    if (text.ends_with("+00:00")) text = text.substr(0, 19) + "Z";
    const auto time = readIso(text);
    if (!time || head + inName(*time) + std::string(workbookExtension) != name) return std::nullopt;
    return *time;
}

std::string dayOf(const Timestamp& time) {
    return toIso(time).substr(0, 10);
}

std::string monthOf(const Timestamp& time) {
    return toIso(time).substr(0, 7);
}

// Whose copies lie in a folder, as a small file there says.
constexpr std::string_view originName = "whose copies these are.json";
constexpr std::string_view originFormat = "borewright copies";
constexpr std::size_t largestOrigin = 64UL * 1024;

struct Origin {
    std::string path;
    std::string id;
    friend bool operator==(const Origin&, const Origin&) = default;
};

std::string originIn(const std::string& folder) {
    return (std::filesystem::path(folder) / originName).string();
}

std::optional<Origin> readOrigin(FileSystem& files, const std::string& folder) {
    const auto bytes = files.read(originIn(folder), largestOrigin);
    const auto json = bytes ? parseJson(*bytes) : Result<JsonValue>(refuse(""));
    if (!json) return std::nullopt;
    Origin origin;
    std::string format;
    for (const JsonValue& item : json->items) {
        if (item.key == "format") format = item.text;
        if (item.key == "path") origin.path = item.text;
        if (item.key == "id") origin.id = item.text;
    }
    if (format != originFormat || origin.id.empty()) return std::nullopt;
    return origin;
}

// Without it nothing is lost: the copies are found by the workbook's path.
void writeOrigin(FileSystem& files, const std::string& folder, const Origin& origin) {
    if (origin.id.empty() || readOrigin(files, folder) == origin) return;
    JsonWriter json;
    json.beginObject({});
    json.text("format", originFormat);
    json.text("path", origin.path);
    json.text("id", origin.id);
    json.endObject();
    (void)save(files, originIn(folder), json.take());
}

// A copy that cannot be removed does no harm: it is tried again after the next.
void prune(FileSystem& files, const CopyRules& rules, const std::string& path) {
    const auto copies = datedCopies(files, rules, path);
    if (!copies) return;
    std::vector<Timestamp> times;
    for (const DatedCopy& copy : *copies)
        times.push_back(copy.time);
    const std::vector<bool> kept = worthKeeping(times, rules);
    for (std::size_t i = 0; i < copies->size(); ++i)
        if (!kept[i]) (void)files.remove((*copies)[i].path);
}

} // namespace

bool wantsCopies(const CopyRules& rules) {
    return !rules.folder.empty() && (rules.latest > 0 || rules.days > 0 || rules.months > 0);
}

std::vector<bool> worthKeeping(const std::vector<Timestamp>& times, const CopyRules& rules) {
    std::vector<std::size_t> order(times.size());
    std::iota(order.begin(), order.end(), 0U);
    std::ranges::stable_sort(order, [&](auto a, auto b) { return times[a] > times[b]; });
    std::vector<bool> kept(times.size(), false);
    std::set<std::string> days;
    std::set<std::string> months;
    int latest = rules.latest;
    int daysLeft = rules.days;
    int monthsLeft = rules.months;
    for (const std::size_t i : order) {
        const std::string day = dayOf(times[i]);
        const std::string month = monthOf(times[i]);
        if (latest > 0)
            --latest;
        else if (daysLeft > 0 && !days.contains(day))
            --daysLeft;
        else if (monthsLeft > 0 && !months.contains(month))
            --monthsLeft;
        else
            continue;
        kept[i] = true;
        days.insert(day);
        months.insert(month);
    }
    return kept;
}

std::string copiesOf(const CopyRules& rules, const std::string& path) {
    const std::string name = fmt::format("{} {:08x}", stemOf(path), fnv1a(path) & 0xffffffffU);
    return (std::filesystem::path(rules.folder) / name).string();
}

Result<std::vector<DatedCopy>> datedCopies(FileSystem& files, const CopyRules& rules,
                                           const std::string& path) {
    std::vector<DatedCopy> copies;
    const std::string folder = copiesOf(rules, path);
    const auto names = files.list(folder);
    if (!names && names.error() == FileFault::notFound) return copies;
    if (!names) return refuse(std::string(inWords(names.error())));
    const std::string stem = stemOf(path);
    for (const std::string& name : *names)
        if (const auto time = timeIn(name, stem))
            copies.push_back({(std::filesystem::path(folder) / name).string(), *time});
    std::ranges::sort(copies, [](const DatedCopy& a, const DatedCopy& b) {
        return a.time != b.time ? a.time > b.time : a.path > b.path;
    });
    return copies;
}

bool copyIsDue(const std::vector<DatedCopy>& copies, const CopyRules& rules, Timestamp now) {
    if (copies.empty()) return true;
    const std::int64_t since = now.secondsSinceEpoch - copies.front().time.secondsSinceEpoch;
    return since < 0 || since >= rules.apart.count();
}

Result<void> keepCopy(FileSystem& files, const CopyRules& rules, const std::string& path,
                      std::string_view bytes, Timestamp time, const std::string& id) {
    const std::string folder = copiesOf(rules, path);
    if (const auto made = files.makeFolders(folder); !made)
        return refuse(std::string(inWords(made.error())));
    const std::string name = stemOf(path) + ' ' + inName(time) + std::string(workbookExtension);
    const auto saved = save(files, (std::filesystem::path(folder) / name).string(), bytes);
    if (!saved) return tl::unexpected(saved.error());
    writeOrigin(files, folder, {path, id});
    prune(files, rules, path);
    return {};
}

std::vector<DatedCopy> copiesOfEarlierPlaces(FileSystem& files, const CopyRules& rules,
                                             const std::string& path, const std::string& id) {
    std::vector<DatedCopy> found;
    const auto names = files.list(rules.folder);
    if (!names || id.empty()) return found;
    for (const std::string& name : *names) {
        const std::string folder = (std::filesystem::path(rules.folder) / name).string();
        const auto origin = readOrigin(files, folder);
        if (!origin || origin->id != id || origin->path == path) continue;
        // A file that is still there is another workbook by now, begun as a copy of this one.
        if (const auto facts = files.facts(origin->path);
            facts || facts.error() != FileFault::notFound)
            continue;
        if (copiesOf(rules, origin->path) != folder) continue;
        if (const auto copies = datedCopies(files, rules, origin->path))
            found.insert(found.end(), copies->begin(), copies->end());
    }
    std::ranges::sort(found, std::ranges::greater(), &DatedCopy::time);
    return found;
}

} // namespace borewright
