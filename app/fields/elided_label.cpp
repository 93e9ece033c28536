// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/fields/elided_label.h"

#include <QResizeEvent>

namespace borewright {

ElidedLabel::ElidedLabel(QWidget* parent)
    : QLabel(parent) {
    setTextFormat(Qt::PlainText);
    setForegroundRole(QPalette::PlaceholderText);
    setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
}

void ElidedLabel::setText(const QString& line, const QString& whole) {
    m_line = line;
    setToolTip(whole.isEmpty() ? QString() : whole.toHtmlEscaped().replace('\n', "<br>"));
    setAccessibleName(whole);
    elide();
}

void ElidedLabel::elide() {
    QLabel::setText(fontMetrics().elidedText(m_line, Qt::ElideRight, width()));
}

void ElidedLabel::resizeEvent(QResizeEvent* event) {
    QLabel::resizeEvent(event);
    elide();
}

} // namespace borewright
