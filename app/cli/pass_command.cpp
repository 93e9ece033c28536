// SPDX-License-Identifier: GPL-3.0-or-later
// borewright pass: logs what was really honed, a set-up at a time, and strikes out what was not.
#include "app/cli/change_file.h"
#include "app/cli/commands.h"
#include "app/cli/common.h"
#include "app/cli/pass_forecast.h"
#include "app/cli/typed_options.h"
#include "core/workbook/edit.h"

#include <algorithm>
#include <fmt/format.h>
#include <ostream>

namespace borewright {
namespace {

std::string stoneNames(const HoneRecord& record) {
    std::string names;
    for (const Stone& stone : record.stones)
        names += (names.empty() ? "" : ", ") + ("'" + stone.name + "' (" + stone.id + ")");
    return names.empty() ? "none is entered yet: borewright stone adds one" : "there is " + names;
}

// The survey it comes after; empty where nothing was measured.
Result<std::string> afterOf(const Workbook& workbook, const std::string& wanted) {
    if (workbook.surveys.empty() && wanted.empty()) return std::string();
    const auto survey = chooseSurvey(workbook, wanted);
    if (!survey) return tl::unexpected(survey.error().within("--after"));
    return (*survey)->header.id;
}

Result<Pass> passOf(const Workbook& workbook, const PassOptions& options, Timestamp now) {
    const HoneRecord& record = workbook.hone;
    const Stone* stone = stoneCalled(record, options.stone);
    if (stone == nullptr)
        return refuse("--stone",
                      "there is no stone '" + options.stone + "'; " + stoneNames(record));
    const Bore* bore = findBore(workbook.block, options.bore);
    if (bore == nullptr)
        return refuse("--bore", "there is no bore " + std::to_string(options.bore));
    Pass pass;
    pass.id = freshPassId(record);
    pass.bore = options.bore;
    pass.stone = stone->id;
    const auto time = timeOption("--time", options.time, now);
    if (!time) return tl::unexpected(time.error());
    pass.time = *time;
    auto after = afterOf(workbook, options.after);
    if (!after) return tl::unexpected(after.error());
    pass.after = std::move(*after);
    auto windows =
        windowsOf(options.windows, bore->depth ? bore->depth->unit() : naturalUnits(workbook).size);
    if (!windows) return tl::unexpected(windows.error());
    pass.windows = std::move(*windows);
    if (!options.speed.empty()) {
        const auto speed = numberOption("--speed", options.speed);
        if (!speed) return tl::unexpected(speed.error());
        pass.speedRpm = *speed;
    }
    pass.simulated = options.simulated;
    pass.notes = options.note;
    return pass;
}

std::string moment(const Timestamp& time) {
    return dateInWords(time) + " " + clockTime(time);
}

// When the last of it was read; when it began, where nothing was.
Timestamp endOf(const Survey& survey) {
    Timestamp end = survey.header.time;
    for (const Reading& reading : survey.readings)
        if (!reading.struck) end = std::max(end, reading.time);
    return end;
}

// What is odd about its place in the log, though the order logged is what counts.
std::vector<std::string> oddities(const Workbook& workbook, const Pass& pass) {
    std::vector<std::string> odd;
    const auto backwards = [&](const char* than, const std::string& other, const Timestamp& time) {
        odd.push_back("the clock runs backwards: " + moment(pass.time) + " is " + than + other +
                      ", " + moment(time) + "; the order logged is what counts");
    };
    std::size_t next = 0; // the survey behind it
    for (std::size_t i = 0; i < workbook.surveys.size() && !pass.after.empty(); ++i)
        if (workbook.surveys[i].header.id == pass.after) next = i + 1;
    if (next > 0)
        if (const Survey& survey = workbook.surveys[next - 1]; pass.time < endOf(survey))
            backwards("before the end of the survey '", survey.header.name + "' that it follows",
                      endOf(survey));
    if (next < workbook.surveys.size())
        if (const SurveyHeader& header = workbook.surveys[next].header; pass.time > header.time)
            backwards("after the survey '", header.name + "' that follows it", header.time);
    const Pass* earlier = nullptr;
    const Pass* unmeasured = nullptr;
    for (const Pass& other : workbook.hone.passes) {
        if (other.struck || other.after != pass.after) continue;
        earlier = &other;
        if (other.bore == pass.bore) unmeasured = &other;
    }
    if (earlier != nullptr && pass.time < earlier->time)
        backwards("before pass ", earlier->id + " that was logged before it", earlier->time);
    if (unmeasured != nullptr)
        odd.push_back("bore " + std::to_string(pass.bore) + " was not measured after pass " +
                      unmeasured->id + ": what each of the two took off cannot be told apart");
    return odd;
}

std::string windowWords(const StrokeWindow& window) {
    const std::string much = window.strokes ? fmt::format("{} strokes", *window.strokes)
                                            : fmt::format("{} s", *window.seconds);
    const std::string held =
        window.holdSeconds > 0 ? fmt::format(", held {} s", window.holdSeconds) : "";
    return much + " from " + window.from.withUnit() + " to " + window.to.withUnit() + held;
}

void report(const Workbook& workbook, const Pass& pass, std::ostream& out) {
    out << "Logged pass " << pass.id << (pass.simulated ? " (simulated)" : "") << " in bore "
        << pass.bore << " with '" << findStone(workbook.hone, pass.stone)->name << "'";
    const char* between = ": ";
    for (const StrokeWindow& window : pass.windows) {
        out << between << windowWords(window);
        between = "; then ";
    }
    const Survey* after = findSurvey(workbook, pass.after);
    out << (after == nullptr ? std::string(", before any survey")
                             : ", after the survey '" + after->header.name + "'")
        << ".\n";
}

void warn(const std::vector<std::string>& sentences, std::ostream& err) {
    for (const std::string& words : sentences)
        err << "borewright: " << words << "\n";
}

std::string passNames(const HoneRecord& record) {
    constexpr std::size_t most = 5;
    std::string names;
    std::size_t told = 0;
    for (auto pass = record.passes.rbegin(); pass != record.passes.rend() && told < most; ++pass) {
        if (pass->struck) continue;
        names += fmt::format("{}{} of {} in bore {}", told++ == 0 ? "; the last are " : ", ",
                             pass->id, clockTime(pass->time), pass->bore);
    }
    return names.empty() ? "; none is logged" : names;
}

Result<int> strike(const PassOptions& options, OpenedFile& opened, const CliOutside& outside) {
    if (options.bore != 0 || !options.stone.empty() || !options.windows.empty())
        return refuse("--strike", "strikes out a pass that is logged: log another one apart");
    if (options.why.empty())
        return refuse("--why", "what is struck out stays readable with its reason: say why");
    HoneRecord record = opened.workbook.hone;
    const auto pass = std::ranges::find(record.passes, options.strike, &Pass::id);
    if (pass == record.passes.end())
        return refuse("--strike", "there is no pass '" + options.strike + "'" + passNames(record));
    if (pass->struck)
        return refuse("--strike", "pass " + pass->id + " is struck out already: " + *pass->struck);
    pass->struck = options.why;
    const std::string said = fmt::format("Struck out pass {} of {} in bore {}: {}.", pass->id,
                                         clockTime(pass->time), pass->bore, options.why);
    if (auto done = borewright::apply(opened.workbook, SetHone{std::move(record)}); !done)
        return tl::unexpected(done.error().within("nothing was struck out"));
    const Writing writing{"striking out pass " + options.strike, options.anyway};
    if (auto saved = saveChange(outside, opened, writing); !saved)
        return tl::unexpected(saved.error());
    outside.out << said << "\n";
    return exitWithin;
}

} // namespace

Result<int> passCommand(const PassOptions& options, const CliOutside& outside) {
    auto opened = openToChange(outside.files, options.file);
    if (!opened) return tl::unexpected(opened.error());
    if (!options.strike.empty()) return strike(options, *opened, outside);
    if (!options.why.empty()) return refuse("--why", "belongs to --strike: which pass?");
    if (options.bore == 0) return refuse("--bore", "which bore was honed? Give its number");
    if (options.stone.empty()) return refuse("--stone", "which stone? Give its name or id");
    Workbook& workbook = opened->workbook;
    auto pass = passOf(workbook, options, outside.clock.now());
    if (!pass) return tl::unexpected(pass.error());
    const std::vector<std::string> odd = oddities(workbook, *pass);
    const Workbook before = workbook;
    HoneRecord record = workbook.hone;
    record.passes.push_back(*pass);
    if (auto done = borewright::apply(workbook, SetHone{std::move(record)}); !done)
        return tl::unexpected(done.error().within("nothing was logged"));
    if (auto saved = saveChange(outside, *opened, {"pass " + pass->id, options.anyway}); !saved)
        return tl::unexpected(saved.error());
    report(workbook, *pass, outside.out);
    warn(odd, outside.err);
    // Logged already: a forecast keeps nobody from it.
    const std::vector<std::string> doubts = doubtsOfPass(before, *pass, options.foresee);
    warn(doubts, outside.err);
    if (!doubts.empty())
        outside.err << "borewright: if it was not so, strike it out: borewright pass "
                    << options.file << " --strike " << pass->id << " --why 'typed wrongly'\n";
    const Surface surface = findBore(workbook.block, pass->bore)->surface;
    if (const std::string caution = surfaceCaution(surface); !caution.empty())
        outside.err << "borewright: " << caution << "\n";
    return exitWithin;
}

} // namespace borewright
