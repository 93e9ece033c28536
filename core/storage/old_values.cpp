// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/storage/old_values.h"

#include "core/storage/workbook_file.h"

#include <algorithm>
#include <charconv>

namespace borewright {

using Kind = JsonValue::Kind;

Result<JsonValue> recordJson(Workbook workbook) {
    workbook.history = {};
    return parseJson(writeWorkbook(workbook));
}

std::vector<std::string> pointerSteps(std::string_view pointer) {
    std::vector<std::string> steps;
    for (std::size_t i = 0; i < pointer.size(); ++i) {
        const char c = pointer[i];
        if (c == '/')
            steps.emplace_back();
        else if (steps.empty())
            return {}; // no pointer begins so
        else if (c == '~' && i + 1 < pointer.size())
            steps.back() += pointer[++i] == '1' ? '/' : '~';
        else
            steps.back() += c;
    }
    return steps;
}

JsonValue* stepInto(JsonValue& value, const std::string& step) {
    if (value.kind == Kind::object) {
        const auto place = std::ranges::find(value.items, step, &JsonValue::key);
        return place == value.items.end() ? nullptr : &*place;
    }
    std::size_t index = 0;
    const auto [end, code] = std::from_chars(step.data(), step.data() + step.size(), index);
    const bool number = code == std::errc() && end == step.data() + step.size();
    return value.kind == Kind::array && number && index < value.items.size() ? &value.items[index]
                                                                             : nullptr;
}

bool putBack(JsonValue& root, const OldValue& old) {
    const std::vector<std::string> steps = pointerSteps(old.at);
    if (steps.empty()) return false;
    JsonValue* place = &root;
    for (std::size_t i = 0; i + 1 < steps.size(); ++i)
        if (place = stepInto(*place, steps[i]); place == nullptr) return false;
    JsonValue* target = stepInto(*place, steps.back());
    if (!old.was) { // there was none
        if (target == nullptr || place->kind != Kind::object) return false;
        place->items.erase(place->items.begin() + (target - place->items.data()));
        return true;
    }
    auto value = parseJson(*old.was);
    if (!value) return false;
    if (old.splice) {
        const auto from = static_cast<std::size_t>(std::max(0, old.splice->from));
        const auto now = static_cast<std::size_t>(std::max(0, old.splice->now));
        if (target == nullptr || target->kind != Kind::array || value->kind != Kind::array ||
            from > target->items.size() || now > target->items.size() - from)
            return false;
        const auto first = target->items.begin() + static_cast<std::ptrdiff_t>(from);
        const auto gap = target->items.erase(first, first + static_cast<std::ptrdiff_t>(now));
        target->items.insert(gap, value->items.begin(), value->items.end());
        return true;
    }
    if (target == nullptr && place->kind != Kind::object) return false;
    if (place->kind == Kind::object) value->key = steps.back();
    if (target != nullptr)
        *target = std::move(*value);
    else
        place->items.push_back(std::move(*value));
    return true;
}

} // namespace borewright
