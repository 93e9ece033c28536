// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/storage/readings_csv.h"

#include "core/utf8.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <fmt/format.h>
#include <optional>

namespace borewright {
namespace {

enum Column : std::size_t {
    bore,
    depth,
    depthUnit,
    axis,
    reading,
    unit,
    time,
    angle,
    struck,
    struckAt,
    struckBy,
    accepted,
    kept,
    columns
};
constexpr std::array<std::string_view, columns> names{
    "bore",  "depth",  "depth unit", "axis",      "reading",  "unit", "time",
    "angle", "struck", "struck at",  "struck by", "accepted", "kept"};
constexpr std::array mustBeThere{bore, depth, axis, reading, unit};

constexpr std::size_t largestCsv = 64UL * 1024 * 1024;

std::string trimmedLower(std::string_view text) {
    const std::size_t first = text.find_first_not_of(" \t");
    if (first == std::string_view::npos) return {};
    std::string lower(text.substr(first, text.find_last_not_of(" \t") - first + 1));
    for (char& c : lower)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    return lower;
}

std::string repeated(std::string_view text) {
    return "'" + shortened(text, 24) + "'";
}

// The unit that depths of a bore are given in where nothing else is said.
Unit usualDepthUnit(const Bore& of, Unit readingUnit) {
    if (of.depth) return of.depth->unit();
    if (of.standardSize) return of.standardSize->unit();
    return isInchFamily(readingUnit) ? Unit::inch : Unit::millimetre;
}

// Where each column stands in a row.
class Header {
public:
    static Result<Header> read(const CsvRow& row) {
        Header header;
        header.m_fields = row.fields.size();
        for (std::size_t i = 0; i < row.fields.size(); ++i) {
            const auto* name = std::ranges::find(names, trimmedLower(row.fields[i]));
            if (name == names.end()) continue;
            auto& place = header.m_places[static_cast<std::size_t>(name - names.begin())];
            if (place) return refuse(row, "two columns are called '" + std::string(*name) + "'");
            place = i;
        }
        for (const Column column : mustBeThere)
            if (!header.m_places[column])
                return refuse(row, "no column is called '" + std::string(names[column]) +
                                       "': the first line names bore, depth, axis, reading, unit");
        return header;
    }

    [[nodiscard]] std::size_t fields() const { return m_fields; }
    [[nodiscard]] std::string_view field(const CsvRow& row, Column column) const {
        return m_places[column] ? std::string_view(row.fields[*m_places[column]])
                                : std::string_view();
    }

private:
    static tl::unexpected<Error> refuse(const CsvRow& row, std::string what) {
        return borewright::refuse("line " + std::to_string(row.line), std::move(what));
    }
    std::array<std::optional<std::size_t>, columns> m_places;
    std::size_t m_fields = 0;
};

// One row becomes a reading; each step refuses with the column's name.
class RowReader {
public:
    RowReader(const Header& header, const CsvRow& row, const Block& block, Timestamp now)
        : m_header(header)
        , m_row(row)
        , m_block(block)
        , m_now(now) {}

    Result<Reading> read() {
        Reading result;
        auto done = takeBore(result)
                        .and_then([&] { return takeAxis(result); })
                        .and_then([&] { return takeTyped(result); })
                        .and_then([&] { return takeDepth(result); })
                        .and_then([&] { return takeTime(result); })
                        .and_then([&] { return takeAngle(result); })
                        .and_then([&] { return takeStrike(result); })
                        .and_then([&] { return takeStanding(result); });
        if (!done) return tl::unexpected(done.error());
        return result;
    }

private:
    [[nodiscard]] std::string_view field(Column column) const {
        return m_header.field(m_row, column);
    }
    static tl::unexpected<Error> refuse(Column column, std::string what) {
        return borewright::refuse(std::string(names[column]), std::move(what));
    }

    Result<void> takeBore(Reading& into) {
        const auto number = readDecimal(field(bore));
        if (!number) return refuse(bore, number.error().what);
        if (number->decimals != 0) return refuse(bore, repeated(field(bore)) + " is no bore");
        const bool mayBe = number->digits >= 1 && number->digits <= 999;
        m_bore = mayBe ? findBore(m_block, static_cast<int>(number->digits)) : nullptr;
        if (m_bore == nullptr)
            return refuse(bore, "there is no bore " + std::to_string(number->digits));
        into.station.bore = m_bore->number;
        return {};
    }

