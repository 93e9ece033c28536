// SPDX-License-Identifier: GPL-3.0-or-later
// What does not fit together in the record of the hone, in words. Nothing is left out for it unless
// it says so.
#include "core/honing/log.h"
#include "core/workbook/hone_names.h"

#include <algorithm>
#include <fmt/format.h>

namespace borewright {
namespace {

class Oddities {
public:
    Oddities(const Workbook& workbook, int bore)
        : m_workbook(workbook)
        , m_number(bore)
        , m_bore(findBore(workbook.block, bore)) {}

    std::vector<std::string> find() {
        for (const LogEvent& event : orderOfWork(m_workbook)) {
            if (event.kind == LogEvent::Kind::survey) survey(m_workbook.surveys[event.index]);
            if (event.kind == LogEvent::Kind::pass &&
                m_workbook.hone.passes[event.index].bore == m_number)
                pass(m_workbook.hone.passes[event.index]);
        }
        return std::move(m_found);
    }

private:
    void say(std::string sentence) { m_found.push_back(std::move(sentence)); }

    [[nodiscard]] std::string at(const Pass& pass) const {
        const Stone* stone = findStone(m_workbook.hone, pass.stone);
        return fmt::format("the pass of {}{}", clockTime(pass.time),
                           stone != nullptr ? " with '" + stone->name + "'" : "");
    }

    void survey(const Survey& survey) {
        std::optional<Timestamp> first, last;
        for (const Reading& reading : survey.readings) {
            if (reading.struck || reading.station.bore != m_number) continue;
            if (!first || reading.time < *first) first = reading.time;
            if (!last || *last < reading.time) last = reading.time;
        }
        if (!first) return;
        if (m_pass != nullptr && *first < m_pass->time)
            say(fmt::format("'{}' has a reading from {}, before {} that it is to measure: it is "
                            "taken as read afterwards, as it was logged.",
                            survey.header.name, clockTime(*first), at(*m_pass)));
        m_pass = nullptr;
        m_survey = &survey;
        m_read = *last;
    }

    void pass(const Pass& pass) {
        fits(pass);
        if (m_survey != nullptr && pass.time < m_read)
            say(fmt::format("{} was logged behind '{}', yet a reading there is from {}: that "
                            "survey is taken as read before the pass. If it was read after it, "
                            "log the pass anew behind the survey before.",
                            sentenceStart(at(pass)), m_survey->header.name, clockTime(m_read)));
        if (m_survey == nullptr)
            say(fmt::format("{} was logged before anything was measured in this bore: what it took "
                            "off is not known.",
                            sentenceStart(at(pass))));
        if (m_pass != nullptr) {
            if (pass.time < m_pass->time)
                say(fmt::format("{} is earlier than {} that was logged before it: they count in "
                                "the order logged.",
                                sentenceStart(at(pass)), at(*m_pass)));
            say(fmt::format("Nothing was measured between {} and {}: they are taken together, "
                            "which teaches less of each.",
                            at(*m_pass), at(pass)));
        }
        m_pass = &pass;
    }

    // Still recorded though block or stone were changed since.
    void fits(const Pass& pass) {
        if (m_bore == nullptr) return;
        const Stone* stone = findStone(m_workbook.hone, pass.stone);
        if (stone == nullptr) {
            say(fmt::format("{} names a stone that is not in the list: it is left out of what is "
                            "learned.",
                            sentenceStart(at(pass))));
            return;
        }
        const auto reach = reachOf(*stone, *m_bore);
        if (!reach) {
            say(fmt::format("{} does not fit the bore: {}. It is left out of what is learned.",
                            sentenceStart(at(pass)), reach.error().what));
            return;
        }
        const auto through = std::ranges::any_of(pass.windows, [&](const StrokeWindow& window) {
            return window.to.value() > reach->lowest || window.from.value() < reach->highest;
        });
        if (through)
            say(fmt::format("{} goes further than its stone can in this bore: it is taken as far "
                            "as the stone goes.",
                            sentenceStart(at(pass))));
        const auto none = std::ranges::all_of(pass.windows, [&](const StrokeWindow& window) {
            return strokesOf(window, m_workbook.hone.hone) + window.holdSeconds <= 0;
        });
        if (none)
            say(fmt::format("{} has no strokes: it is taken to have cut nothing.",
                            sentenceStart(at(pass))));
    }

    static std::string sentenceStart(std::string text) {
        if (!text.empty() && text[0] >= 'a' && text[0] <= 'z')
            text[0] = static_cast<char>(text[0] - 'a' + 'A');
        return text;
    }

    const Workbook& m_workbook;
    int m_number;
    const Bore* m_bore;
    const Survey* m_survey = nullptr; // the last that read this bore
    Timestamp m_read;                 // its latest reading here
    const Pass* m_pass = nullptr;     // the last, where nothing was measured since
    std::vector<std::string> m_found;
};

} // namespace

std::vector<std::string> logOddities(const Workbook& workbook, int bore) {
    return Oddities(workbook, bore).find();
}

} // namespace borewright
