// SPDX-License-Identifier: GPL-3.0-or-later
// Where the doubt of a reading comes from: a bar a source, the largest first. What is a reading's
// own and what moves all readings alike are told apart by shade, hatching and word.
#pragma once

#include "app/pictures/picture_style.h"
#include "core/gauging/budget.h"
#include "core/length/format.h"

#include <QImage>
#include <QPainter>
#include <QStringList>

#include <vector>

namespace borewright {

struct BudgetBar {
    QString source;
    QString word; // "0.05 own"
    double amount = 0;
    bool shared = false;
};

struct BudgetBarsData {
    std::vector<BudgetBar> bars; // by falling amount
    QString head;                // "Standard uncertainty of one reading, by source, in thou"
    QString friendly;            // said where there is nothing to show
};

BudgetBarsData budgetBarsData(const Budget& budget, const DisplayUnits& units);
// Where the bars do not all fit, the last one stands for the smallest together (root of the sum of
// squares).
void paintBudgetBars(QPainter& painter, const QRectF& rect, const BudgetBarsData& data,
                     const PictureStyle& style);
// The height at which every bar is shown.
double budgetBarsHeight(const BudgetBarsData& data, const PictureStyle& style);
QString describeBudgetBars(const BudgetBarsData& data);
QImage renderBudgetBars(const QSize& size, const BudgetBarsData& data, const PictureStyle& style,
                        double pixelRatio = 1);

// The same as a table: heads, a row a source, and what it all comes to as sentences.
QStringList budgetHeads(const DisplayUnits& units);
std::vector<QStringList> budgetRows(const Budget& budget, const DisplayUnits& units);
QStringList budgetSums(const Budget& budget, const DisplayUnits& units);

} // namespace borewright
