// SPDX-License-Identifier: GPL-3.0-or-later
// Where things of the strip lie; used by the pictures alone.
#pragma once

#include "app/pictures/strip.h"

namespace borewright {

struct StripPlace {
    QPointF position;
    const StripPoint* point = nullptr;
};

// Where a reading stands along the plot: bore 0 takes −0.5 … 0.5.
double stripPlaceAlong(std::size_t bore, std::size_t axis, std::size_t axes, std::size_t point,
                       std::size_t points);
// Every reading where paintStrip draws it.
std::vector<StripPlace> stripPlaces(const QRectF& rect, const StripData& data,
                                    const PictureStyle& style);
// Number of the bore at `position`, or 0.
int stripHit(const QRectF& rect, const StripData& data, const PictureStyle& style,
             const QPointF& position);

} // namespace borewright
