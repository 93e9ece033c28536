// SPDX-License-Identifier: GPL-3.0-or-later
// The sizes on screen. Click or arrow keys choose a bore.
#pragma once

#include "app/pictures/picture_view.h"
#include "app/pictures/size_bars.h"

namespace borewright {

class SizeBarsView : public PictureView {
    Q_OBJECT
public:
    SizeBarsView(Document& document, Selection& selection, QWidget* parent = nullptr);

    // As high as its rows want to be; no lower than they can be read.
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

protected:
    void rebuild() override;
    [[nodiscard]] QString describe() const override;
    void paint(QPainter& painter, const QRectF& rect) override;
    void resizeEvent(QResizeEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    SizeBarsData m_data;
};

} // namespace borewright
