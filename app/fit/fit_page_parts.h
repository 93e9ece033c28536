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

// Sentences in passing: as many as two lines hold, the rest when it is asked for. Its room stays
// the same whatever is said, so that nothing beneath jumps from under the pointer.
class Sentences : public QWidget {
    Q_OBJECT
public:
    explicit Sentences(const QString& name, QWidget* parent = nullptr);
    void say(const std::vector<std::string>& sentences);

protected:
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    void arrange();
    [[nodiscard]] int twoLines() const;
    [[nodiscard]] bool fits(const QString& text) const;
    [[nodiscard]] QString cutToFit(const QString& sentence) const;

    QLabel* m_label;
    QToolButton* m_more;
    QStringList m_sentences;
};

// `head` above, `content` scrolled beneath it.
void buildScrolledTab(QWidget* tab, std::initializer_list<QWidget*> head, QWidget* content);
// The work at the left, what is looked up beside it at the right.
QWidget* besideEachOther(QWidget* left, QWidget* right, QWidget* parent);

} // namespace borewright
