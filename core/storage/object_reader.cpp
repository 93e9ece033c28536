// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/storage/object_reader.h"

#include <charconv>
#include <cmath>

namespace borewright {
namespace {

std::string_view nameOf(JsonValue::Kind kind) {
    switch (kind) {
    case JsonValue::Kind::null:
        return "nothing (null)";
    case JsonValue::Kind::boolean:
        return "true or false";
    case JsonValue::Kind::number:
        return "a bare number";
    case JsonValue::Kind::string:
        return "a text";
    case JsonValue::Kind::array:
        return "a list";
    case JsonValue::Kind::object:
        return "an object";
    }
    return "";
}

} // namespace

void Trouble::at(const JsonValue& value, std::string what) {
    at(value.line, value.key, std::move(what));
}

void Trouble::at(int line, const std::string& field, std::string what) {
    if (m_error) return;
    m_error = Error{"line " + std::to_string(line) + (field.empty() ? "" : ": " + field),
                    std::move(what)};
}

bool isKind(const JsonValue& value, JsonValue::Kind kind, Trouble& trouble) {
    if (value.kind == kind) return true;
    trouble.at(value, std::string(nameOf(value.kind)) + " stands where " +
                          std::string(nameOf(kind)) + " must be");
    return false;
}

void readValue(const JsonValue& value, std::string& into, Trouble& trouble) {
    if (isKind(value, JsonValue::Kind::string, trouble)) into = value.text;
}

void readValue(const JsonValue& value, bool& into, Trouble& trouble) {
    if (isKind(value, JsonValue::Kind::boolean, trouble)) into = value.text == "true";
}

void readValue(const JsonValue& value, int& into, Trouble& trouble) {
    if (!isKind(value, JsonValue::Kind::number, trouble)) return;
    const char* end = value.text.data() + value.text.size();
    const auto [stop, code] = std::from_chars(value.text.data(), end, into);
    if (code != std::errc() || stop != end)
        trouble.at(value, value.text + " is not a whole number that can be");
}

void readValue(const JsonValue& value, double& into, Trouble& trouble) {
    if (!isKind(value, JsonValue::Kind::number, trouble)) return;
    const char* end = value.text.data() + value.text.size();
    const auto [stop, code] = std::from_chars(value.text.data(), end, into);
    if (code != std::errc() || stop != end || !std::isfinite(into))
        trouble.at(value, value.text + " is not a number that can be");
}

void readValue(const JsonValue& value, TypedLength& into, Trouble& trouble) {
    if (!isKind(value, JsonValue::Kind::string, trouble)) return;
    auto read = readTyped(value.text, Unit::inch);
    if (!read) return trouble.at(value, read.error().message());
    // A text with no unit of its own takes the one it is offered.
    if (read->unit() == Unit::inch) {
        const auto metric = readTyped(value.text, Unit::millimetre);
        if (!metric || metric->unit() != Unit::inch)
            return trouble.at(value, "'" + shortened(value.text) + "' has no unit");
    }
    into = std::move(*read);
}

void readValue(const JsonValue& value, Length& into, Trouble& trouble) {
    TypedLength typed;
    readValue(value, typed, trouble);
    into = typed.value();
}

void readValue(const JsonValue& value, Timestamp& into, Trouble& trouble) {
    if (!isKind(value, JsonValue::Kind::string, trouble)) return;
    const auto read = readIso(value.text);
    if (!read) return trouble.at(value, read.error().message());
    into = *read;
}

void readValue(const JsonValue& value, TypedTemperature& into, Trouble& trouble) {
    if (!isKind(value, JsonValue::Kind::string, trouble)) return;
    if (!value.text.ends_with('C') && !value.text.ends_with('F'))
        return trouble.at(value, "'" + shortened(value.text) + "' has no C or F behind it");
    auto read = readTemperature(value.text, Scale::celsius);
    if (!read) return trouble.at(value, read.error().message());
    into = std::move(*read);
}

ObjectReader::ObjectReader(const JsonValue& value, Trouble& trouble)
    : m_value(value)
    , m_trouble(trouble) {
    (void)isKind(value, JsonValue::Kind::object, trouble);
}

const JsonValue* ObjectReader::find(std::string_view key) {
    if (!m_trouble.none()) return nullptr;
    for (std::size_t i = 0; i < m_value.items.size(); ++i) {
        if (m_value.items[i].key != key) continue;
        m_taken.set(i);
        return &m_value.items[i];
    }
    return nullptr;
}

UnknownFields ObjectReader::rest() const {
    UnknownFields unknown;
    if (!m_trouble.none()) return unknown;
    for (std::size_t i = 0; i < m_value.items.size(); ++i)
        if (!m_taken.test(i))
            unknown.emplace_back(m_value.items[i].key, compactJson(m_value.items[i]));
    return unknown;
}

} // namespace borewright
