// SPDX-License-Identifier: GPL-3.0-or-later
// How both halves of the Fit page are laid out: the sentence first, the work beneath it scrolled,
// what belongs together side by side.
#pragma once

#include <QStringList>
#include <QWidget>

#include <initializer_list>
#include <string>
#include <vector>

class QLabel;
class QToolButton;

namespace borewright {

QLabel* makeHeadline(const QString& name, QWidget* parent);
QLabel* makeQuietLines(const QString& name, QWidget* parent);
// An empty text takes no room.
void sayLines(QLabel& label, const QString& text);

// Sentences in passing: the first few, the rest when it is asked for.
class Sentences : public QWidget {
    Q_OBJECT
public:
    explicit Sentences(const QString& name, QWidget* parent = nullptr);
    void say(const std::vector<std::string>& sentences);

private:
    void arrange();

    QLabel* m_label;
    QToolButton* m_more;
    QStringList m_sentences;
};

// `head` above, `content` scrolled beneath it.
void buildScrolledTab(QWidget* tab, std::initializer_list<QWidget*> head, QWidget* content);
// The work at the left, what is looked up beside it at the right.
QWidget* besideEachOther(QWidget* left, QWidget* right, QWidget* parent);

} // namespace borewright
