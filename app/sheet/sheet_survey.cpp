// SPDX-License-Identifier: GPL-3.0-or-later
// The shop's record of a survey: every reading as typed and as a diameter, how the gauge was set,
// its zero checks, what was struck out and why.
#include "app/pictures/reading_words.h"
#include "app/sheet/sheet_data.h"

#include <algorithm>
#include <map>
#include <tuple>

namespace borewright {
namespace {

// Axes side by side in a card; a bore read on more gets another card.
constexpr std::size_t mostAxes = 4;
constexpr std::size_t mostRows = 40;

class SurveyWriter {
public:
    SurveyWriter(const Workbook& workbook, const Survey& survey, const SurveyResult& result,
                 const DisplayUnits& units)
        : m_workbook(workbook)
        , m_survey(survey)
        , m_result(result)
        , m_units(units) {}

    SheetSurvey write() {
        SheetSurvey sheet;
        const SurveyHeader& header = m_survey.header;
        const QString kind = qs(std::string(nameOf(header.kind)));
        sheet.title = qs(header.name);
        if (sheet.title.isEmpty()) sheet.title = kind;
        sheet.when =
            SheetWords::tr("%1, %2").arg(qs(dateInWords(header.time)), qs(clockTime(header.time)));
        if (sheet.title != kind) sheet.when = kind + QStringLiteral("  ·  ") + sheet.when;
        m_unit = usualUnit();
        sheet.typedUnit = unitSymbol(m_unit);
        sheet.facts = facts();
        for (const BoreResult& bore : m_result.bores)
            addCards(sheet.cards, bore);
        addRemarks(sheet.remarks);
        return sheet;
    }

private:
    // The unit that most readings were typed in: said once; another is said beside its reading.
    [[nodiscard]] Unit usualUnit() const {
        std::map<Unit, int> counts;
        for (const Reading& reading : m_survey.readings)
            ++counts[reading.typed.unit()];
        if (counts.empty()) return m_units.small;
        return std::ranges::max_element(counts, {}, [](const auto& entry) { return entry.second; })
            ->first;
    }

    [[nodiscard]] QString typedText(const TypedLength& typed) const {
        QString text = typed.unit() == m_unit ? qs(typed.text()) : sheetTyped(typed);
        if (text.startsWith('-')) text[0] = QChar(0x2212);
        return text;
    }

    [[nodiscard]] QString dialText() const {
        const GaugeSetting& gauge = m_survey.header.gauge;
        if (gauge.entry == Entry::diameter) return SheetWords::tr("diameters were typed");
        const Dial& dial = gauge.dial;
        return SheetWords::tr("division %1, one turn %2, %3 face; a larger bore reads %4")
            .arg(sheetTyped(dial.graduation), sheetTyped(dial.oneTurn),
                 dial.face == Dial::Face::balanced ? SheetWords::tr("balanced")
                                                   : SheetWords::tr("round"),
                 dial.larger == Dial::Larger::plus ? SheetWords::tr("plus")
                                                   : SheetWords::tr("minus"));
    }

    [[nodiscard]] QString zeroText() const {
        QStringList checks;
        for (const ZeroCheck& check : m_survey.header.zeroChecks)
            checks << SheetWords::tr("%1 at %2")
                          .arg(sheetTyped(check.shows), qs(clockTime(check.time)));
        return checks.isEmpty() ? SheetWords::tr("none") : checks.join(QStringLiteral(", "));
    }

    [[nodiscard]] std::vector<SheetFact> facts() const {
        const SurveyHeader& header = m_survey.header;
        const GaugeSetting& gauge = header.gauge;
        std::vector<SheetFact> facts;
        QStringList how;
        if (!gauge.gauge.empty()) how << qs(gauge.gauge);
        if (gauge.setSize) how << SheetWords::tr("set to %1").arg(sheetTyped(*gauge.setSize));
        if (!gauge.setOn.empty()) how << SheetWords::tr("on %1").arg(qs(gauge.setOn));
        if (!how.isEmpty()) facts.push_back({SheetWords::tr("Gauge"), how.join(", ")});
        facts.push_back({SheetWords::tr("Dial"), dialText()});
        facts.push_back({SheetWords::tr("Zero checks"), zeroText()});
        facts.push_back({SheetWords::tr("Temperatures"), temperatures()});
        facts.push_back({SheetWords::tr("Judged by"), qs(m_result.judgedBy)});
        if (header.plate)
            facts.push_back({SheetWords::tr("Torque plate"),
                             *header.plate ? SheetWords::tr("on") : SheetWords::tr("off")});
        return facts;
    }

    [[nodiscard]] QString temperatures() const {
        const GaugeSetting& gauge = m_survey.header.gauge;
        if (!m_result.temperatureCorrected)
            return SheetWords::tr("not recorded: no correction was made");
        return SheetWords::tr("master %1, block %2: brought to 20 °C")
            .arg(qs(gauge.masterTemperature->withScale()), qs(gauge.blockTemperature->withScale()));
    }

