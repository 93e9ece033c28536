// SPDX-License-Identifier: GPL-3.0-or-later
// The strip of readings against the limits on screen; click or arrow keys choose a bore.
#pragma once

#include "app/pictures/picture_view.h"
#include "app/pictures/strip.h"

namespace borewright {

class StripView : public PictureView {
    Q_OBJECT
public:
    StripView(Document& document, Selection& selection, QWidget* parent = nullptr);

    [[nodiscard]] QSize sizeHint() const override { return {640, 280}; }
    [[nodiscard]] QSize minimumSizeHint() const override { return {280, 160}; }

signals:
    void activated(const borewright::Station& station); // a reading was clicked

protected:
    void rebuild() override;
    [[nodiscard]] QString describe() const override;
    void paint(QPainter& painter, const QRectF& rect) override;
    bool event(QEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    [[nodiscard]] const StripPoint* nearest(const QPointF& position) const;

    StripData m_data;
};

} // namespace borewright
