// SPDX-License-Identifier: GPL-3.0-or-later
// All bores' sections on one scale on screen; click or arrow keys choose a bore.
#pragma once

#include "app/pictures/block_sections.h"
#include "app/pictures/picture_view.h"

namespace borewright {

class BlockSectionsView : public PictureView {
    Q_OBJECT
public:
    BlockSectionsView(Document& document, Selection& selection, QWidget* parent = nullptr);

    void setMode(SectionOptions::Mode mode);
    void setEarlierShown(bool shown);
    [[nodiscard]] QSize sizeHint() const override { return {720, 420}; }
    [[nodiscard]] QSize minimumSizeHint() const override { return {300, 220}; }

signals:
    void activated(int bore); // double click or Enter

protected:
    void rebuild() override;
    [[nodiscard]] QString describe() const override;
    void paint(QPainter& painter, const QRectF& rect) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    BlockSectionsOptions m_options;
    BlockSectionsData m_data;
};

} // namespace borewright
