// SPDX-License-Identifier: GPL-3.0-or-later
// Qt's Fusion style with what a hand at the bench needs besides: a drop-down or tick box that has
// the focus shows it as plainly as a field does, and an empty tick box is seen on a dark ground.
#pragma once

#include <QProxyStyle>

namespace borewright {

class ThemeStyle : public QProxyStyle {
    Q_OBJECT
public:
    ThemeStyle();
    void drawComplexControl(ComplexControl control, const QStyleOptionComplex* option,
                            QPainter* painter, const QWidget* widget) const override;
    void drawControl(ControlElement element, const QStyleOption* option, QPainter* painter,
                     const QWidget* widget) const override;
    void drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                       const QWidget* widget) const override;
};

} // namespace borewright
