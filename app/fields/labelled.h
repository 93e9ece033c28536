// SPDX-License-Identifier: GPL-3.0-or-later
// A field with its name above it, as a form of several columns wants it.
#pragma once

#include <QLabel>
#include <QVBoxLayout>

namespace borewright {

// `field` under its `name`, which may hold a mnemonic; both become children of what is returned.
inline QWidget* labelled(const QString& name, QWidget* field) {
    auto* whole = new QWidget;
    whole->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Maximum);
    auto* label = new QLabel(name, whole);
    label->setBuddy(field->focusProxy() != nullptr ? field->focusProxy() : field);
    auto* column = new QVBoxLayout(whole);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(3);
    column->addWidget(label);
    column->addWidget(field);
    column->addStretch();
    return whole;
}

} // namespace borewright
