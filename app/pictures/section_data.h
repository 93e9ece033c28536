// SPDX-License-Identifier: GPL-3.0-or-later
// What the section of a bore shows, made from the core's results; nothing is measured here.
#pragma once

#include "core/results/results.h"

#include <QString>
#include <QStringList>

#include <optional>
#include <vector>

namespace borewright {

// Deviations of the diameter from the base, in µm.
struct DeviationRange {
    double lowest_um = 0;
    double highest_um = 0;
};

struct SectionOptions {
    enum class Mode {
        trueSize,  // against finish or standard size, with the limits
        aboutMean, // each survey about its own mean, so that oversize does not hide its shape
    };
    Mode mode = Mode::trueSize;
    bool earlier = true;      // earlier surveys of the bore faint behind
    bool values = true;       // a column of figures between the walls, where there is room
    bool bandLimits = true;   // the size limits as a band on both walls
    bool title = true;        // bore and survey above
    bool captions = true;     // magnification and the key of the lines below
    double magnification = 0; // of the walls; 0 = the largest round number that fits
    // For bores side by side on one scale: what all have room for, and the deepest of them.
    std::optional<DeviationRange> range;
    double deepest_mm = 0;
    std::optional<Station> chosen; // accented
};

// A reading as a point on the wall.
struct SectionReading {
    Station station;
    double depth_mm = 0;
    double deviation_um = 0; // of the diameter from the base; plus = larger
    QString text;            // the reading in a sentence
    bool odd = false;
    bool judged = true;
};

struct SectionProfile {
    QString axis;  // id
    QString label; // "along the crankshaft"
    int axisIndex = 0;
    QString survey;                     // its name
    std::vector<SectionReading> points; // by depth
};

struct SectionPorts {
    double from_mm = 0;
    double to_mm = 0;
    std::vector<int> axes; // places in the order of the block
};

struct SectionZone {
    QString name;
    double from_mm = 0;
    double to_mm = 0;
};

struct SectionNoWall {
    double depth_mm = 0;
    int axisIndex = 0;
};

// A line of the column of figures.
struct SectionRow {
    double depth_mm = 0;
    QString depth;
    QStringList values; // one an axis; empty where nothing was read, "no wall" as an en dash
    bool judged = true;
};

struct SectionData {
    int bore = 0; // 0: there is no bore to draw
    QString title;
    QString word;
    Verdict verdict = Verdict::notJudged;
    double depth_mm = 100;
    QString openEnd;       // its name
    bool closedEnd = true; // no room for a stone beyond: drawn shut
    QString base;          // what deviation 0 is: "standard 3.4200 in"
    std::vector<SectionProfile> now;
    std::vector<SectionProfile> earlier; // oldest first
    QStringList earlierNames;
    std::optional<double> lower_um; // size limits, as deviations from the base
    std::optional<double> upper_um;
    std::optional<double> finish_um;
    QString finish; // "finish 3.4400 in"
    std::vector<SectionPorts> ports;
    std::vector<SectionZone> zones;
    std::vector<SectionNoWall> noWall;
    std::vector<SectionRow> rows;
    QStringList columnHeads; // depth unit, then the axes
    QString valuesHead;      // "to go, thou"
    QStringList axisLabels;  // every axis of the block, for the key
    QString friendly;        // said inside an empty bore
    SectionOptions options;

    [[nodiscard]] bool empty() const { return now.empty(); }
};

SectionData sectionData(const Workbook& workbook, const Results& results, const std::string& survey,
                        int bore, const DisplayUnits& units, const SectionOptions& options);

// The picture in words, for those who do not see it.
QString describeSection(const SectionData& data);

} // namespace borewright
