// SPDX-License-Identifier: GPL-3.0-or-later
// What all picture views share: they follow document, selection and palette, keep their data until
// one of them changes, say in words what they show, and never write.
#pragma once

#include "app/document/document.h"
#include "app/document/selection.h"
#include "app/pictures/picture_style.h"

#include <QPixmap>
#include <QWidget>

namespace borewright {

class PictureView : public QWidget {
    Q_OBJECT
public:
    PictureView(Document& document, Selection& selection, const QString& name, QWidget* parent);

protected:
    // Makes the data anew; called before the next paint after a change, and for the description.
    virtual void rebuild() = 0;
    [[nodiscard]] virtual QString describe() const = 0;
    virtual void paint(QPainter& painter, const QRectF& rect) = 0;
    // What keeps a picture fresh: marks the data as old and paints soon.
    void markOld();
    // Makes sure that the data is of now.
    void freshen();
    // The rectangle of the picture inside the widget.
    [[nodiscard]] QRectF pictureRect() const;
    [[nodiscard]] const PictureStyle& style() const { return m_style; }

    bool event(QEvent* event) override;
    void changeEvent(QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

    Document& m_document;
    Selection& m_selection;

private:
    void restyle();
    PictureStyle m_style;
    QPixmap m_drawn; // null where it must be drawn anew
    bool m_old = true;
};

} // namespace borewright
