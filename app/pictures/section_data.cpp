// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pictures/section_data.h"

#include "app/pictures/reading_words.h"

#include <QCoreApplication>

#include <algorithm>

namespace borewright {
namespace {

double um(Length length) {
    return length.in(Unit::micrometre);
}

double mm(Length length) {
    return length.in(Unit::millimetre);
}

QString tr(const char* text) {
    return QCoreApplication::translate("Section", text);
}

// Builds the data of one section.
class SectionBuilder {
public:
    SectionBuilder(const Workbook& workbook, const Results& results, const DisplayUnits& units,
                   const SectionOptions& options)
        : m_workbook(workbook)
        , m_results(results)
        , m_units(units) {
        m_data.options = options;
    }

    SectionData build(const std::string& survey, int number) {
        m_bore = findBore(m_workbook.block, number);
        if (m_bore == nullptr) {
            m_data.friendly = tr("No bore is chosen.");
            return std::move(m_data);
        }
        const Survey* recorded = findSurvey(m_workbook, survey);
        const SurveyResult* judged = findResult(m_results, survey);
        const BoreResult* result = judged == nullptr ? nullptr : findBoreResult(*judged, number);
        describeBore(recorded, result);
        addMap();
        if (result != nullptr && recorded != nullptr) {
            m_base = baseOf(*result, recorded->header);
            addLimits(*recorded);
            m_data.now = profilesOf(*result, m_base, qs(recorded->header.name));
            addRows(*result);
            if (m_data.options.earlier) addEarlier(survey, number, recorded->header.plate);
        }
        if (m_data.empty()) m_data.friendly = tr("No readings yet.");
        return std::move(m_data);
    }

private:
    void describeBore(const Survey* survey, const BoreResult* result) {
        m_data.bore = m_bore->number;
        m_data.title = tr("Bore %1").arg(m_bore->number);
        if (survey != nullptr && !survey->header.name.empty())
            m_data.title += QStringLiteral(" · ") + qs(survey->header.name);
        m_data.openEnd = m_bore->openEnd.empty() ? tr("open end") : qs(m_bore->openEnd);
        m_data.depth_mm = drawnDepth(*m_bore);
        m_data.closedEnd = !m_bore->roomAtClosedEnd || m_bore->roomAtClosedEnd->value() <= Length();
        for (const Axis& axis : m_workbook.block.axes)
            m_data.axisLabels << qs(axis.id) + QStringLiteral(" ") + qs(axis.label);
        if (result != nullptr) {
            m_data.word = qs(result->word);
            m_data.verdict = result->verdict;
        }
    }

    // The depth of the bore, else a little below the lowest level, so that something can be drawn.
    static double drawnDepth(const Bore& bore) {
        if (bore.depth && bore.depth->value() > Length()) return mm(bore.depth->value());
        double lowest = 0;
        for (const Level& level : bore.levels)
            lowest = std::max(lowest, mm(level.depth.value()));
        return lowest > 0 ? lowest * 1.12 : 100;
    }

    void addMap() {
        for (const PortBand& band : m_bore->map.ports) {
            SectionPorts ports{mm(band.from.value()), mm(band.to.value()), {}};
            for (std::size_t i = 0; i < m_workbook.block.axes.size(); ++i)
                if (std::ranges::find(band.axes, m_workbook.block.axes[i].id) != band.axes.end())
                    ports.axes.push_back(static_cast<int>(i));
            m_data.ports.push_back(ports);
        }
        addZones();
        for (const Level& level : m_bore->levels)
            for (std::size_t i = 0; i < m_workbook.block.axes.size(); ++i)
                if (!hasWall(*m_bore, level.depth.value(), m_workbook.block.axes[i].id))
                    m_data.noWall.push_back({mm(level.depth.value()), static_cast<int>(i)});
    }

    // Stretches of equal zone, found between the depths at which a zone may begin.
    void addZones() {
        std::vector<Length> edges{Length()};
        const auto addEdge = [&](const std::optional<TypedLength>& edge) {
            if (edge && mm(edge->value()) < m_data.depth_mm) edges.push_back(edge->value());
        };
        addEdge(m_bore->map.topRingLine);
        addEdge(m_bore->map.lowestRingLine);
        for (const PortBand& band : m_bore->map.ports) {
            addEdge(band.from);
            addEdge(band.to);
        }
        edges.push_back(Length::nearest(m_data.depth_mm, Unit::millimetre));
        std::ranges::sort(edges);
        for (std::size_t i = 0; i + 1 < edges.size(); ++i) {
            if (edges[i] == edges[i + 1]) continue;
            const Length middle =
                Length::fromPicometres((edges[i].picometres() + edges[i + 1].picometres()) / 2);
            addZone(zoneWord(zoneAt(*m_bore, middle)), mm(edges[i]), mm(edges[i + 1]));
        }
    }

    void addZone(const QString& name, double from_mm, double to_mm) {
        if (name.isEmpty()) return;
        if (!m_data.zones.empty() && m_data.zones.back().name == name)
            m_data.zones.back().to_mm = to_mm;
        else
            m_data.zones.push_back({name, from_mm, to_mm});
    }

    // What deviation 0 is: finish size, standard size, or the mean of what was read.
    Length baseOf(const BoreResult& result, const SurveyHeader& header) {
        if (m_data.options.mode == SectionOptions::Mode::trueSize) {
            if (result.finishSize) {
                m_data.base = tr("finish %1").arg(qs(sizeWithUnit(*result.finishSize, m_units)));
                m_data.finish = m_data.base;
                m_data.finish_um = 0;
                return *result.finishSize;
            }
            if (m_bore->standardSize && purposeOf(header.kind) == LimitPurpose::worn) {
                const Length standard = m_bore->standardSize->value();
                m_data.base = tr("standard %1").arg(qs(sizeWithUnit(standard, m_units)));
                return standard;
            }
        }
        const Length middle = meanOf(result);
        m_data.base = tr("mean %1").arg(qs(sizeWithUnit(middle, m_units)));
        return middle;
    }

