// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/theme_style.h"

#include <QPainter>
#include <QStyleFactory>
#include <QStyleOption>

namespace borewright {
namespace {

constexpr qreal ringWidth = 2, ringRound = 2.5;

void outline(QPainter& painter, const QRectF& around, const QColor& colour, qreal width) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(colour, width));
    painter.setBrush(Qt::NoBrush);
    painter.drawRoundedRect(around.adjusted(width / 2, width / 2, -width / 2, -width / 2),
                            ringRound, ringRound);
    painter.restore();
}

} // namespace

ThemeStyle::ThemeStyle()
    : QProxyStyle(QStyleFactory::create("Fusion")) {}

void ThemeStyle::drawComplexControl(ComplexControl control, const QStyleOptionComplex* option,
                                    QPainter* painter, const QWidget* widget) const {
    QProxyStyle::drawComplexControl(control, option, painter, widget);
    if (control == CC_ComboBox && (option->state & State_HasFocus) != 0)
        outline(*painter, option->rect, option->palette.color(QPalette::Highlight), ringWidth);
}

void ThemeStyle::drawControl(ControlElement element, const QStyleOption* option, QPainter* painter,
                             const QWidget* widget) const {
    QProxyStyle::drawControl(element, option, painter, widget);
    if ((element == CE_CheckBox || element == CE_RadioButton) &&
        (option->state & State_HasFocus) != 0)
        outline(*painter, option->rect, option->palette.color(QPalette::Highlight), 1);
}

void ThemeStyle::drawPrimitive(PrimitiveElement element, const QStyleOption* option,
                               QPainter* painter, const QWidget* widget) const {
    QProxyStyle::drawPrimitive(element, option, painter, widget);
    if (element == PE_IndicatorCheckBox || element == PE_IndicatorItemViewItemCheck)
        outline(*painter, option->rect, option->palette.color(QPalette::PlaceholderText), 1);
}

} // namespace borewright
