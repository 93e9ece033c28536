// SPDX-License-Identifier: GPL-3.0-or-later
// All bores' sections side by side on one scale, a number and a word each.
#pragma once

#include "app/pictures/section.h"

namespace borewright {

struct BlockSectionsOptions {
    SectionOptions::Mode mode = SectionOptions::Mode::trueSize;
    bool earlier = false;
    bool words = true;   // the verdict under each number
    bool caption = true; // magnification and the key of the lines, once for all
    int chosen = 0;      // engine number; its place is accented
};

struct BlockSectionsData {
    std::vector<SectionData> bores; // by number
    BlockSectionsOptions options;
    QStringList earlierNames;
};

BlockSectionsData blockSectionsData(const Workbook& workbook, const Results& results,
                                    const std::string& survey, const DisplayUnits& units,
                                    const BlockSectionsOptions& options);
// As the sheet shows it: each bore about its own mean, its last survey dark, as found faint.
BlockSectionsData storySectionsData(const Workbook& workbook, const Results& results,
                                    const std::optional<std::string>& nowSurvey,
                                    const DisplayUnits& units);

void paintBlockSections(QPainter& painter, const QRectF& rect, const BlockSectionsData& data,
                        const PictureStyle& style);
// Number of the bore drawn at `position`, or 0.
int blockSectionsHit(const QRectF& rect, const BlockSectionsData& data, const PictureStyle& style,
                     const QPointF& position);
QString describeBlockSections(const BlockSectionsData& data);
QImage renderBlockSections(const QSize& size, const BlockSectionsData& data,
                           const PictureStyle& style, double pixelRatio = 1);

} // namespace borewright
