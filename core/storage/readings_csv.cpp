// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/storage/readings_csv.h"

#include "core/storage/csv_rows.h"
#include "core/storage/utf8.h"
#include "core/storage/workbook_file.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <fmt/format.h>

namespace borewright {
namespace {

enum Column {
    boreColumn,
    depthColumn,
    axisColumn,
    readingColumn,
    unitColumn,
    timeColumn,
    angleColumn,
    struckColumn,
    struckAtColumn,
    columnCount
};

constexpr std::array<std::string_view, columnCount> columnNames{
    "bore", "depth", "axis", "reading", "unit", "time", "angle", "struck", "struck at"};

// Where each column stands in the file; -1 where it does not.
using Places = std::array<int, columnCount>;

std::string lowerCase(std::string text) {
    for (char& c : text)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    return text;
}

Result<Places> readHeading(const CsvRow& row) {
    Places places;
    places.fill(-1);
    const std::string line = "line " + std::to_string(row.line);
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
        const auto found = std::ranges::find(columnNames, lowerCase(row.cells[i]));
        if (found == columnNames.end()) continue; // a column of the user's own
        int& place = places[static_cast<std::size_t>(found - columnNames.begin())];
        if (place >= 0) return refuse(line, "two columns are headed '" + std::string(*found) + "'");
        place = static_cast<int>(i);
    }
    for (const Column needed : {boreColumn, depthColumn, axisColumn, readingColumn})
        if (places[needed] < 0)
            return refuse(line, "no column is headed '" + std::string(columnNames[needed]) +
                                    "'; the first row must say bore, depth, axis, reading, unit");
    return places;
}

class RowReader {
public:
    RowReader(const Block& block, const Timestamp& now, const Places& places)
        : m_block(block)
        , m_now(now)
        , m_places(places) {}

    Result<Reading> read(const CsvRow& row) {
        m_row = &row;
        Reading reading;
        reading.time = m_now;
        for (const auto step : {&RowReader::readBore, &RowReader::readDepth, &RowReader::readAxis,
                                &RowReader::readNumber, &RowReader::readTime, &RowReader::readAngle,
                                &RowReader::readStrike})
            if (auto good = (this->*step)(reading); !good)
                return tl::unexpected(good.error().within("line " + std::to_string(row.line)));
        return reading;
    }

private:
    [[nodiscard]] std::string cell(Column column) const {
        const int place = m_places[column];
        if (place < 0 || static_cast<std::size_t>(place) >= m_row->cells.size()) return {};
        return m_row->cells[static_cast<std::size_t>(place)];
    }
    static std::string quoted(const std::string& text) { return "'" + shortened(text) + "'"; }

    Result<void> readBore(Reading& reading) {
        const std::string text = cell(boreColumn);
        int number = 0;
        const auto [stop, code] = std::from_chars(text.data(), text.data() + text.size(), number);
        if (text.empty()) return refuse("bore", "is missing");
        if (code != std::errc() || stop != text.data() + text.size())
            return refuse("bore", quoted(text) + " is not the number of a bore");
        m_bore = findBore(m_block, number);
        if (m_bore == nullptr) return refuse("bore", "there is no bore " + std::to_string(number));
        reading.station.bore = number;
        return {};
    }

    Result<void> readDepth(Reading& reading) {
        const std::string text = cell(depthColumn);
        auto typed = readTyped(text, Unit::inch);
        if (!typed) return refuse("depth", typed.error().message());
        // Offered another unit, a text without one of its own takes it.
        const auto other = readTyped(text, Unit::millimetre);
        if (typed->unit() == Unit::inch && (!other || other->unit() != Unit::inch)) {
            if (!m_bore->depth) return refuse("depth", quoted(text) + " has no unit");
            typed = readTyped(text, m_bore->depth->unit());
            if (!typed) return refuse("depth", typed.error().message());
        }
        if (typed->value() < Length()) return refuse("depth", "is below zero");
        reading.station.depth = typed->value();
        return {};
    }

    Result<void> readAxis(Reading& reading) {
        const std::string text = cell(axisColumn);
        const Axis* found = findAxis(m_block, text);
        for (const Axis& axis : m_block.axes)
            if (found == nullptr &&
                (lowerCase(axis.id) == lowerCase(text) || lowerCase(axis.label) == lowerCase(text)))
                found = &axis;
        if (found == nullptr) return refuse("axis", "there is no axis " + quoted(text));
        reading.station.axis = found->id;
        return {};
    }

