// SPDX-License-Identifier: GPL-3.0-or-later
// The dial as it looks, so that its sign cannot be mistaken: a pointer, and what it means there.
#pragma once

#include "app/pictures/picture_style.h"
#include "core/workbook/survey.h"

#include <QPainter>
#include <QWidget>

namespace borewright {

// Draws the dial inside `area`: figures rising both ways (balanced face) or once round, with the
// pointer where a bore larger by 3.5 tenths of a turn would put it.
void paintDial(QPainter& painter, const QRectF& area, const Dial& dial, const PictureStyle& style);
// "pointer here = bore larger by 3.5 thou"
QString dialInWords(const Dial& dial);

class DialPicture : public QWidget {
    Q_OBJECT
public:
    explicit DialPicture(QWidget* parent = nullptr);
    void setDial(const Dial& dial);
    [[nodiscard]] QSize sizeHint() const override { return {170, 190}; }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    Dial m_dial;
};

} // namespace borewright
