// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/storage/bench_lock.h"

#include "core/storage/json_value.h"
#include "core/storage/json_writer.h"
#include "core/storage/saver.h"

#include <algorithm>
#include <charconv>
#include <filesystem>

namespace borewright {
namespace {

constexpr std::size_t largestLock = 64UL * 1024;
constexpr std::string_view format = "borewright lock";

std::string textIn(const JsonValue& object, std::string_view key) {
    const auto found = std::ranges::find(object.items, key, &JsonValue::key);
    return found == object.items.end() ? std::string() : found->text;
}

bool sameMachine(const LockHolder& a, const LockHolder& b) {
    return a.machine == b.machine && a.machineId == b.machineId;
}

bool isSame(const LockHolder& a, const LockHolder& b) {
    return sameMachine(a, b) && a.process == b.process && a.began == b.began;
}

// Whether the holder can be told to be gone: only for a process of this very machine.
bool isStale(const LockHolder& holder, const LockHolder& me, Processes& processes) {
    if (!sameMachine(holder, me)) return false;
    const Processes::Found found = processes.find(holder.process);
    if (!found.known) return false;
    if (!found.running) return true;
    return !holder.began.empty() && !found.began.empty() && holder.began != found.began;
}

std::optional<LockHolder> holderOf(FileSystem& files, const std::string& lock) {
    const auto text = files.read(lock, largestLock);
    if (!text) return std::nullopt;
    const auto holder = readLock(*text);
    return holder ? std::optional(*holder) : std::nullopt;
}

} // namespace

std::string inWords(const LockHolder& holder) {
    const std::string person = holder.person.empty() ? "somebody" : holder.person;
    return holder.machine.empty() ? person : person + " at " + holder.machine;
}

std::string writeLock(const LockHolder& holder) {
    JsonWriter json;
    json.beginObject({});
    json.text("format", format);
    json.text("person", holder.person);
    json.text("machine", holder.machine);
    json.text("machineId", holder.machineId);
    json.text("since", toIso(holder.since));
    json.raw("process", std::to_string(holder.process));
    json.text("began", holder.began);
    json.endObject();
    return json.take();
}

Result<LockHolder> readLock(std::string_view text) {
    const auto json = parseJson(text);
    if (!json) return tl::unexpected(json.error());
    if (json->kind != JsonValue::Kind::object || textIn(*json, "format") != format)
        return refuse("it is no lock");
    LockHolder holder;
    holder.person = textIn(*json, "person");
    holder.machine = textIn(*json, "machine");
    holder.machineId = textIn(*json, "machineId");
    holder.began = textIn(*json, "began");
    const auto since = readIso(textIn(*json, "since"));
    if (!since) return tl::unexpected(since.error());
    holder.since = *since;
    const std::string number = textIn(*json, "process");
    const char* end = number.data() + number.size();
    const auto [stop, code] = std::from_chars(number.data(), end, holder.process);
    if (code != std::errc() || stop != end) return refuse("process", "is no number");
    return holder;
}

std::string lockPath(FileSystem& files, const std::string& workbook) {
    const auto real = files.resolve(workbook);
    const std::filesystem::path path(real ? *real : workbook);
    return (path.parent_path() / ("." + path.filename().string() + ".lock")).string();
}

LockAnswer askLock(FileSystem& files, const std::string& workbook, const LockHolder& me,
                   Processes& processes) {
    LockAnswer answer;
    const auto holder = holderOf(files, lockPath(files, workbook));
    if (!holder || isSame(*holder, me)) return answer;
    (isStale(*holder, me, processes) ? answer.dead : answer.other) = holder;
    return answer;
}

LockAnswer takeLock(FileSystem& files, const std::string& workbook, const LockHolder& me,
                    Processes& processes, bool anyway) {
    const std::string lock = lockPath(files, workbook);
    LockAnswer answer;
    if (!anyway) answer = askLock(files, workbook, me, processes);
    if (answer.other) return answer;
    if (const auto saved = save(files, lock, writeLock(me)); !saved) {
        answer.problem = saved.error().message();
        return answer;
    }
    // Of two that took it in the same moment the later one has it.
    answer.other = askLock(files, workbook, me, processes).other;
    answer.ours = !answer.other;
    return answer;
}

void releaseLock(FileSystem& files, const std::string& workbook, const LockHolder& me) {
    const std::string lock = lockPath(files, workbook);
    const auto holder = holderOf(files, lock);
    if (holder && isSame(*holder, me)) (void)files.remove(lock);
}

} // namespace borewright