    static Length meanOf(const BoreResult& result) {
        if (result.form) return result.form->mean;
        std::vector<Length> all;
        for (const StationResult& station : result.stations)
            if (station.diameter) all.push_back(*station.diameter);
        return all.empty() ? Length() : mean(all);
    }

    void addLimits(const Survey& survey) {
        if (!m_data.options.bandLimits || m_data.options.mode == SectionOptions::Mode::aboutMean)
            return;
        const auto set = judgingSet(m_workbook, survey.header);
        if (!set) return;
        const Limits& limits = limitsFor(**set, m_bore->number);
        if (limits.sizeLower) m_data.lower_um = um(limits.sizeLower->value() - m_base);
        if (limits.sizeUpper) m_data.upper_um = um(limits.sizeUpper->value() - m_base);
    }

    std::vector<SectionProfile> profilesOf(const BoreResult& result, Length base,
                                           const QString& survey) const {
        std::vector<SectionProfile> profiles;
        const std::vector<Axis>& axes = m_workbook.block.axes;
        for (std::size_t i = 0; i < axes.size(); ++i) {
            SectionProfile profile{
                qs(axes[i].id), qs(axes[i].label), static_cast<int>(i), survey, {}};
            for (const StationResult& station : result.stations)
                if (station.station.axis == axes[i].id && station.diameter)
                    profile.points.push_back({station.station, mm(station.station.depth),
                                              um(*station.diameter - base),
                                              readingInWords(station, m_workbook.block, m_units),
                                              !station.odd.empty(), station.judged});
            if (!profile.points.empty()) profiles.push_back(std::move(profile));
        }
        return profiles;
    }

    void addEarlier(const std::string& survey, int number, const std::optional<bool>& plate) {
        for (std::size_t i = 0; i < m_workbook.surveys.size(); ++i) {
            const SurveyHeader& header = m_workbook.surveys[i].header;
            if (header.id == survey) break;
            // With and without the torque plate a bore has two shapes: never one over the other.
            if (header.plate != plate) continue;
            const BoreResult* result = findBoreResult(m_results.surveys[i], number);
            if (result == nullptr) continue;
            const bool aboutMean = m_data.options.mode == SectionOptions::Mode::aboutMean;
            auto profiles =
                profilesOf(*result, aboutMean ? meanOf(*result) : m_base, qs(header.name));
            if (profiles.empty()) continue;
            m_data.earlierNames << qs(header.name);
            std::ranges::move(profiles, std::back_inserter(m_data.earlier));
        }
    }

    void addRows(const BoreResult& result) {
        const bool toGo = m_data.finish_um.has_value();
        const bool aboutMean = m_data.options.mode == SectionOptions::Mode::aboutMean;
        const bool small = toGo || aboutMean;
        m_data.valuesHead = toGo        ? tr("to go, %1").arg(unitSymbol(m_units.small))
                            : aboutMean ? tr("from the mean, %1").arg(unitSymbol(m_units.small))
                                        : tr("size, %1").arg(unitSymbol(m_units.size));
        m_data.columnHeads << unitSymbol(m_units.size);
        for (const Axis& axis : m_workbook.block.axes)
            m_data.columnHeads << qs(axis.id);
        for (const StationResult& station : result.stations) {
            const double depth = mm(station.station.depth);
            if (m_data.rows.empty() || m_data.rows.back().depth_mm != depth) {
                m_data.rows.push_back(
                    {depth, qs(formatDepth(station.station.depth, m_units)), {}, station.judged});
                for (std::size_t i = 0; i < m_workbook.block.axes.size(); ++i)
                    m_data.rows.back().values << QString();
            }
            const auto column = axisPlace(station.station.axis);
            if (column < 0) continue;
            QString& value = m_data.rows.back().values[column];
            if (!station.wall) value = QStringLiteral("–");
            if (!station.diameter) continue;
            if (!small)
                value = qs(formatSize(*station.diameter, m_units));
            else if (toGo && station.toGo)
                value = qs(formatSmall(*station.toGo, m_units));
            else
                value = qs(formatSmall(*station.diameter - m_base, m_units, Sign::always));
        }
        addNoWallRows();
    }

    // A station without wall was perhaps not asked for: its dash stands in the row all the same.
    void addNoWallRows() {
        for (const SectionNoWall& place : m_data.noWall)
            for (SectionRow& row : m_data.rows)
                if (row.depth_mm == place.depth_mm && row.values[place.axisIndex].isEmpty())
                    row.values[place.axisIndex] = QStringLiteral("–");
    }

    [[nodiscard]] int axisPlace(const std::string& id) const {
        const auto& axes = m_workbook.block.axes;
        const auto found = std::ranges::find(axes, id, &Axis::id);
        return found == axes.end() ? -1 : static_cast<int>(found - axes.begin());
    }

    const Workbook& m_workbook;
    const Results& m_results;
    const DisplayUnits& m_units;
    const Bore* m_bore = nullptr;
    Length m_base;
    SectionData m_data;
};

} // namespace

SectionData sectionData(const Workbook& workbook, const Results& results, const std::string& survey,
                        int bore, const DisplayUnits& units, const SectionOptions& options) {
    return SectionBuilder(workbook, results, units, options).build(survey, bore);
}

} // namespace borewright
