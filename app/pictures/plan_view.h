// SPDX-License-Identifier: GPL-3.0-or-later
// The block from above on screen; click or arrow keys choose a bore.
#pragma once

#include "app/pictures/picture_view.h"
#include "app/pictures/plan.h"

namespace borewright {

class PlanView : public PictureView {
    Q_OBJECT
public:
    PlanView(Document& document, Selection& selection, QWidget* parent = nullptr);

    // Shows no words, only numbers, as for numbering.
    void setNumbersOnly(bool on);
    [[nodiscard]] const PlanData& data();
    [[nodiscard]] QSize sizeHint() const override { return {260, 360}; }
    [[nodiscard]] QSize minimumSizeHint() const override { return {120, 160}; }

signals:
    void clicked(int bore);   // by mouse or Enter; the bore is chosen already
    void activated(int bore); // double click or Enter

protected:
    void rebuild() override;
    [[nodiscard]] QString describe() const override;
    void paint(QPainter& painter, const QRectF& rect) override;
    bool event(QEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    bool m_numbersOnly = false;
    PlanData m_data;
};

} // namespace borewright