    [[nodiscard]] SheetCell cellOf(const StationResult& station) const {
        SheetCell cell;
        QStringList typed;
        for (const Reading& reading : m_survey.readings)
            if (reading.station == station.station && !reading.struck)
                typed << typedText(reading.typed);
        cell.typed = typed.join(QStringLiteral("; "));
        if (!station.odd.empty()) cell.typed += QStringLiteral(" ?");
        if (station.diameter) cell.diameter = qs(formatSize(*station.diameter, m_units));
        if (typed.isEmpty())
            cell.typed = !station.wall   ? SheetWords::tr("no wall")
                         : station.asked ? SheetWords::tr("not read")
                                         : QString();
        return cell;
    }

    void addCards(std::vector<SheetCard>& cards, const BoreResult& bore) const {
        std::vector<std::string> axes;
        for (const Axis& axis : m_workbook.block.axes)
            if (std::ranges::any_of(bore.stations, [&](const StationResult& station) {
                    return station.station.axis == axis.id;
                }))
                axes.push_back(axis.id);
        std::vector<Length> depths;
        for (const StationResult& station : bore.stations)
            if (depths.empty() || depths.back() != station.station.depth)
                depths.push_back(station.station.depth);
        for (std::size_t a = 0; a < axes.size(); a += mostAxes)
            for (std::size_t d = 0; d < depths.size(); d += mostRows)
                cards.push_back(cardOf(bore,
                                       {axes.begin() + static_cast<std::ptrdiff_t>(a),
                                        axes.begin() + static_cast<std::ptrdiff_t>(
                                                           std::min(a + mostAxes, axes.size()))},
                                       {depths.begin() + static_cast<std::ptrdiff_t>(d),
                                        depths.begin() + static_cast<std::ptrdiff_t>(std::min(
                                                             d + mostRows, depths.size()))}));
    }

    [[nodiscard]] SheetCard cardOf(const BoreResult& bore, const std::vector<std::string>& axes,
                                   const std::vector<Length>& depths) const {
        SheetCard card;
        card.title = SheetWords::tr("Bore %1").arg(bore.bore);
        for (const std::string& axis : axes)
            card.axes << qs(axis);
        for (const Length depth : depths) {
            std::vector<SheetCell> cells;
            for (const std::string& axis : axes) {
                const StationResult* station = findStation(bore, depth, axis);
                cells.push_back(station != nullptr ? cellOf(*station)
                                                   : cellWithout(bore, depth, axis));
            }
            card.rows.emplace_back(qs(formatDepth(depth, m_units)), std::move(cells));
        }
        return card;
    }

    // A station nobody asked for and nobody read.
    [[nodiscard]] SheetCell cellWithout(const BoreResult& bore, Length depth,
                                        const std::string& axis) const {
        const Bore* place = findBore(m_workbook.block, bore.bore);
        if (place != nullptr && !hasWall(*place, depth, axis))
            return {SheetWords::tr("no wall"), {}};
        return {};
    }

    void addRemarks(QStringList& remarks) const {
        for (const BoreResult& bore : m_result.bores)
            for (const StationResult& station : bore.stations) {
                for (const std::string& odd : station.odd)
                    remarks << SheetWords::tr("? %1: %2")
                                   .arg(qs(describe(station.station, m_workbook.block)), qs(odd));
                if (station.refused)
                    remarks << SheetWords::tr("%1: %2").arg(
                        qs(describe(station.station, m_workbook.block)), qs(*station.refused));
            }
        for (const Reading& reading : m_survey.readings)
            if (reading.angleOffAxis)
                remarks << SheetWords::tr("%1: read %2° off the axis")
                               .arg(qs(describe(reading.station, m_workbook.block)))
                               .arg(*reading.angleOffAxis);
        addStrikes(remarks);
        if (!m_survey.header.notes.empty())
            remarks << SheetWords::tr("Notes: %1").arg(qs(m_survey.header.notes));
    }

    // "14 March 2026, A. Example".
    [[nodiscard]] static std::string whoAndWhen(const Strike& strike) {
        return dateInWords(strike.time) + (strike.who.empty() ? "" : ", " + strike.who);
    }

    // Readings struck out of one bore for one reason, on one day by one man, share a line.
    void addStrikes(QStringList& remarks) const {
        std::map<std::tuple<int, std::string, std::string>, QStringList> strikes;
        for (const Reading& reading : m_survey.readings)
            if (reading.struck)
                strikes[{reading.station.bore, reading.struck->reason,
                         whoAndWhen(*reading.struck)}]
                    << SheetWords::tr("%1 %2: %3")
                           .arg(qs(formatDepth(reading.station.depth, m_units)),
                                qs(reading.station.axis), sheetTyped(reading.typed));
        for (const auto& [where, readings] : strikes) {
            const auto& [bore, reason, by] = where;
            remarks << SheetWords::tr("Struck out, bore %1, \"%2\": %3 (%4).")
                           .arg(bore)
                           .arg(reason.empty() ? SheetWords::tr("no reason given") : qs(reason),
                                readings.join(QStringLiteral(", ")), qs(by));
        }
    }

    const Workbook& m_workbook;
    const Survey& m_survey;
    const SurveyResult& m_result;
    const DisplayUnits& m_units;
    Unit m_unit = Unit::thou;
};

} // namespace

SheetSurvey sheetSurvey(const Workbook& workbook, const Survey& survey, const SurveyResult& result,
                        const DisplayUnits& units) {
    return SurveyWriter(workbook, survey, result, units).write();
}

} // namespace borewright
