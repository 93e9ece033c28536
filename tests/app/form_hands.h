// SPDX-License-Identifier: GPL-3.0-or-later
// Hands for the tests of forms: finds controls by the names that a screen reader calls them.
#pragma once

#include <QAbstractButton>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QTest>

#include <gtest/gtest.h>

namespace borewright::test {

template<class Widget>
Widget* named(QWidget& page, const QString& name) {
    for (Widget* widget : page.findChildren<Widget*>())
        if (widget->accessibleName() == name) return widget;
    ADD_FAILURE() << "nothing is called " << name.toStdString();
    return nullptr;
}

// By what stands on it, without its mnemonic.
inline QAbstractButton* button(QWidget& page, const QString& text) {
    for (QAbstractButton* one : page.findChildren<QAbstractButton*>())
        if (one->text().remove('&') == text) return one;
    ADD_FAILURE() << "no button " << text.toStdString();
    return nullptr;
}

// Types over what stands in a field and leaves it.
inline void fillIn(QWidget& page, const QString& name, const char* text) {
    auto* edit = named<QLineEdit>(page, name);
    if (edit == nullptr) return;
    edit->setFocus();
    edit->selectAll();
    QTest::keyClick(edit, Qt::Key_Delete);
    QTest::keyClicks(edit, QString::fromUtf8(text));
    emit edit->editingFinished();
}

// Chooses a row as a hand does.
inline void choose(QWidget& page, const QString& name, int row) {
    auto* box = named<QComboBox>(page, name);
    if (box == nullptr) return;
    box->setCurrentIndex(row);
    emit box->activated(row);
}

} // namespace borewright::test
