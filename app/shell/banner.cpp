// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/banner.h"

#include "app/shell/theme.h"

#include <QAccessible>
#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QPushButton>

namespace borewright {

Banner::Banner(QWidget* parent)
    : QFrame(parent)
    , m_label(new QLabel(this))
    , m_remedies(new QHBoxLayout) {
    m_label->setWordWrap(true);
    m_label->setTextFormat(Qt::PlainText);
    m_label->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
    m_label->setAccessibleName(tr("Notice"));
    m_label->setFocusPolicy(Qt::NoFocus);
    auto* close = new QPushButton(tr("Understood"), this);
    close->setAccessibleName(tr("Close the notice"));
    close->setAutoDefault(false);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(20, 10, 14, 10);
    row->addWidget(m_label, 1);
    row->addLayout(m_remedies);
    row->addWidget(close);
    connect(close, &QPushButton::clicked, this, &Banner::clear);
    hide();
}

void Banner::say(const QString& sentence, const std::vector<BannerAction>& remedies) {
    clearRemedies();
    for (const BannerAction& remedy : remedies) {
        auto* button = new QPushButton(remedy.name, this);
        button->setAccessibleName(remedy.name);
        button->setAutoDefault(false);
        m_remedies->addWidget(button);
        // The action may say something else here, which deletes this button with what it holds.
        connect(button, &QPushButton::clicked, this, [this, action = remedy.action] {
            const auto todo = action;
            clear();
            todo();
        });
    }
    m_label->setText(sentence);
    m_label->setAccessibleName(tr("Notice: %1").arg(sentence));
    show();
    QAccessibleEvent event(m_label, QAccessible::Alert);
    QAccessible::updateAccessibility(&event);
}

void Banner::clearRemedies() {
    while (QLayoutItem* item = m_remedies->takeAt(0)) {
        item->widget()->hide();
        item->widget()->deleteLater();
        delete item;
    }
}

void Banner::clear() {
    clearRemedies();
    m_label->clear();
    hide();
}

QString Banner::sentence() const {
    return m_label->text();
}

void Banner::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    QColor wash = warningColour(palette());
    painter.fillRect(QRect(0, 0, 5, height()), wash);
    wash.setAlphaF(isDark(palette()) ? 0.16F : 0.10F);
    painter.fillRect(rect(), wash);
    painter.setPen(hairline(palette()));
    painter.drawLine(0, height() - 1, width(), height() - 1);
}

} // namespace borewright
