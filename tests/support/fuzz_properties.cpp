// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/fuzz_properties.h"

#include "core/length/format.h"
#include "core/storage/bench_lock.h"
#include "core/storage/readings_csv.h"
#include "core/utf8.h"
#include "core/storage/workbook_file.h"

#include <algorithm>

namespace borewright::test {
namespace {

Block smallBlock() {
    Block block;
    block.axes = usualAxes();
    for (const int number : {1, 2}) {
        Bore bore;
        bore.number = number;
        bore.depth =
            *readTyped(number == 1 ? "4.10" : "88", number == 1 ? Unit::inch : Unit::millimetre);
        block.bores.push_back(bore);
    }
    return block;
}

std::string brokenLength(const TypedLength& typed) {
    const auto again = readTyped(typed.withUnit(), Unit::inch);
    if (!again || !(*again == typed) || again->value() != typed.value())
        return "'" + typed.withUnit() + "' does not read back";
    const Length most = Length::largest();
    if (typed.value() > most || typed.value() < -most) return "a length beyond the largest";
    const auto shown = typedFrom(typed.value(), typed.unit());
    if (shown.value() != typed.value()) return "'" + shown.withUnit() + "' shows another value";
    return {};
}

std::string brokenRefusal(const Error& error, std::string_view bytes) {
    if (error.what.empty()) return "a refusal without words";
    const std::string said = error.message();
    if (firstBadUtf8(bytes) == bytes.size() && firstBadUtf8(said) != said.size())
        return "a refusal that no screen can show";
    return {};
}

} // namespace

std::string brokenByWorkbook(std::string_view bytes) {
    const auto read = readWorkbook(bytes);
    if (!read) return brokenRefusal(read.error(), bytes);
    const std::string written = writeWorkbook(*read);
    const auto again = readWorkbook(written);
    if (!again) return "what was written is refused: " + again.error().message();
    if (!(*again == *read)) return "what was written reads back different";
    if (writeWorkbook(*again) != written) return "it is written differently the second time";
    return {};
}

std::string brokenByReadings(std::string_view bytes) {
    Workbook workbook;
    workbook.block = smallBlock();
    const Timestamp now{1'774'000'000, 60};
    CsvReadings read = readReadingsCsv(bytes, workbook.block, now);
    if (read.readings.empty() && read.errors.empty()) return "neither readings nor a refusal";
    for (const Error& error : read.errors)
        if (auto broken = brokenRefusal(error, bytes); !broken.empty()) return broken;
    if (read.readings.empty()) return {};
    Survey survey;
    survey.readings = std::move(read.readings);
    for (const Reading& reading : survey.readings) {
        if (findBore(workbook.block, reading.station.bore) == nullptr) return "no such bore";
        if (findAxis(workbook.block, reading.station.axis) == nullptr) return "no such axis";
        if (reading.station.depth < Length()) return "a depth below zero";
        if (auto broken = brokenLength(reading.typed); !broken.empty()) return broken;
    }
    for (const char separator : {',', ';'}) {
        const CsvReadings again =
            readReadingsCsv(writeReadingsCsv(workbook, survey, separator), workbook.block, {0, 0});
        if (!again.errors.empty())
            return "what was written is refused: " + again.errors.front().message();
        if (again.readings != survey.readings) return "what was written reads back different";
    }
    return {};
}

std::string brokenByNumber(std::string_view bytes) {
    for (const Unit unit : allUnits) {
        const auto typed = readTyped(bytes, unit);
        if (auto broken = typed ? brokenLength(*typed) : brokenRefusal(typed.error(), bytes);
            !broken.empty())
            return broken;
        const auto amount = readAmount(bytes, unit);
        if (amount && !(typed && *amount == *typed)) return "an amount is another length";
        if (!amount)
            if (auto broken = brokenRefusal(amount.error(), bytes); !broken.empty()) return broken;
    }
    if (const auto temperature = readTemperature(bytes, Scale::celsius)) {
        const auto again = readTemperature(temperature->withScale(), Scale::celsius);
        if (!again || !(*again == *temperature)) return "a temperature does not read back";
    }
    if (const auto time = readIso(bytes))
        if (const auto again = readIso(toIso(*time)); !again || !(*again == *time))
            return "a time does not read back";
    return {};
}

std::string brokenByLock(std::string_view bytes) {
    const auto holder = readLock(bytes);
    if (!holder) return brokenRefusal(holder.error(), bytes);
    const auto again = readLock(writeLock(*holder));
    if (!again) return "what was written is refused: " + again.error().message();
    return *again == *holder ? "" : "what was written reads back different";
}

} // namespace borewright::test
