// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/offered_readings.h"

#include "app/cli/change_file.h"
#include "app/cli/typed_options.h"
#include "core/storage/readings_csv.h"

#include <algorithm>

namespace borewright {
namespace {

// "0.6in,A,3.4381" or, with decimal commas, "0,6in;A;3,4381".
Result<std::vector<std::string>> partsOf(const std::string& text) {
    const char apart = text.find(';') == std::string::npos ? ',' : ';';
    std::vector<std::string> parts(1);
    for (const char letter : text) {
        if (letter == apart)
            parts.emplace_back();
        else
            parts.back() += letter;
    }
    constexpr std::size_t three = 3;
    if (parts.size() != three || text.find_first_of("\"\n\r") != std::string::npos)
        return refuse("'" + text + "'", "is not a depth, an axis and what was read there, as "
                                        "0.6in,A,3.4381; with decimal commas 0,6in;A;3,4381");
    return parts;
}

Unit usualUnit(const Workbook& workbook, const Bore* bore, Entry entry) {
    const DisplayUnits units = naturalUnits(workbook);
    if (entry == Entry::deviation) return units.small;
    return bore != nullptr && bore->standardSize ? bore->standardSize->unit() : units.size;
}

// The typed readings as the table they stand for, so that both are read and refused alike.
Result<OfferedReadings> typedReadings(const RecordOptions& options, const Workbook& workbook,
                                      Entry entry, Timestamp now) {
    OfferedReadings offered{"--reading", {}, {}};
    const Bore* bore = findBore(workbook.block, options.bore);
    if (bore == nullptr)
        return refuse("--bore", "there is no bore " + std::to_string(options.bore));
    const Unit usual = usualUnit(workbook, bore, entry);
    for (const std::string& text : options.typed) {
        const auto parts = partsOf(text);
        if (!parts) {
            offered.errors.push_back(parts.error());
            continue;
        }
        const std::string unit = hasOwnUnit(parts->at(2)) ? "" : std::string(key(usual));
        std::string table = "bore;depth;axis;reading;unit\n" + std::to_string(options.bore);
        for (const std::string& part : *parts)
            table += ";" + part;
        CsvReadings read = readReadingsCsv(table + ";" + unit + "\n", workbook, now);
        for (const Error& error : read.errors) // the line is this one
            offered.errors.push_back(
                {"'" + text + "'", error.message().substr(error.message().find(": ") + 2)});
        for (Reading& reading : read.readings)
            offered.readings.emplace_back("'" + text + "'", std::move(reading));
    }
    return offered;
}

} // namespace

Result<OfferedReadings> offeredReadings(const RecordOptions& options, const Workbook& workbook,
                                        Entry entry, const CliOutside& outside) {
    if (options.readings.empty() == options.typed.empty())
        return refuse(options.typed.empty()
                          ? "no readings are given: name a CSV file, or a bore and each reading: "
                            "--bore 2 --reading 0.6in,A,3.4381"
                          : "a CSV file and --reading: one or the other");
    if (!options.typed.empty()) return typedReadings(options, workbook, entry, outside.clock.now());
    if (options.bore != 0)
        return refuse("--bore", "goes with --reading; a CSV file names the bore in each row");
    const auto text = contentOf(outside.files, options.readings);
    if (!text) return tl::unexpected(text.error());
    CsvReadings csv = readReadingsCsv(*text, workbook, outside.clock.now());
    OfferedReadings offered{options.readings, {}, std::move(csv.errors)};
    for (std::size_t i = 0; i < csv.readings.size(); ++i)
        offered.readings.emplace_back("line " + std::to_string(csv.lines[i]),
                                      std::move(csv.readings[i]));
    return offered;
}

} // namespace borewright
