// SPDX-License-Identifier: GPL-3.0-or-later
// The block from above: bores with their numbers and one word each, the front marked, the chosen
// bore accented. With `numbersOnly` it serves for numbering a block.
#pragma once

#include "app/pictures/picture_style.h"
#include "core/results/results.h"

#include <QImage>
#include <QPainter>

namespace borewright {

struct PlanBore {
    int number = 0;
    PlanPlace place;
    QString word;
    QString why;
    Verdict verdict = Verdict::notJudged;
};

struct PlanData {
    Arrangement arrangement = Arrangement::inLine;
    std::vector<PlanBore> bores; // in the order of the plan
    int chosen = 0;
    bool numbersOnly = false;
    QString axisA; // labels of the first two axes
    QString axisB;
};

PlanData planData(const Workbook& workbook, const Results& results, const std::string& survey,
                  int chosen);
// Numbers alone, from a block that may not be part of a workbook yet.
PlanData planOfNumbers(const Block& block, int chosen);

void paintPlan(QPainter& painter, const QRectF& rect, const PlanData& data,
               const PictureStyle& style);
// Engine number of the bore at `position`, or 0.
int planHit(const QRectF& rect, const PlanData& data, const PictureStyle& style,
            const QPointF& position);
// Number of the neighbour to the left, right, front or back of a bore as drawn; itself at an edge.
int planNeighbour(const QRectF& rect, const PlanData& data, const PictureStyle& style, int number,
                  Qt::Key key);
QString describePlan(const PlanData& data);
QImage renderPlan(const QSize& size, const PlanData& data, const PictureStyle& style,
                  double pixelRatio = 1);

} // namespace borewright
