// SPDX-License-Identifier: GPL-3.0-or-later
// Where everything of the size bars lies. Only for its painter and tests.
#pragma once

#include "app/pictures/size_bars.h"

namespace borewright {

// The name of a size above its line, and where that line begins.
struct SizeBarsLabel {
    std::size_t line = 0;
    QRectF room;
    double foot = 0; // x of the line
};

struct SizeBarsLayout {
    double low = 0; // sizes at the left and right edge of the plot
    double high = 1;
    QRectF plot; // the rows, between the names and the words
    double row = 0;
    bool twoLines = false; // a row holds two lines of text
    double names = 0;      // widths
    double words = 0;
    std::vector<SizeBarsLabel> labels; // by line from the left; those without room are left out
    bool sizesShown = true;            // finish sizes below the names
    QRectF axis;
    QRectF key;

    [[nodiscard]] double x(double size) const;
    [[nodiscard]] QRectF rowRect(std::size_t bore, const QRectF& whole) const;
};

SizeBarsLayout layOutSizeBars(const QRectF& rect, const SizeBarsData& data,
                              const PictureStyle& style);
// Signs of the key with their words.
enum class SizeBarsSign { found, cleansUp, cleansUpAround, otherWay, beyond };
std::vector<std::pair<SizeBarsSign, QString>> sizeBarsKey(const SizeBarsData& data);
// Distance between two marks of the axis: 1, 2 or 5 times a power of ten, `least` apart.
double sizeBarsStep(double least);
// Centres moved no further than needed for texts of these widths to stand `gap` apart between
// `left` and `right`. Empty where they do not fit.
std::vector<double> spread(const std::vector<double>& centres, const std::vector<double>& widths,
                           double gap, double left, double right);

} // namespace borewright
