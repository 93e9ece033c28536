// SPDX-License-Identifier: GPL-3.0-or-later
// The chosen bore's section on screen. Mouse over a reading or arrow keys tell its number; a click
// chooses its station.
#pragma once

#include "app/pictures/picture_view.h"
#include "app/pictures/section.h"

namespace borewright {

class SectionView : public PictureView {
    Q_OBJECT
public:
    SectionView(Document& document, Selection& selection, QWidget* parent = nullptr);

    void setMode(SectionOptions::Mode mode);
    void setEarlierShown(bool shown);
    void setValuesShown(bool shown);
    [[nodiscard]] const SectionOptions& options() const { return m_options; }
    [[nodiscard]] const SectionData& data();
    [[nodiscard]] QSize sizeHint() const override { return {320, 460}; }
    [[nodiscard]] QSize minimumSizeHint() const override { return {140, 190}; }

signals:
    // A reading was clicked or Enter pressed on it: whoever shows the grid leads there.
    void activated(const borewright::Station& station);

protected:
    void rebuild() override;
    [[nodiscard]] QString describe() const override;
    void paint(QPainter& painter, const QRectF& rect) override;
    bool event(QEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    void step(int levels, int axes);

    SectionOptions m_options;
    SectionData m_data;
};

} // namespace borewright
