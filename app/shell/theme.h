// SPDX-License-Identifier: GPL-3.0-or-later
// The look of the program: Fusion with palettes of our own, light and dark, one accent, one face
// of type. Qt 6.4 does not tell the colour scheme of the desk, so it is read off the lightness of
// the palette that the desk hands out.
#pragma once

#include "app/context/preferences.h"
#include "app/fields/ink.h"

#include <QFont>
#include <QIcon>
#include <QPalette>

#include <optional>

class QApplication;

namespace borewright {

// The palettes. Accent: the blue of Okabe and Ito (light), their sky blue (dark).
QPalette lightPalette();
QPalette darkPalette();

// Noto Sans in the size of the desk, at least 10 pt; the desk's own face where it is missing.
QFont interfaceFont(const QFont& desk);

// Sets Fusion, the font and the palette; call again when the preference changes.
class Theme {
public:
    // Remembers the desk's own palette and font before anything is changed.
    explicit Theme(QApplication& application);
    void apply(Preferences::Theme theme);
    // The desk's look has changed: reads it again.
    void followDesk(Preferences::Theme theme);

private:
    QApplication& m_application;
    bool m_deskIsDark;
    std::optional<bool> m_dark; // what is in use
};

// One of the program's own drawings from resources/icons, in one ink.
QPixmap inkedDrawing(const QString& name, const QColor& ink, int size, qreal pixelRatio);
// The same for an action, in the palette's text colour.
QIcon inkedIcon(const QString& name, const QPalette& palette);

} // namespace borewright