    Result<void> takeAxis(Reading& into) {
        const std::string wanted = csvTextFrom(field(axis));
        const Axis* found = findAxis(m_block, wanted);
        for (const Axis& candidate : m_block.axes) {
            if (found != nullptr) break;
            const std::string lower = trimmedLower(wanted);
            if (trimmedLower(candidate.id) == lower || trimmedLower(candidate.label) == lower)
                found = &candidate;
        }
        if (found == nullptr)
            return refuse(axis,
                          wanted.empty() ? "is empty" : "there is no axis " + repeated(wanted));
        into.station.axis = found->id;
        return {};
    }

    // A length whose unit stands in its own column, behind the number, or in both alike.
    Result<TypedLength> length(Column column, Column unitColumn, std::optional<Unit> usual) {
        std::optional<Unit> named;
        if (const std::string text = trimmedLower(field(unitColumn)); !text.empty()) {
            named = unitFromText(text);
            if (!named)
                return refuse(unitColumn, repeated(field(unitColumn)) + " is no unit known here");
        }
        const auto typed = readTyped(field(column), named.value_or(Unit::inch));
        if (!typed) return refuse(column, typed.error().what);
        const auto other = readTyped(field(column), Unit::millimetre);
        const auto third = readTyped(field(column), Unit::micrometre);
        const bool hasOwn = other && third && other->unit() == third->unit();
        if (hasOwn && named && *named != typed->unit())
            return refuse(column, repeated(field(column)) + " contradicts the unit beside it");
        if (hasOwn || named) return *typed;
        if (!usual) return refuse(unitColumn, "no unit is given");
        auto read = readTyped(field(column), *usual);
        if (!read) return refuse(column, read.error().what);
        return read;
    }

    Result<void> takeTyped(Reading& into) {
        auto typed = length(reading, unit, std::nullopt);
        if (!typed) return tl::unexpected(typed.error());
        into.typed = std::move(*typed);
        return {};
    }

    Result<void> takeDepth(Reading& into) {
        const auto typed = length(depth, depthUnit, usualDepthUnit(*m_bore, into.typed.unit()));
        if (!typed) return tl::unexpected(typed.error());
        into.station.depth = typed->value();
        if (into.station.depth < Length())
            return refuse(depth, "depths run from the open end and are never below zero");
        if (m_bore->depth && into.station.depth > m_bore->depth->value())
            return refuse(depth, typed->withUnit() + " is deeper than bore " +
                                     std::to_string(m_bore->number) + ", which is " +
                                     m_bore->depth->withUnit());
        return {};
    }

    Result<Timestamp> moment(Column column, Timestamp otherwise) {
        if (trimmedLower(field(column)).empty()) return otherwise;
        auto read = readIso(field(column));
        if (!read) return refuse(column, read.error().what);
        return *read;
    }

    Result<void> takeTime(Reading& into) {
        const auto read = moment(time, m_now);
        if (!read) return tl::unexpected(read.error());
        into.time = *read;
        return {};
    }

    Result<void> takeAngle(Reading& into) {
        if (trimmedLower(field(angle)).empty()) return {};
        const auto read = readDecimal(field(angle));
        if (!read) return refuse(angle, read.error().what);
        // Rounded once, so that an angle written here comes back the same to the last bit.
        const std::string exact = fmt::format("{}e-{}", read->digits, read->decimals);
        double degrees = 0;
        std::from_chars(exact.data(), exact.data() + exact.size(), degrees);
        if (degrees < -180 || degrees > 180)
            return refuse(angle, repeated(field(angle)) + " is no angle off the axis in degrees");
        into.angleOffAxis = degrees;
        return {};
    }

    Result<void> takeStrike(Reading& into) {
        if (field(struck).empty() && trimmedLower(field(struckAt)).empty()) return {};
        const auto read = moment(struckAt, into.time);
        if (!read) return tl::unexpected(read.error());
        into.struck = Strike{csvTextFrom(field(struck)), *read, csvTextFrom(field(struckBy))};
        return {};
    }

    // What was done about an odd reading: a table from elsewhere says nothing of it.
    Result<void> takeStanding(Reading& into) {
        if (!field(accepted).empty()) into.accepted = csvTextFrom(field(accepted));
        const std::string said = trimmedLower(field(kept));
        if (!said.empty() && said != "yes" && said != "no")
            return refuse(kept, repeated(field(kept)) + " is neither yes nor no");
        into.kept = said == "yes";
        return {};
    }

