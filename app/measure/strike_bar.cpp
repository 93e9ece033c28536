// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/measure/strike_bar.h"

#include <QHBoxLayout>
#include <QKeyEvent>

namespace borewright {

StrikeBar::StrikeBar(QWidget* parent)
    : QWidget(parent)
    , m_question(new QLabel(this))
    , m_reason(new QLineEdit(this)) {
    m_reason->setAccessibleName(tr("Why the readings are struck out"));
    m_reason->setMaxLength(200);
    m_question->setBuddy(m_reason);
    auto* hint = new QLabel(tr("<b>Enter</b> strike out &nbsp; <b>Esc</b> keep"), this);
    auto* layout = new QHBoxLayout(this);
    layout->setContentsMargins(16, 6, 16, 6);
    layout->addWidget(m_question);
    layout->addWidget(m_reason, 1);
    layout->addWidget(hint);
    hide();
}

void StrikeBar::ask(int readings) {
    m_question->setText(readings == 1 ? tr("Strike out one reading, because")
                                      : tr("Strike out %1 readings, because").arg(readings));
    m_reason->setText(tr("mistyped"));
    m_reason->selectAll();
    show();
    m_reason->setFocus();
}

void StrikeBar::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) {
        const QString reason = m_reason->text().trimmed();
        hide();
        emit reasonGiven(reason.isEmpty() ? tr("no reason given") : reason);
    } else if (event->key() == Qt::Key_Escape) {
        hide();
        emit left();
    } else {
        QWidget::keyPressEvent(event);
    }
}

} // namespace borewright
