// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/theme.h"

#include "app/shell/theme_style.h"

#include <QApplication>
#include <QFile>
#include <QFontDatabase>
#include <QPainter>
#include <QPixmap>
#include <QSvgRenderer>

namespace borewright {
namespace {

struct Colours {
    QColor window, base, alternate, ink, faint, button, line, accent, onAccent, link;
};

QPalette paletteOf(const Colours& c) {
    QPalette p;
    p.setColor(QPalette::Window, c.window);
    p.setColor(QPalette::WindowText, c.ink);
    p.setColor(QPalette::Base, c.base);
    p.setColor(QPalette::AlternateBase, c.alternate);
    p.setColor(QPalette::Text, c.ink);
    p.setColor(QPalette::PlaceholderText, c.faint);
    p.setColor(QPalette::Button, c.button);
    p.setColor(QPalette::ButtonText, c.ink);
    p.setColor(QPalette::BrightText, c.onAccent);
    p.setColor(QPalette::ToolTipBase, c.base);
    p.setColor(QPalette::ToolTipText, c.ink);
    p.setColor(QPalette::Highlight, c.accent);
    p.setColor(QPalette::HighlightedText, c.onAccent);
    p.setColor(QPalette::Link, c.link);
    p.setColor(QPalette::LinkVisited, c.link);
    p.setColor(QPalette::Light, c.base);
    p.setColor(QPalette::Midlight, c.line.lighter(106));
    p.setColor(QPalette::Mid, c.line);
    p.setColor(QPalette::Dark, c.line.darker(125));
    p.setColor(QPalette::Shadow, QColor(0, 0, 0));
    for (const auto role :
         {QPalette::WindowText, QPalette::Text, QPalette::ButtonText, QPalette::HighlightedText})
        p.setColor(QPalette::Disabled, role, c.faint);
    p.setColor(QPalette::Disabled, QPalette::Highlight, c.line);
    return p;
}

} // namespace

QPalette lightPalette() {
    return paletteOf({.window = QColor(0xf5, 0xf6, 0xf7),
                      .base = QColor(0xff, 0xff, 0xff),
                      .alternate = QColor(0xf8, 0xf9, 0xfa),
                      .ink = QColor(0x1c, 0x21, 0x26),
                      .faint = QColor(0x6b, 0x73, 0x7b),
                      .button = QColor(0xf2, 0xf4, 0xf5),
                      .line = QColor(0xd3, 0xd8, 0xdc),
                      .accent = QColor(0x00, 0x72, 0xb2),
                      .onAccent = QColor(0xff, 0xff, 0xff),
                      .link = QColor(0x00, 0x5c, 0x91)});
}

QPalette darkPalette() {
    return paletteOf({.window = QColor(0x1e, 0x22, 0x26),
                      .base = QColor(0x17, 0x1a, 0x1d),
                      .alternate = QColor(0x1b, 0x1f, 0x22),
                      .ink = QColor(0xe6, 0xe9, 0xec),
                      .faint = QColor(0x94, 0x9d, 0xa6),
                      .button = QColor(0x2a, 0x2f, 0x34),
                      .line = QColor(0x3a, 0x41, 0x47),
                      .accent = QColor(0x56, 0xb4, 0xe9),
                      .onAccent = QColor(0x10, 0x16, 0x1b),
                      .link = QColor(0x7c, 0xc6, 0xf0)});
}

QFont interfaceFont(const QFont& desk) {
    QFont font = desk;
    if (QFontDatabase::hasFamily("Noto Sans")) font.setFamilies({"Noto Sans"});
    if (font.pointSizeF() < 10.0) font.setPointSizeF(10.0);
    return font;
}

Theme::Theme(QApplication& application)
    : m_application(application)
    , m_deskIsDark(isDark(QApplication::palette())) {
    QApplication::setStyle(new ThemeStyle);
    QApplication::setFont(interfaceFont(QApplication::font()));
}

void Theme::apply(Preferences::Theme theme) {
    const bool dark =
        theme == Preferences::Theme::dark || (theme == Preferences::Theme::system && m_deskIsDark);
    if (m_dark == dark) return;
    m_dark = dark;
    QApplication::setPalette(dark ? darkPalette() : lightPalette());
}

void Theme::followDesk(Preferences::Theme theme) {
    // Without a palette of our own the application shows the desk's.
    QApplication::setPalette(QPalette());
    m_deskIsDark = isDark(QApplication::palette());
    m_dark.reset();
    apply(theme);
}

QPixmap inkedDrawing(const QString& name, const QColor& ink, int size, qreal pixelRatio) {
    QFile file(":/icons/" + name + ".svg");
    if (!file.open(QIODevice::ReadOnly)) return {};
    QByteArray svg = file.readAll();
    svg.replace("currentColor", ink.name().toLatin1());
    QSvgRenderer renderer(svg);
    const int pixels = qRound(size * pixelRatio);
    QPixmap pixmap(pixels, pixels);
    pixmap.fill(Qt::transparent);
    QPainter painter(&pixmap);
    renderer.render(&painter);
    painter.end();
    pixmap.setDevicePixelRatio(pixelRatio);
    return pixmap;
}

QIcon inkedIcon(const QString& name, const QPalette& palette) {
    QIcon icon;
    for (const qreal ratio : {1.0, 2.0}) {
        icon.addPixmap(inkedDrawing(name, palette.color(QPalette::WindowText), 18, ratio));
        icon.addPixmap(inkedDrawing(name, hairline(palette), 18, ratio), QIcon::Disabled);
    }
    return icon;
}

} // namespace borewright
