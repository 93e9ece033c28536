// SPDX-License-Identifier: GPL-3.0-or-later
// How both halves of the Fit page are laid out: the sentence first, the work beneath it scrolled,
// what belongs together side by side.
#pragma once

#include <QWidget>

#include <initializer_list>

class QLabel;

namespace borewright {

QLabel* makeHeadline(const QString& name, QWidget* parent);
QLabel* makeQuietLines(const QString& name, QWidget* parent);
// An empty text takes no room.
void sayLines(QLabel& label, const QString& text);
// `head` above, `content` scrolled beneath it.
void buildScrolledTab(QWidget* tab, std::initializer_list<QWidget*> head, QWidget* content);
// The work at the left, what is looked up beside it at the right.
QWidget* besideEachOther(QWidget* left, QWidget* right, QWidget* parent);

} // namespace borewright
