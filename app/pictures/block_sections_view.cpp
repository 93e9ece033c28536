// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pictures/block_sections_view.h"

#include <QKeyEvent>

#include <algorithm>

namespace borewright {

BlockSectionsView::BlockSectionsView(Document& document, Selection& selection, QWidget* parent)
    : PictureView(document, selection, tr("Sections of all bores"), parent) {}

void BlockSectionsView::setMode(SectionOptions::Mode mode) {
    m_options.mode = mode;
    markOld();
}

void BlockSectionsView::setEarlierShown(bool shown) {
    m_options.earlier = shown;
    markOld();
}

void BlockSectionsView::rebuild() {
    m_options.chosen = m_selection.bore();
    m_data = blockSectionsData(m_document.workbook(), m_document.results(), m_selection.survey(),
                               m_document.units(), m_options);
}

QString BlockSectionsView::describe() const {
    return describeBlockSections(m_data);
}

void BlockSectionsView::paint(QPainter& painter, const QRectF& rect) {
    paintBlockSections(painter, rect, m_data, style());
}

void BlockSectionsView::mousePressEvent(QMouseEvent* event) {
    freshen();
    const int bore = blockSectionsHit(pictureRect(), m_data, style(), event->position());
    if (event->button() == Qt::LeftButton && bore != 0) m_selection.setBore(bore);
}

void BlockSectionsView::mouseDoubleClickEvent(QMouseEvent* event) {
    freshen();
    const int bore = blockSectionsHit(pictureRect(), m_data, style(), event->position());
    if (event->button() == Qt::LeftButton && bore != 0) emit activated(bore);
}

void BlockSectionsView::keyPressEvent(QKeyEvent* event) {
    freshen();
    int step = 0;
    switch (event->key()) {
    case Qt::Key_Left:
    case Qt::Key_Up:
        step = -1;
        break;
    case Qt::Key_Right:
    case Qt::Key_Down:
        step = 1;
        break;
    case Qt::Key_Return:
    case Qt::Key_Enter:
        if (m_selection.bore() != 0) emit activated(m_selection.bore());
        return;
    default:
        return PictureView::keyPressEvent(event);
    }
    const auto at = std::ranges::find(m_data.bores, m_selection.bore(), &SectionData::bore);
    if (at == m_data.bores.end()) return;
    const auto next = at - m_data.bores.begin() + step;
    if (next < 0 || next >= std::ssize(m_data.bores)) return;
    m_selection.setBore(m_data.bores[static_cast<std::size_t>(next)].bore);
}

} // namespace borewright
