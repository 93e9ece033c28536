// SPDX-License-Identifier: GPL-3.0-or-later
// The strip of readings against the limits on screen; click or arrow keys choose a bore.
#pragma once

#include "app/document/document.h"
#include "app/document/selection.h"
#include "app/pictures/strip.h"

#include <QWidget>

class QCustomPlot;

namespace borewright {

class StripView : public QWidget {
    Q_OBJECT
public:
    StripView(Document& document, Selection& selection, QWidget* parent = nullptr);

    [[nodiscard]] QSize sizeHint() const override { return {640, 280}; }
    [[nodiscard]] QSize minimumSizeHint() const override { return {280, 160}; }

signals:
    void activated(const borewright::Station& station); // a reading was clicked

protected:
    bool event(QEvent* event) override;
    void changeEvent(QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void markOld();
    void freshen();
    void choose(const QPoint& position);
    [[nodiscard]] const StripPoint* nearest(const QPoint& position) const;

    Document& m_document;
    Selection& m_selection;
    QCustomPlot* m_plot = nullptr;
    StripData m_data;
    bool m_old = true;
};

} // namespace borewright
