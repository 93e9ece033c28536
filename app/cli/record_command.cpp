// SPDX-License-Identifier: GPL-3.0-or-later
// borewright record: readings from a CSV file into a survey, new or there already.
#include "app/cli/commands.h"
#include "app/cli/common.h"
#include "core/gauging/gauging.h"
#include "core/storage/readings_csv.h"
#include "core/storage/saver.h"
#include "core/storage/workbook_file.h"

#include <algorithm>
#include <ostream>

namespace borewright {
namespace {

constexpr std::size_t largestCsv = 64UL * 1024 * 1024;

Result<std::string> contentOf(FileSystem& files, const std::string& path) {
    auto bytes = files.read(path, largestCsv);
    if (!bytes) return refuse(path, std::string(inWords(bytes.error())));
    return std::move(*bytes);
}

SurveyKind kindOf(const std::string& text, bool first) {
    if (text == "before-boring") return SurveyKind::beforeBoring;
    if (text == "check") return SurveyKind::check;
    if (text == "final") return SurveyKind::final;
    return text.empty() && !first ? SurveyKind::check : SurveyKind::asFound;
}

std::string freeName(const Workbook& workbook, const std::string& proposal) {
    const auto taken = [&](const std::string& name) {
        return std::ranges::any_of(
            workbook.surveys, [&](const Survey& survey) { return survey.header.name == name; });
    };
    if (!taken(proposal)) return proposal;
    for (int n = 2;; ++n)
        if (const std::string name = proposal + " " + std::to_string(n); !taken(name)) return name;
}

Result<SurveyHeader> newHeader(const Workbook& workbook, const RecordOptions& options,
                               const Timestamp& now) {
    SurveyHeader header;
    header.id = freshSurveyId(workbook);
    header.kind = kindOf(options.kind, workbook.surveys.empty());
    header.name = options.survey.empty() ? freeName(workbook, std::string(nameOf(header.kind)))
                                         : options.survey;
    header.time = now;
    const bool inch = naturalUnits(workbook) == DisplayUnits::inch();
    header.gauge.dial = inch ? tenthDial() : micrometreDial();
    header.gauge.dial.larger = options.larger == "minus" ? Dial::Larger::minus : Dial::Larger::plus;
    header.gauge.entry = Entry::diameter;
    if (options.setSize.empty()) return header;
    const auto size = readTyped(options.setSize, inch ? Unit::inch : Unit::millimetre);
    if (!size) return tl::unexpected(size.error().within("--set"));
    if (size->value() <= Length()) return refuse("--set", "a size must be more than zero");
    header.gauge.setSize = *size;
    header.gauge.entry = Entry::deviation;
    return header;
}

// The survey that the readings go to: one that is there, else a new one at the end.
Result<Survey*> surveyFor(Workbook& workbook, const RecordOptions& options, const Timestamp& now) {
    const bool named = !options.survey.empty();
    const auto matches = [&](const Survey& survey) {
        return survey.header.id == options.survey || survey.header.name == options.survey;
    };
    if (named && std::ranges::any_of(workbook.surveys, matches)) {
        const auto survey = chooseSurvey(workbook, options.survey);
        if (!survey) return tl::unexpected(survey.error());
        if (!options.kind.empty() || !options.setSize.empty())
            return refuse("survey '" + options.survey + "'",
                          "it is there already: --kind and --set describe a new one");
        return findSurvey(workbook, (*survey)->header.id);
    }
    auto header = newHeader(workbook, options, now);
    if (!header) return tl::unexpected(header.error());
    workbook.surveys.push_back({
        std::move(*header),
        {},
    });
    return &workbook.surveys.back();
}

bool hasLevel(const Bore& bore, Length depth) {
    return std::ranges::any_of(bore.levels,
                               [&](const Level& level) { return level.depth.value() == depth; });
}

void addLevel(Workbook& workbook, const Station& station) {
    Bore* bore = findBore(workbook.block, station.bore);
    const Unit unit = bore->depth ? bore->depth->unit() : Unit::inch;
    bore->levels.push_back({typedFrom(station.depth, unit), Judging::byMap});
    std::ranges::sort(bore->levels, {}, [](const Level& level) { return level.depth.value(); });
}

// Takes what can be taken; what cannot is named.
std::size_t take(Workbook& workbook, Survey& survey, CsvReadings& csv,
                 const RecordOptions& options) {
    std::size_t taken = 0;
    for (std::size_t i = 0; i < csv.readings.size(); ++i) {
        Reading& reading = csv.readings[i];
        const Bore& bore = *findBore(workbook.block, reading.station.bore);
        const std::string where = "line " + std::to_string(csv.lines[i]) + ": " +
                                  describe(reading.station, workbook.block);
        const auto size =
            bore.standardSize ? std::optional(bore.standardSize->value()) : std::nullopt;
        if (const auto good = checkReading(reading.typed, survey.header.gauge, size); !good) {
            csv.errors.push_back({where, good.error().message()});
            continue;
        }
        if (!hasLevel(bore, reading.station.depth)) {
            if (!options.addLevels) {
                csv.errors.push_back(
                    {where, "no level is planned at this depth; --add-levels adds it"});
                continue;
            }
            addLevel(workbook, reading.station);
        }
        survey.readings.push_back(std::move(reading));
        ++taken;
    }
    return taken;
}

} // namespace

Result<int> recordCommand(const RecordOptions& options, const CliOutside& outside) {
    const auto before = contentOf(outside.files, options.file);
    auto workbook = loadNamed(outside.files, options.file);
    if (!workbook) return tl::unexpected(workbook.error());
    const auto text = contentOf(outside.files, options.readings);
    if (!text) return tl::unexpected(text.error());
    auto csv = readReadingsCsv(*text, *workbook, outside.clock.now());
    const auto survey = surveyFor(*workbook, options, outside.clock.now());
    if (!survey) return tl::unexpected(survey.error());
    const std::string name = (*survey)->header.name;
    const std::size_t taken = take(*workbook, **survey, csv, options);

    for (const Error& error : csv.errors)
        outside.err << options.readings << ": " << error.message() << "\n";
    if (!csv.errors.empty() && !options.takeGoodRows)
        return refuse(options.file, "nothing was taken; --take-good-rows takes the good rows");
    if (taken == 0) return refuse(options.readings, "there is no reading to take");
    // Somebody may have the workbook open: what changed meanwhile must not be overwritten.
    if (contentOf(outside.files, options.file) != before)
        return refuse(options.file, "it changed while the readings were taken in; try again");
    const auto saved = save(outside.files, options.file, writeWorkbook(*workbook));
    if (!saved) return tl::unexpected(saved.error().within(options.file));
    outside.out << "Took " << taken << (taken == 1 ? " reading" : " readings") << " into '" << name
                << "'.\n";
    return exitWithin;
}

} // namespace borewright