    const Header& m_header;
    const CsvRow& m_row;
    const Block& m_block;
    Timestamp m_now;
    const Bore* m_bore = nullptr;
};

// The shortest decimal that reads back as this double, without the exponent that a table's numbers
// do not have; the nought before the point counts among their digits, and goes where it is one too
// many. What a table's number cannot hold is rounded: nobody reads angles so finely.
std::string angleText(double degrees) {
    std::array<char, 400> text{};
    const auto end =
        std::to_chars(text.data(), text.data() + text.size(), degrees, std::chars_format::fixed);
    std::string exact(text.data(), end.ptr);
    if (const auto point = exact.find("0."); !readDecimal(exact) && point <= 1)
        exact.erase(point, 1);
    return readDecimal(exact) ? exact : fmt::format("{:.12f}", degrees);
}

std::string fieldCount(const CsvRow& row, const CsvTable& table, std::size_t wanted) {
    std::string what =
        fmt::format("has {} fields where the first line has {}", row.fields.size(), wanted);
    if (table.separator == ',' && row.fields.size() > wanted)
        what += ": a decimal comma needs quotes, or semicolons between the fields";
    return what;
}

} // namespace

CsvReadings readReadingsCsv(std::string_view text, const Block& block, Timestamp now) {
    CsvReadings result;
    const auto giveUp = [&](Error error) {
        result.errors.push_back(std::move(error));
        return result;
    };
    if (text.size() > largestCsv) return giveUp({{}, "the file is over 64 MB"});
    const auto table = readCsvTable(text);
    if (!table) return giveUp(table.error());
    if (table->rows.empty()) return giveUp({{}, "the file is empty"});
    const auto header = Header::read(table->rows.front());
    if (!header) return giveUp(header.error());
    for (std::size_t i = 1; i < table->rows.size(); ++i) {
        const CsvRow& row = table->rows[i];
        const std::string place = "line " + std::to_string(row.line);
        if (result.errors.size() == mostCsvErrors)
            return giveUp({place, "too much is wrong; the rest was not read"});
        if (row.fields.size() != header->fields()) {
            result.errors.push_back({place, fieldCount(row, *table, header->fields())});
            continue;
        }
        auto read = RowReader(*header, row, block, now).read();
        if (!read) {
            result.errors.push_back(read.error().within(place));
            continue;
        }
        result.readings.push_back(std::move(*read));
        result.lines.push_back(static_cast<std::size_t>(row.line));
    }
    if (result.readings.empty() && result.errors.empty())
        return giveUp({{}, "there is no reading in the file"});
    return result;
}

std::string writeReadingsCsv(const Workbook& workbook, const Survey& survey, char separator) {
    std::string out;
    const auto line = [&](const std::array<std::string, columns>& fields) {
        for (std::size_t i = 0; i < columns; ++i) {
            if (i > 0) out += separator;
            out += csvField(fields[i], separator);
        }
        out += '\n';
    };
    std::array<std::string, columns> fields;
    std::ranges::copy(names, fields.begin());
    line(fields);
    for (const Reading& entry : survey.readings) {
        const Bore* of = findBore(workbook.block, entry.station.bore);
        const Unit wanted =
            of != nullptr ? usualDepthUnit(*of, entry.typed.unit()) : Unit::millimetre;
        const TypedLength at = typedFrom(entry.station.depth, wanted);
        fields.fill({});
        fields[bore] = std::to_string(entry.station.bore);
        fields[depth] = at.text();
        fields[depthUnit] = key(at.unit());
        fields[axis] = csvText(entry.station.axis);
        fields[reading] = entry.typed.text();
        fields[unit] = key(entry.typed.unit());
        fields[time] = toIso(entry.time);
        if (entry.angleOffAxis) fields[angle] = angleText(*entry.angleOffAxis);
        if (entry.struck) {
            fields[struck] = csvText(entry.struck->reason);
            fields[struckAt] = toIso(entry.struck->time);
            fields[struckBy] = csvText(entry.struck->who);
        }
        if (entry.accepted) fields[accepted] = csvText(*entry.accepted);
        if (entry.kept) fields[kept] = "yes";
        line(fields);
    }
    return out;
}

} // namespace borewright
