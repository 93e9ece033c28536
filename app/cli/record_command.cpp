// SPDX-License-Identifier: GPL-3.0-or-later
// borewright record: readings from a CSV file, or typed behind it, into a survey, new or there
// already.
#include "app/cli/change_file.h"
#include "app/cli/commands.h"
#include "app/cli/common.h"
#include "app/cli/offered_readings.h"
#include "core/gauging/gauging.h"

#include <algorithm>
#include <ostream>
#include <set>

namespace borewright {
namespace {

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
    if (workbook.surveys.empty())
        header.gauge.dial = inch ? tenthDial() : micrometreDial();
    else
        header.gauge = gaugeAgain(workbook.surveys.back().header.gauge);
    if (!options.larger.empty())
        header.gauge.dial.larger =
            options.larger == "minus" ? Dial::Larger::minus : Dial::Larger::plus;
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

// A pass of the bore that came after the survey: what is read now is read after it.
const Pass* honedSince(const Workbook& workbook, const Survey& survey, int bore) {
    const auto placeOf = [&](const std::string& id) {
        return std::ranges::find(
            workbook.surveys, id, [](const Survey& s) -> const auto& { return s.header.id; });
    };
    const auto place = placeOf(survey.header.id);
    for (const Pass& pass : workbook.hone.passes) {
        if (pass.struck || pass.bore != bore || pass.after.empty()) continue;
        if (const auto after = placeOf(pass.after);
            after != workbook.surveys.end() && after >= place)
            return &pass;
    }
    return nullptr;
}

// Why a reading cannot go into the survey; empty where it can.
std::string refusal(const Workbook& workbook, const Survey& survey, const Reading& reading,
                    const RecordOptions& options) {
    const Bore& bore = *findBore(workbook.block, reading.station.bore);
    if (const Pass* pass = honedSince(workbook, survey, bore.number))
        return "bore " + std::to_string(bore.number) + " was honed after this survey (pass " +
               pass->id + "), so a new one is due: leave --survey out, or give it a new name";
    const auto size = bore.standardSize ? std::optional(bore.standardSize->value()) : std::nullopt;
    if (const auto good = checkReading(reading.typed, survey.header.gauge, size); !good)
        return good.error().message();
    if (!hasLevel(bore, reading.station.depth) && !options.addLevels)
        return "no level is planned at this depth; --add-levels adds it";
    return {};
}

// Takes what can be taken; what cannot is named.
std::size_t take(Workbook& workbook, Survey& survey, OfferedReadings& offered,
                 const RecordOptions& options) {
    std::size_t taken = 0;
    for (auto& [where, reading] : offered.readings) {
        const std::string place = where + ": " + describe(reading.station, workbook.block);
        if (std::string why = refusal(workbook, survey, reading, options); !why.empty()) {
            offered.errors.push_back({place, std::move(why)});
            continue;
        }
        if (!hasLevel(*findBore(workbook.block, reading.station.bore), reading.station.depth))
            addLevel(workbook, reading.station);
        survey.readings.push_back(std::move(reading));
        ++taken;
    }
    return taken;
}

// A check between passes asks for what was read: nobody goes round the whole block after each. So
// does one that had a list of its own.
void ask(const Workbook& workbook, Survey& survey, bool isNew) {
    SurveyHeader& header = survey.header;
    const bool betweenPasses =
        isNew && header.kind == SurveyKind::check && !workbook.hone.passes.empty();
    if (!header.asked && !betweenPasses) return;
    std::vector<Station> asked = header.asked.value_or(std::vector<Station>());
    std::set<Station> known(asked.begin(), asked.end());
    for (const Reading& reading : survey.readings)
        if (!reading.struck && known.insert(reading.station).second)
            asked.push_back(reading.station);
    header.asked = std::move(asked);
}

} // namespace

Result<int> recordCommand(const RecordOptions& options, const CliOutside& outside) {
    auto opened = openToChange(outside.files, options.file);
    if (!opened) return tl::unexpected(opened.error());
    Workbook& workbook = opened->workbook;
    const std::size_t surveys = workbook.surveys.size();
    const auto survey = surveyFor(workbook, options, outside.clock.now());
    if (!survey) return tl::unexpected(survey.error());
    auto offered = offeredReadings(options, workbook, (*survey)->header.gauge.entry, outside);
    if (!offered) return tl::unexpected(offered.error());
    const std::string name = (*survey)->header.name;
    const std::size_t taken = take(workbook, **survey, *offered, options);
    ask(workbook, **survey, workbook.surveys.size() > surveys);

    for (const Error& error : offered->errors)
        outside.err << offered->from << ": " << error.message() << "\n";
    if (!offered->errors.empty() && !options.takeGoodRows)
        return refuse(options.file, "nothing was taken; --take-good-rows takes the good rows");
    if (taken == 0) return refuse(offered->from, "there is no reading to take");
    if (auto saved =
            saveChange(outside, *opened, {"readings taken in from a script", options.anyway});
        !saved)
        return tl::unexpected(saved.error());
    outside.out << "Took " << taken << (taken == 1 ? " reading" : " readings") << " into '" << name
                << "'.\n";
    return exitWithin;
}

} // namespace borewright
