// SPDX-License-Identifier: GPL-3.0-or-later
// The parts of the section's painter; used by the pictures alone.
#pragma once

#include "app/pictures/picture_key.h"
#include "app/pictures/picture_text.h"
#include "app/pictures/section_layout.h"

namespace borewright {

QFont sectionTitleFont(const PictureStyle& style);
QFont sectionFont(const PictureStyle& style);
QFont sectionSmallFont(const PictureStyle& style);

// Lines of the title: the word stands beside it where there is room, else below.
int titleLines(const SectionData& data, double width, const PictureStyle& style);
// Width of the figures between the walls; 0 where there is nothing to show.
double sectionValuesWidth(const SectionData& data, const PictureStyle& style);
double sectionColumnWidth(const SectionData& data, int column, const PictureStyle& style);
std::vector<KeyItem> sectionKey(const SectionData& data);

// Whether an earlier survey's profile lies in the strip; drawn whole or not at all.
bool inStrip(const SectionLayout& layout, const SectionProfile& profile);
// A deviation kept inside the strip.
double kept(const SectionLayout& layout, double deviation_um);

// Where the metal begins: depth and the largest of all axes, from the open end to the closed.
struct MetalEdge {
    double depth_mm = 0;
    double deviation_um = 0;
};
std::vector<MetalEdge> metalEdge(const SectionData& data);

void paintCasting(QPainter& painter, const SectionLayout& layout, const SectionData& data,
                  const PictureStyle& style);
void paintLimits(QPainter& painter, const SectionLayout& layout, const SectionData& data,
                 const PictureStyle& style);
void paintProfiles(QPainter& painter, const SectionLayout& layout, const SectionData& data,
                   const PictureStyle& style);
void paintSectionText(QPainter& painter, const SectionLayout& layout, const SectionData& data,
                      const PictureStyle& style);

} // namespace borewright
