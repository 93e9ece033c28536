// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/judge/verdict_table.h"

#include "app/judge/doubted_delegate.h"
#include "app/judge/verdict_model.h"

#include <QHeaderView>
#include <QKeyEvent>

#include <algorithm>

namespace borewright {

VerdictTable::VerdictTable(VerdictModel& model, QWidget* parent)
    : QTableView(parent) {
    setModel(&model);
    setItemDelegate(new DoubtedDelegate(this));
    setAccessibleName(tr("Verdicts, a row a bore"));
    setSelectionBehavior(QAbstractItemView::SelectRows);
    setSelectionMode(QAbstractItemView::SingleSelection);
    setShowGrid(false);
    setFrameShape(QFrame::NoFrame);
    setTabKeyNavigation(false);
    setWordWrap(false);
    verticalHeader()->hide();
    horizontalHeader()->setSectionResizeMode(QHeaderView::Fixed);
    horizontalHeader()->setHighlightSections(false);
    connect(this, &QTableView::doubleClicked, this, &VerdictTable::openWanted);
    quietSelection();
}

// What is left of a wide window goes to all columns alike, up to a gap that the eye still bridges.
void VerdictTable::fitColumns() {
    constexpr int widest = 44;
    std::vector<std::pair<int, int>> wanted; // column, width
    int sum = 0;
    for (int column = 0; column < model()->columnCount(); ++column) {
        if (isColumnHidden(column)) continue;
        const int width =
            std::max(sizeHintForColumn(column), horizontalHeader()->sectionSizeHint(column));
        wanted.emplace_back(column, width);
        sum += width;
    }
    if (wanted.empty()) return;
    const int left = (viewport()->width() - sum) / static_cast<int>(wanted.size());
    for (const auto& [column, width] : wanted)
        setColumnWidth(column, width + std::clamp(left, 0, widest));
}

void VerdictTable::resizeEvent(QResizeEvent* event) {
    QTableView::resizeEvent(event);
    fitColumns();
}

void VerdictTable::keyPressEvent(QKeyEvent* event) {
    if (event->matches(QKeySequence::Copy))
        emit copyWanted();
    else if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)
        emit openWanted(currentIndex());
    else
        QTableView::keyPressEvent(event);
}

void VerdictTable::changeEvent(QEvent* event) {
    QTableView::changeEvent(event);
    if (event->type() == QEvent::PaletteChange && !m_quieting) quietSelection();
    if (event->type() == QEvent::FontChange) fitColumns();
}

// A chosen row is tinted, not filled: the marks of its verdicts have to stay readable.
void VerdictTable::quietSelection() {
    const QPalette whole = parentWidget() != nullptr ? parentWidget()->palette() : palette();
    const QColor accent = whole.color(QPalette::Highlight);
    const QColor base = whole.color(QPalette::Base);
    const auto mixed = [](int a, int b) { return (a + 4 * b) / 5; };
    const QColor tint(mixed(accent.red(), base.red()), mixed(accent.green(), base.green()),
                      mixed(accent.blue(), base.blue()));
    QPalette quiet = whole;
    quiet.setColor(QPalette::Highlight, tint);
    quiet.setColor(QPalette::HighlightedText, whole.color(QPalette::Text));
    m_quieting = true;
    setPalette(quiet);
    m_quieting = false;
}

} // namespace borewright
