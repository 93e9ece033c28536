// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/measure/dial_picture.h"

#include "core/length/format.h"

#include <cmath>
#include <numbers>

namespace borewright {
namespace {

constexpr int majorTicks = 10;
constexpr double pointerShare = 0.35; // of a turn, in the direction of a larger bore

Unit dialUnit(const Dial& dial) {
    return isInchFamily(dial.graduation.unit()) ? Unit::thou : Unit::micrometre;
}

// Angle of a share of a turn, clockwise from the top.
QPointF onCircle(const QPointF& centre, double radius, double share) {
    const double angle = share * 2.0 * std::numbers::pi;
    return centre + QPointF(radius * std::sin(angle), -radius * std::cos(angle));
}

// Figure at a major tick, in parts of the dial's unit.
QString figureAt(int tick, const Dial& dial) {
    const bool balanced = dial.face == Dial::Face::balanced;
    const int steps = balanced && tick > majorTicks / 2 ? majorTicks - tick : tick;
    const Length value =
        Length::fromPicometres(dial.oneTurn.value().picometres() * steps / majorTicks);
    return QString::fromStdString(typedFrom(value, dialUnit(dial)).text());
}

void paintFace(QPainter& painter, const QPointF& centre, double radius, const Dial& dial,
               const PictureStyle& style) {
    painter.setPen(QPen(style.ink, 1.4));
    painter.setBrush(style.background);
    painter.drawEllipse(centre, radius, radius);
    QFont font = style.font;
    font.setPixelSize(std::max(8, static_cast<int>(radius / 6.5)));
    painter.setFont(font);
    for (int tick = 0; tick < majorTicks * 5; ++tick) {
        const double share = tick / (majorTicks * 5.0);
        const bool major = tick % 5 == 0;
        painter.setPen(QPen(major ? style.ink : style.faintInk, major ? 1.4 : 0.8));
        painter.drawLine(onCircle(centre, radius * (major ? 0.86 : 0.92), share),
                         onCircle(centre, radius * 0.97, share));
        if (!major) continue;
        const QPointF at = onCircle(centre, radius * 0.68, share);
        painter.setPen(style.ink);
        painter.drawText(QRectF(at.x() - 30, at.y() - 10, 60, 20), Qt::AlignCenter,
                         figureAt(tick / 5, dial));
    }
}

} // namespace

QString dialInWords(const Dial& dial) {
    const Length larger =
        Length::nearest(dial.oneTurn.value().in(Unit::micrometre)*pointerShare, Unit::micrometre);
    const Unit unit = dialUnit(dial);
    const auto unitText = symbol(unit);
    return QCoreApplication::translate("DialPicture", "pointer here = bore larger by %1 %2")
        .arg(QString::fromStdString(typedFrom(larger, unit).text()),
             QString::fromUtf8(unitText.data(), static_cast<qsizetype>(unitText.size())));
}

void paintDial(QPainter& painter, const QRectF& area, const Dial& dial, const PictureStyle& style) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const double radius = std::min(area.width(), area.height()) / 2 - 2;
    const QPointF centre = area.center();
    paintFace(painter, centre, radius, dial, style);
    const double share = dial.larger == Dial::Larger::plus ? pointerShare : -pointerShare;
    painter.setPen(QPen(style.accent, 2.4, Qt::SolidLine, Qt::RoundCap));
    painter.drawLine(onCircle(centre, radius * 0.14, share + 0.5),
                     onCircle(centre, radius * 0.84, share));
    painter.setBrush(style.accent);
    painter.drawEllipse(centre, radius * 0.05, radius * 0.05);
    painter.restore();
}

DialPicture::DialPicture(QWidget* parent)
    : QWidget(parent) {
    setMinimumSize(130, 150);
    setDial(tenthDial());
}

void DialPicture::setDial(const Dial& dial) {
    m_dial = dial;
    setAccessibleName(tr("The dial as it looks"));
    setAccessibleDescription(dialInWords(dial));
    update();
}

void DialPicture::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const PictureStyle style = PictureStyle::forPalette(palette(), font());
    const int caption = fontMetrics().height() * 2 + 4;
    paintDial(painter, QRectF(rect()).adjusted(0, 0, 0, -caption), m_dial, style);
    painter.setPen(palette().color(QPalette::WindowText));
    painter.drawText(rect().adjusted(0, height() - caption, 0, 0),
                     Qt::AlignHCenter | Qt::AlignBottom | Qt::TextWordWrap, dialInWords(m_dial));
}

} // namespace borewright
