// SPDX-License-Identifier: GPL-3.0-or-later
// Parts of a page: a heading with its content; one that can be folded away.
#pragma once

#include <QWidget>

class QLabel;
class QToolButton;
class QVBoxLayout;

namespace borewright {

// A heading, an optional line of explanation, and room for content beneath.
class Part : public QWidget {
    Q_OBJECT
public:
    Part(const QString& title, const QString& explanation, QWidget* parent = nullptr);
    void add(QWidget* content);

private:
    QVBoxLayout* m_column;
};

// A part whose content shows only when it is asked for.
class Fold : public QWidget {
    Q_OBJECT
public:
    Fold(const QString& title, QWidget* content, QWidget* parent = nullptr);
    void setOpen(bool open);
    [[nodiscard]] bool isOpen() const;
    void setTitle(const QString& title);
    // What stands behind the title while it is folded: "top ring 0.42 in, one port band".
    void setSummary(const QString& summary);

private:
    void arrange();

    QString m_title;
    QString m_summary;
    QToolButton* m_button;
    QWidget* m_content;
};

// A label for what is said in passing, in fainter ink, wrapped.
QLabel* makePassingWord(const QString& text, QWidget* parent);

} // namespace borewright
