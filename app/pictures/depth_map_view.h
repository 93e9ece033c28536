// SPDX-License-Identifier: GPL-3.0-or-later
// The map depth × bore on screen; click or arrow keys choose a station.
#pragma once

#include "app/pictures/depth_map.h"
#include "app/pictures/picture_view.h"

namespace borewright {

class DepthMapView : public PictureView {
    Q_OBJECT
public:
    DepthMapView(Document& document, Selection& selection, QWidget* parent = nullptr);

    [[nodiscard]] QSize sizeHint() const override { return {640, 320}; }
    [[nodiscard]] QSize minimumSizeHint() const override { return {280, 160}; }

signals:
    void activated(const borewright::Station& station); // double click or Enter

protected:
    void rebuild() override;
    [[nodiscard]] QString describe() const override;
    void paint(QPainter& painter, const QRectF& rect) override;
    bool event(QEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    void step(int rows, int columns);
    DepthMapData m_data;
};

} // namespace borewright
