// SPDX-License-Identifier: GPL-3.0-or-later
// The pages along the left side, in the order of the work.
#pragma once

#include <QList>
#include <QString>
#include <QWidget>

class QAbstractButton;
class QButtonGroup;

namespace borewright {

enum class Page { block, measure, judge, size, hone, fit, sheet };
inline constexpr int pageCount = 7;

// "Block", "Measure", … for people; "block", "measure", … for files and icons.
QString titleOf(Page page);
QString keyOf(Page page);

class PageRail : public QWidget {
    Q_OBJECT
public:
    explicit PageRail(QWidget* parent = nullptr);
    // Marks a page as the one shown; does not emit chosen().
    void setCurrent(Page page);
    void clearCurrent();

signals:
    void chosen(borewright::Page page);

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    QButtonGroup* m_buttons;
};

} // namespace borewright
