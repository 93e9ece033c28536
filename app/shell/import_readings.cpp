// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/import_readings.h"

#include "core/gauging/gauging.h"

#include <QCoreApplication>
#include <QStringList>

#include <algorithm>

namespace borewright {
namespace {

constexpr std::size_t largestCsv = 64UL * 1024 * 1024;
constexpr std::size_t mostShown = 5;

Result<void> checkPlanned(const Workbook& workbook, const SurveyHeader& header,
                          const Reading& reading) {
    const Bore* bore = findBore(workbook.block, reading.station.bore);
    if (bore == nullptr) return refuse("there is no such bore");
    const auto here = [&](const Level& l) { return l.depth.value() == reading.station.depth; };
    if (std::ranges::none_of(bore->levels, here))
        return refuse("no level is planned at this depth; add it on the Block page");
    const auto size =
        bore->standardSize ? std::optional(bore->standardSize->value()) : std::nullopt;
    const auto checked = checkReading(reading.typed, header.gauge, size);
    if (!checked) return tl::unexpected(checked.error());
    return {};
}

} // namespace

Result<CsvReadings> readImport(FileSystem& files, const std::string& path, const Workbook& workbook,
                               const std::string& survey, Timestamp now) {
    const Survey* into = findSurvey(workbook, survey);
    if (into == nullptr) return refuse("begin a survey first, so that they have one to go to");
    const auto bytes = files.read(path, largestCsv);
    if (!bytes) return refuse(std::string(inWords(bytes.error())));
    CsvReadings all = readReadingsCsv(*bytes, workbook, now);
    CsvReadings good;
    good.errors = std::move(all.errors);
    for (std::size_t i = 0; i < all.readings.size(); ++i) {
        Reading& reading = all.readings[i];
        const std::string where = "line " + std::to_string(all.lines[i]) + ": " +
                                  describe(reading.station, workbook.block);
        const auto checked = checkPlanned(workbook, into->header, reading);
        if (!checked) {
            good.errors.push_back(checked.error().within(where));
            continue;
        }
        good.readings.push_back(std::move(reading));
        good.lines.push_back(all.lines[i]);
    }
    if (good.readings.empty() && good.errors.empty()) return refuse("it holds no readings");
    return good;
}

QString errorList(const CsvReadings& import) {
    QStringList lines;
    for (std::size_t i = 0; i < std::min(mostShown, import.errors.size()); ++i)
        lines += QString::fromStdString(import.errors.at(i).message());
    if (import.errors.size() > mostShown)
        lines += QCoreApplication::translate("ImportReadings", "and %1 more")
                     .arg(import.errors.size() - mostShown);
    return lines.join('\n');
}

Edit insertAll(const Workbook& workbook, const std::string& survey,
               const std::vector<Reading>& readings) {
    EditGroup group;
    const Survey* into = findSurvey(workbook, survey);
    std::size_t index = into == nullptr ? 0 : into->readings.size();
    for (const Reading& reading : readings)
        group.edits.emplace_back(InsertReading{survey, index++, reading});
    return group;
}

} // namespace borewright
