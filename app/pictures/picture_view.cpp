// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pictures/picture_view.h"

#include "app/pictures/picture_key.h"

#include <QEvent>
#include <QPainter>

namespace borewright {

PictureView::PictureView(Document& document, Selection& selection, const QString& name,
                         QWidget* parent)
    : QWidget(parent)
    , m_document(document)
    , m_selection(selection) {
    setAccessibleName(name);
    setFocusPolicy(Qt::StrongFocus);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    connect(&document, &Document::changed, this, [this] { markOld(); });
    connect(&selection, &Selection::changed, this, [this] { markOld(); });
    restyle();
}

void PictureView::markOld() {
    m_old = true;
    m_drawn = {};
    update();
}

void PictureView::freshen() {
    if (!m_old) return;
    m_old = false;
    rebuild();
    setAccessibleDescription(describe());
}

QRectF PictureView::pictureRect() const {
    return pictureArea(size(), m_style);
}

bool PictureView::event(QEvent* event) {
    // Where nothing is painted (another page is shown) the description must still be of now.
    if (event->type() == QEvent::Show || event->type() == QEvent::FocusIn) freshen();
    return QWidget::event(event);
}

void PictureView::changeEvent(QEvent* event) {
    if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange) restyle();
    QWidget::changeEvent(event);
}

// The drawing is kept till data, size or style change: an uncovered window costs a copy.
void PictureView::paintEvent(QPaintEvent*) {
    freshen();
    const QSize pixels = (QSizeF(size()) * devicePixelRatioF()).toSize();
    if (m_drawn.size() != pixels) {
        m_drawn = QPixmap(pixels);
        m_drawn.setDevicePixelRatio(devicePixelRatioF());
        m_drawn.fill(m_style.background);
        QPainter painter(&m_drawn);
        painter.setRenderHint(QPainter::Antialiasing);
        paint(painter, pictureRect());
    }
    QPainter painter(this);
    painter.drawPixmap(0, 0, m_drawn);
    if (!hasFocus()) return;
    painter.setPen(QPen(m_style.accent, 2));
    painter.drawRect(rect().adjusted(1, 1, -1, -1));
}

void PictureView::restyle() {
    m_style = PictureStyle::forPalette(palette(), font());
    m_drawn = {};
    update();
}

} // namespace borewright
