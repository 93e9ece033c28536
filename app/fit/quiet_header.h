// SPDX-License-Identifier: GPL-3.0-or-later
// The head of a table of the Fit page: fixed widths, one or two lines, and air between a head and
// its neighbour's.
#pragma once

#include <QHeaderView>

namespace borewright {

// Air at either side of a cell's text, in pixels.
inline constexpr int cellAir = 6;

class QuietHeader final : public QHeaderView {
public:
    explicit QuietHeader(QWidget* parent)
        : QHeaderView(Qt::Horizontal, parent) {
        setSectionsClickable(false);
        setHighlightSections(false);
        setSectionResizeMode(QHeaderView::Fixed);
    }

protected:
    [[nodiscard]] QSize sectionSizeFromContents(int section) const override {
        QSize size = QHeaderView::sectionSizeFromContents(section);
        size.rwidth() += cellAir;
        return size;
    }
    void initStyleOptionForIndex(QStyleOptionHeader* option, int section) const override {
        QHeaderView::initStyleOptionForIndex(option, section);
        const QString air(1, QChar(QChar::Nbsp));
        QStringList lines = option->text.split('\n');
        for (QString& line : lines)
            line = option->textAlignment & Qt::AlignRight ? line + air : air + line;
        option->text = lines.join('\n');
    }
};

// Rows close enough to be read as a list.
inline int closeRow(const QFontMetrics& metrics) {
    return metrics.height() + 8;
}

} // namespace borewright
