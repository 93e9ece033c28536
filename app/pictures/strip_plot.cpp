// SPDX-License-Identifier: GPL-3.0-or-later
// The strip as a plot: bores along, deviation up, limits as a band behind each bore.
#include "app/pictures/picture_key.h"
#include "app/pictures/strip_parts.h"

#include <qcustomplot.h>

#include <algorithm>

namespace borewright {
namespace {

// Along the axis a bore takes one unit; its axes stand side by side, each from the open end (left)
// to the closed end (right).
double placeOf(std::size_t bore, std::size_t axis, std::size_t axes, double part) {
    const double share = 0.72 / static_cast<double>(axes);
    return static_cast<double>(bore) - 0.36 +
           share * (static_cast<double>(axis) + 0.14 + 0.72 * part);
}

void addBand(QCustomPlot& plot, std::size_t place, const StripBore& bore, const QCPRange& shown,
             const PictureStyle& style) {
    if (!bore.lower && !bore.upper) return;
    auto* band = new QCPItemRect(&plot);
    band->setPen(Qt::NoPen);
    band->setBrush(style.limitBand);
    band->setLayer("background");
    const auto x = static_cast<double>(place);
    band->topLeft->setCoords(x - 0.44, bore.upper.value_or(shown.upper));
    band->bottomRight->setCoords(x + 0.44, bore.lower.value_or(shown.lower));
}

QCPScatterStyle scatterOf(std::size_t axis, const QColor& colour, bool judged, double size,
                          const PictureStyle& style) {
    const auto shape = axis == 1 ? QCPScatterStyle::ssSquare : QCPScatterStyle::ssDisc;
    return {judged || axis == 1 ? shape : QCPScatterStyle::ssCircle,
            QPen(colour, 1.2 * style.unit()), QBrush(judged ? colour : style.background), size};
}

void addLine(QCustomPlot& plot, std::size_t bore, std::size_t axis, const StripBore& data,
             const PictureStyle& style) {
    const double u = style.unit();
    const auto& points = data.axes[axis];
    const int index = static_cast<int>(axis);
    auto* line = plot.addGraph();
    line->setPen(axisPen(style, index, 1.1 * u));
    auto* judged = plot.addGraph();
    auto* witness = plot.addGraph();
    auto* odd = plot.addGraph();
    for (auto* graph : {judged, witness, odd})
        graph->setLineStyle(QCPGraph::lsNone);
    const QColor colour = style.axisColour(index);
    judged->setScatterStyle(scatterOf(axis, colour, true, 4.6 * u, style));
    witness->setScatterStyle(scatterOf(axis, colour, false, 4.6 * u, style));
    odd->setScatterStyle(
        {QCPScatterStyle::ssTriangle, QPen(style.tooClose, 1.4 * u), Qt::NoBrush, 13 * u});
    const auto last = static_cast<double>(std::max<std::size_t>(2, points.size()) - 1);
    for (std::size_t i = 0; i < points.size(); ++i) {
        const double x = placeOf(bore, axis, data.axes.size(), static_cast<double>(i) / last);
        line->addData(x, points[i].value);
        (points[i].judged ? judged : witness)->addData(x, points[i].value);
        if (points[i].odd) odd->addData(x, points[i].value);
    }
}

QCPRange shownRange(const StripData& data) {
    double least = 0;
    double most = 0;
    for (const StripBore& bore : data.bores) {
        for (const auto& points : bore.axes)
            for (const StripPoint& point : points) {
                least = std::min(least, point.value);
                most = std::max(most, point.value);
            }
        for (const auto& edge : {bore.lower, bore.upper})
            if (edge) {
                least = std::min(least, *edge);
                most = std::max(most, *edge);
            }
    }
    const double air = std::max(0.08 * (most - least), 1e-3);
    return {least - air, most + air};
}

void styleAxes(QCustomPlot& plot, const StripData& data, const PictureStyle& style) {
    const double u = style.unit();
    plot.setBackground(Qt::NoBrush);
    plot.axisRect()->setBackground(Qt::NoBrush);
    plot.xAxis->setTickLabels(false); // number, mark and word are written below by paintStrip
    plot.xAxis->setTicks(false);
    plot.xAxis->setBasePen(Qt::NoPen);
    plot.xAxis->grid()->setVisible(false);
    plot.xAxis->setRange(-0.5, static_cast<double>(data.bores.size()) - 0.5);
    plot.yAxis->setRange(shownRange(data));
    plot.yAxis->setTickLabelFont(style.sized(0.82));
    plot.yAxis->setTickLabelColor(style.faintInk);
    plot.yAxis->setBasePen(Qt::NoPen);
    plot.yAxis->setTickPen(Qt::NoPen);
    plot.yAxis->setSubTicks(false);
    plot.yAxis->setNumberFormat("g"); // 2.5 is never shown as 3
    plot.yAxis->setNumberPrecision(5);
    plot.yAxis->ticker()->setTickCount(5);
    plot.yAxis->grid()->setPen(QPen(style.grid, 0.8 * u));
    plot.yAxis->grid()->setZeroLinePen(
        QPen(style.finishLine, 1.1 * u, data.base.isEmpty() ? Qt::SolidLine : Qt::DashDotLine));
}

} // namespace

double stripPlaceAlong(std::size_t bore, std::size_t axis, std::size_t axes, std::size_t point,
                       std::size_t points) {
    const auto last = static_cast<double>(std::max<std::size_t>(2, points) - 1);
    return placeOf(bore, axis, axes, static_cast<double>(point) / last);
}

void setUpStrip(QCustomPlot& plot, const StripData& data, const PictureStyle& style) {
    plot.clearPlottables();
    plot.clearItems();
    styleAxes(plot, data, style);
    for (std::size_t i = 0; i < data.bores.size(); ++i) {
        addBand(plot, i, data.bores[i], plot.yAxis->range(), style);
        for (std::size_t axis = 0; axis < data.bores[i].axes.size(); ++axis)
            if (!data.bores[i].axes[axis].empty()) addLine(plot, i, axis, data.bores[i], style);
    }
}

} // namespace borewright
