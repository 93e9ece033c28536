// SPDX-License-Identifier: GPL-3.0-or-later
// Takes the fields of a JSON object one by one into the record. The first thing that is wrong is
// kept with its line and field, and everything after it is passed over, so that a reader is a
// plain list of fields.
#pragma once

#include "core/length/number_text.h"
#include "core/length/temperature.h"
#include "core/storage/json_value.h"
#include "core/utf8.h"
#include "core/storage/words.h"
#include "core/workbook/block.h"
#include "core/workbook/timestamp.h"

#include <bitset>
#include <optional>
#include <string>
#include <vector>

namespace borewright {

class Trouble {
public:
    [[nodiscard]] bool none() const { return !m_error; }
    [[nodiscard]] const Error& error() const { return *m_error; }
    // Keeps the first only. `value` is where it is wrong.
    void at(const JsonValue& value, std::string what);
    void at(int line, const std::string& field, std::string what);

private:
    std::optional<Error> m_error;
};

// Each reads one value, or says what it is instead.
void readValue(const JsonValue& value, std::string& into, Trouble& trouble);
void readValue(const JsonValue& value, bool& into, Trouble& trouble);
void readValue(const JsonValue& value, int& into, Trouble& trouble);
void readValue(const JsonValue& value, double& into, Trouble& trouble);
void readValue(const JsonValue& value, TypedLength& into, Trouble& trouble);
void readValue(const JsonValue& value, Length& into, Trouble& trouble);
void readValue(const JsonValue& value, Timestamp& into, Trouble& trouble);
void readValue(const JsonValue& value, TypedTemperature& into, Trouble& trouble);

// Whether `value` is of this kind; trouble where not.
bool isKind(const JsonValue& value, JsonValue::Kind kind, Trouble& trouble);

template<class Word>
requires requires {
    wordsOf(Word{});
}
void readValue(const JsonValue& value, Word& into, Trouble& trouble) {
    if (!isKind(value, JsonValue::Kind::string, trouble)) return;
    std::string known;
    for (const auto& [meaning, word] : wordsOf(Word{})) {
        if (word == value.text) {
            into = meaning;
            return;
        }
        known += (known.empty() ? "'" : ", '") + std::string(word) + "'";
    }
    trouble.at(value, "'" + shortened(value.text) + "' is none of " + known);
}

template<class T>
void readValue(const JsonValue& value, std::optional<T>& into, Trouble& trouble) {
    T read{};
    readValue(value, read, trouble);
    into = std::move(read);
}

template<class T>
void readValue(const JsonValue& value, std::vector<T>& into, Trouble& trouble) {
    if (!isKind(value, JsonValue::Kind::array, trouble)) return;
    into.reserve(value.items.size());
    for (const JsonValue& item : value.items) {
        if (!trouble.none()) return;
        readValue(item, into.emplace_back(), trouble);
    }
}

class ObjectReader {
public:
    // `value` must be an object; trouble where it is not.
    ObjectReader(const JsonValue& value, Trouble& trouble);

    // Takes a field if it is there.
    template<class T>
    void take(std::string_view key, T& into) {
        if (const JsonValue* member = find(key)) readValue(*member, into, m_trouble);
    }
    // Takes a field that must be there.
    template<class T>
    void need(std::string_view key, T& into) {
        if (const JsonValue* member = find(key))
            readValue(*member, into, m_trouble);
        else
            m_trouble.at(m_value.line, std::string(key), "is missing");
    }
    // The field's value, which counts as taken; null where there is none or there was trouble.
    const JsonValue* find(std::string_view key);
    // What was not taken.
    UnknownFields rest() const;

private:
    const JsonValue& m_value;
    Trouble& m_trouble;
    std::bitset<JsonBounds::members> m_taken; // by place in the object
};

} // namespace borewright
