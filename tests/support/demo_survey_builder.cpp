// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/demo_survey_builder.h"

#include <sstream>

namespace borewright::demo {
namespace {

constexpr int secondsAReading = 7;
constexpr int secondsABore = 45;

std::vector<std::string> cells(std::string_view row) {
    std::istringstream in{std::string(row)};
    std::vector<std::string> result;
    for (std::string cell; in >> cell;)
        result.push_back(cell);
    return result;
}

} // namespace

TypedLength typed(std::string_view text, Unit unit) {
    return *readTyped(text, unit);
}

SurveyBuilder::SurveyBuilder(const Block& block, SurveyHeader header, Unit unit)
    : m_block(block)
    , m_unit(unit)
    , m_now(header.time) {
    m_survey.header = std::move(header);
}

SurveyBuilder& SurveyBuilder::bore(int number, std::string_view a, std::string_view b,
                                   const std::string& prefix) {
    const Bore& bore = *findBore(m_block, number);
    std::map<Station, std::string> texts;
    for (const auto& [axis, row] : {std::pair{"A", a}, std::pair{"B", b}}) {
        const std::vector<std::string> row_cells = cells(row);
        for (std::size_t i = 0; i < row_cells.size(); ++i)
            if (row_cells[i] != "x")
                texts[{number, bore.levels[i].depth.value(), axis}] = row_cells[i];
    }
    std::vector<Station> stations;
    for (const auto& [station, text] : texts)
        stations.push_back(station);
    for (const Station& station : inOrder(m_block, stations, Order::downAndUp)) {
        const std::string& text = texts[station];
        // A cell with a point of its own is whole: the mistakes are typed as they stand.
        const bool whole = prefix.empty() || text.find('.') != std::string::npos;
        m_survey.readings.push_back(
            {station, typed(whole ? text : prefix + text, m_unit), m_now, {}, {}, {}});
        m_now.secondsSinceEpoch += secondsAReading;
    }
    return pass(secondsABore);
}

SurveyBuilder& SurveyBuilder::strike(int number, const std::string& reason, int seconds) {
    pass(seconds);
    for (Reading& reading : m_survey.readings)
        if (reading.station.bore == number && !reading.struck)
            reading.struck = Strike{reason, m_now};
    return *this;
}

SurveyBuilder& SurveyBuilder::pass(int seconds) {
    m_now.secondsSinceEpoch += seconds;
    return *this;
}

SurveyBuilder& SurveyBuilder::zeroCheck(std::string_view shows) {
    m_survey.header.zeroChecks.push_back({typed(shows, m_unit), m_now});
    return pass(20);
}

} // namespace borewright::demo
