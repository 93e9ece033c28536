// SPDX-License-Identifier: GPL-3.0-or-later
// The chosen survey's budget on screen.
#pragma once

#include "app/pictures/budget_bars.h"
#include "app/pictures/picture_view.h"

namespace borewright {

class BudgetBarsView : public PictureView {
    Q_OBJECT
public:
    BudgetBarsView(Document& document, Selection& selection, QWidget* parent = nullptr);

    [[nodiscard]] QSize sizeHint() const override { return {560, 300}; }
    [[nodiscard]] QSize minimumSizeHint() const override { return {320, 140}; }

protected:
    void rebuild() override;
    [[nodiscard]] QString describe() const override;
    void paint(QPainter& painter, const QRectF& rect) override;

private:
    BudgetBarsData m_data;
};

} // namespace borewright
