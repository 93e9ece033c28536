// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/fit/fit_page_parts.h"

#include "app/fields/fold.h"
#include "app/fields/scaled_font.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QScrollArea>
#include <QVBoxLayout>

namespace borewright {
namespace {

constexpr int narrowest = 320, widest = 440;

} // namespace

QLabel* makeHeadline(const QString& name, QWidget* parent) {
    auto* label = new QLabel(parent);
    label->setFont(scaledFont(label->font(), 1.25));
    label->setWordWrap(true);
    label->setTextInteractionFlags(Qt::TextSelectableByMouse);
    label->setAccessibleName(name);
    return label;
}

QLabel* makeQuietLines(const QString& name, QWidget* parent) {
    QLabel* label = makePassingWord({}, parent);
    label->setTextInteractionFlags(Qt::TextSelectableByMouse);
    label->setAccessibleName(name);
    return label;
}

void sayLines(QLabel& label, const QString& text) {
    label.setText(text);
    label.setVisible(!text.isEmpty());
}

void buildScrolledTab(QWidget* tab, std::initializer_list<QWidget*> head, QWidget* content) {
    auto* scroll = new QScrollArea(tab);
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll->setFocusPolicy(Qt::NoFocus);
    scroll->setWidget(content);
    auto* column = new QVBoxLayout(tab);
    column->setContentsMargins(0, 12, 0, 0);
    column->setSpacing(8);
    for (QWidget* part : head)
        column->addWidget(part);
    column->addWidget(scroll, 1);
}

QWidget* besideEachOther(QWidget* left, QWidget* right, QWidget* parent) {
    auto* whole = new QWidget(parent);
    auto* row = new QHBoxLayout(whole);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(32);
    right->setMinimumWidth(narrowest);
    right->setMaximumWidth(widest);
    row->addWidget(left, 5);
    row->addWidget(right, 2, Qt::AlignTop);
    return whole;
}

} // namespace borewright
