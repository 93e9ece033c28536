// SPDX-License-Identifier: GPL-3.0-or-later
// The drawing of a set-up of the hone: one bore cut open, open end at the top. At the left the
// stone on its carrier to scale and where it is stroked; at the right the wall magnified: what is
// to go now, what is expected afterwards, size, limits, and where to measure.
#pragma once

#include "app/pictures/picture_style.h"
#include "core/results/hone_outlook.h"

#include <QImage>
#include <QPainter>
#include <QStringList>

#include <optional>
#include <vector>

namespace borewright {

// A set-up of the user's own in place of the proposed one.
struct HoneOwnDraft {
    std::string stone; // id
    std::vector<StrokeWindow> windows;
    std::optional<OwnSetUp> expected; // nothing = not reckoned yet, or refused
    std::string refused;              // why it cannot be done
};

// Depths in mm from the open end; sizes in µm of the diameter beyond the finish size.
struct HoneStoneDrawn {
    QString name;
    double lower_mm = 0;   // lower end of the abrasive, at its lower reversal
    double length_mm = 0;  // of the abrasive
    double below_mm = 0;   // guide or dead length below it
    double highest_mm = 0; // how far its lower end may go
    double lowest_mm = 0;
};
struct HoneBar {
    double from_mm = 0;
    double to_mm = 0;
    QString strokes; // "24 strokes"
    QString seconds; // "24 s"; may be empty
    QString depths;  // "3.3–4.04 in"
    QString hold;    // "hold 3 s"; empty = none
};
struct HoneStationMark {
    double depth_mm = 0;
    QString depth;
    QString axis;
    int axisIndex = 0;
    int order = 1; // as listed in the outlook
};
struct HoneReadAt {
    double depth_mm = 0;
    int axisIndex = 0;
    double found_um = 0;
    bool odd = false;
};
struct HonePorts {
    double from_mm = 0;
    double to_mm = 0;
};

struct HoneSectionData {
    int bore = 0; // 0: there is no bore to draw
    QString title;
    QString word;                         // "stop", "waits for another stone", …
    Verdict verdict = Verdict::notJudged; // the mark beside it
    HoneOutcome outcome = HoneOutcome::notMeasured;
    double depth_mm = 100;
    QString openEnd;
    bool closedEnd = true;
    std::vector<HonePorts> ports;
    std::optional<HoneStoneDrawn> stone;
    std::vector<HoneBar> windows;
    bool own = false; // they are the user's own
    HoneCurves curves;
    std::vector<HoneReadAt> read;             // the last check
    std::vector<HoneStationMark> measure;     // afterwards
    std::optional<double> lower_um, upper_um; // size limits
    std::optional<double> aim_um;             // straight within this, largest less smallest
    QString finish;                           // "finish 3.4400 in"
    QString chance;                           // of going over, in words
    bool forbidden = false;                   // more of it than is ever proposed
    bool modelOnly = false;
    QString friendly; // said where there is no profile
    DisplayUnits units;

    [[nodiscard]] bool empty() const { return curves.now.mean_um.empty(); }
    [[nodiscard]] bool hasThen() const { return !curves.then.mean_um.empty(); }
};

// The proposed set-up, or `own` in its place.
HoneSectionData honeSectionData(const Workbook& workbook, const BoreOutlook& outlook,
                                const DisplayUnits& units,
                                const std::optional<HoneOwnDraft>& own = {});
// A bore of which nothing is reckoned (yet), with the words why.
HoneSectionData honeSectionRefused(const Workbook& workbook, int bore, const QString& why);

void paintHoneSection(QPainter& painter, const QRectF& rect, const HoneSectionData& data,
                      const PictureStyle& style);
QImage renderHoneSection(const QSize& size, const HoneSectionData& data, const PictureStyle& style,
                         double pixelRatio = 1);
// The picture in words, for those who do not see it.
QString describeHoneSection(const HoneSectionData& data);
// What is written on a window, for a data being dragged.
void nameHoneBar(HoneBar& bar, const DisplayUnits& units);

} // namespace borewright