    Result<void> readNumber(Reading& reading) {
        const std::string text = cell(readingColumn);
        const std::string unitText = cell(unitColumn);
        const auto unit = unitFromText(unitText);
        if (!unit && !unitText.empty())
            return refuse("unit", quoted(unitText) + " is no unit known here");
        auto typed = readTyped(text, unit.value_or(Unit::inch));
        if (!typed) return refuse("reading", typed.error().message());
        // The number may carry its unit; where the column says another, one of them is wrong.
        const Unit other = typed->unit() == Unit::inch ? Unit::millimetre : Unit::inch;
        const auto again = readTyped(text, other);
        const bool carries = again && again->unit() == typed->unit();
        if (!unit && !carries) return refuse("unit", "is missing");
        if (unit && typed->unit() != *unit)
            return refuse("unit", quoted(text) + " and " + quoted(unitText) + " disagree");
        reading.typed = std::move(*typed);
        return {};
    }

    Result<void> readTime(Reading& reading) {
        const std::string text = cell(timeColumn);
        if (text.empty()) return {};
        const auto time = readIso(text);
        if (!time) return refuse("time", time.error().message());
        reading.time = *time;
        return {};
    }

    Result<void> readAngle(Reading& reading) {
        const std::string text = cell(angleColumn);
        if (text.empty()) return {};
        const auto angle = readDecimal(text);
        if (!angle) return refuse("angle", angle.error().message());
        if (std::abs(toDouble(*angle)) > 180) return refuse("angle", "is over half a turn");
        reading.angleOffAxis = toDouble(*angle);
        return {};
    }

    Result<void> readStrike(Reading& reading) {
        const std::string reason = cell(struckColumn);
        const std::string at = cell(struckAtColumn);
        if (reason.empty() && at.empty()) return {};
        reading.struck = Strike{unguardedCell(reason), reading.time};
        if (at.empty()) return {};
        const auto time = readIso(at);
        if (!time) return refuse("struck at", time.error().message());
        reading.struck->time = *time;
        return {};
    }

    const Block& m_block;
    const Timestamp& m_now;
    const Places& m_places;
    const CsvRow* m_row = nullptr;
    const Bore* m_bore = nullptr;
};

CsvReadings nothingBut(Error error) {
    return {{}, {std::move(error)}};
}

} // namespace

CsvReadings readReadingsCsv(std::string_view bytes, const Block& block, const Timestamp& now) {
    if (bytes.size() > largestWorkbookFile) return nothingBut({{}, "the file is over 64 MB"});
    if (bytes.starts_with(byteOrderMark)) bytes.remove_prefix(byteOrderMark.size());
    if (const std::size_t bad = firstBadUtf8(bytes); bad < bytes.size()) {
        const auto line = 1 + std::ranges::count(bytes.substr(0, bad), '\n');
        return nothingBut({"line " + std::to_string(line),
                           "is not UTF-8: keep the table as 'CSV UTF-8' and try again"});
    }
    const auto rows = readCsvRows(bytes);
    if (!rows) return nothingBut(rows.error());
    if (rows->empty()) return nothingBut({{}, "the file is empty"});
    const auto places = readHeading(rows->front());
    if (!places) return nothingBut(places.error());
    CsvReadings result;
    RowReader reader(block, now, *places);
    for (std::size_t i = 1; i < rows->size(); ++i) {
        auto reading = reader.read((*rows)[i]);
        if (reading)
            result.readings.push_back(std::move(*reading));
        else
            result.errors.push_back(reading.error());
    }
    if (result.readings.empty() && result.errors.empty())
        result.errors.push_back({{}, "there is no reading in the file"});
    return result;
}

std::string writeReadingsCsv(const Workbook& workbook, const Survey& survey) {
    std::string out = "bore,depth,axis,reading,unit,time,angle,struck,struck at\n";
    for (const Reading& reading : survey.readings) {
        const Bore* bore = findBore(workbook.block, reading.station.bore);
        const Unit unit = bore != nullptr && bore->depth ? bore->depth->unit() : Unit::millimetre;
        out += std::to_string(reading.station.bore);
        out += ',' + csvCell(typedFrom(reading.station.depth, unit).withUnit());
        out += ',' + csvCell(reading.station.axis);
        out += ',' + csvCell(reading.typed.text()); // a number, never a formula
        out += ',' + std::string(key(reading.typed.unit()));
        out += ',' + toIso(reading.time);
        out += ',' + (reading.angleOffAxis ? fmt::format("{}", *reading.angleOffAxis) : "");
        out += ',' + (reading.struck ? guardedCell(reading.struck->reason) : "");
        out += ',' + (reading.struck ? toIso(reading.struck->time) : "");
        out += '\n';
    }
    return out;
}

} // namespace borewright
