// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/measure/grid_view.h"

#include "app/measure/grid_clipboard.h"
#include "app/measure/grid_paint.h"

#include <QClipboard>
#include <QGuiApplication>
#include <QKeyEvent>
#include <QLineEdit>

#include <algorithm>

namespace borewright {
namespace {

// Room for the odd mark at the left and air at the right of a figure.
constexpr int columnPadding = 11;

} // namespace

GridView::GridView(const PageContext& context, EntryWalk& walk, QWidget* parent)
    : QTableView(parent)
    , m_context(context)
    , m_walk(walk)
    , m_model(context, walk) {
    setUpLook();
    setModel(&m_model);
    connect(&m_model, &GridModel::refused, this, &GridView::refused);
    connect(&m_model, &GridModel::odd, this, &GridView::odd);
    connect(&m_model, &QAbstractItemModel::modelReset, this, [this] {
        fitColumns();
        followSelection();
    });
    connect(&context.selection, &Selection::changed, this, &GridView::followSelection);
    connect(&walk, &EntryWalk::changed, this, &GridView::followSelection);
    connect(&context.document, &Document::changed, this, [this](Change change) {
        if (change == Change::units) fitColumns();
    });
    // Later, since the cells may still show a workbook that is no more when another is opened.
    connect(&walk, &EntryWalk::changed, this, &GridView::widenForLastKept, Qt::QueuedConnection);
    connect(selectionModel(), &QItemSelectionModel::currentChanged, this, &GridView::tellSelection);
    fitColumns();
    followSelection();
}

void GridView::setUpLook() {
    setHorizontalHeader(new BoreHeader(this));
    auto* delegate = new GridDelegate(this);
    setItemDelegate(delegate);
    connect(delegate, &GridDelegate::leftBy, this, &GridView::commitAndMove);
    setAccessibleName(tr("Readings, depth by bore and axis"));
    setShowGrid(false);
    setFrameShape(QFrame::NoFrame);
    setSelectionMode(QAbstractItemView::ContiguousSelection);
    setEditTriggers(QAbstractItemView::AnyKeyPressed | QAbstractItemView::DoubleClicked |
                    QAbstractItemView::EditKeyPressed);
    setTabKeyNavigation(false);
    setCornerButtonEnabled(false);
    verticalHeader()->setSectionResizeMode(QHeaderView::Fixed);
    verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 12);
    verticalHeader()->setDefaultAlignment(Qt::AlignRight | Qt::AlignVCenter);
    verticalHeader()->setHighlightSections(false);
    setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
    setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
}

// One width for all columns: as wide as the widest figure, so that a six-bore block fits.
void GridView::fitColumns() {
    int width = fontMetrics().horizontalAdvance(QStringLiteral("−00.0"));
    for (int row = 0; row < m_model.rowCount(); ++row)
        for (int column = 0; column < m_model.columnCount(); ++column)
            width = std::max(width, fontMetrics().horizontalAdvance(
                                        m_model.index(row, column).data().toString()));
    setAllWidths(width + columnPadding);
}

void GridView::setAllWidths(int width) {
    horizontalHeader()->setDefaultSectionSize(width);
    for (int column = 0; column < m_model.columnCount(); ++column)
        if (columnWidth(column) != width) setColumnWidth(column, width);
}

// A reading just kept may need more room; the others were measured before.
void GridView::widenForLastKept() {
    if (!m_walk.lastKept()) return;
    const QModelIndex at = m_model.indexOf(*m_walk.lastKept());
    const int width = fontMetrics().horizontalAdvance(at.data().toString()) + columnPadding;
    if (at.isValid() && width > columnWidth(at.column())) setAllWidths(width);
}

void GridView::followSelection() {
    const auto station = m_walk.current();
    if (!station || m_committing) return;
    const QModelIndex at = m_model.indexOf(*station);
    if (!at.isValid() || at == currentIndex()) return;
    m_following = true;
    setCurrentIndex(at);
    scrollTo(at);
    m_following = false;
}

void GridView::tellSelection(const QModelIndex& current) {
    if (!m_following && current.isValid())
        m_context.selection.setStation(m_model.stationAt(current.row(), current.column()));
}

void GridView::setShowing(GridModel::Showing showing) {
    m_model.setShowing(showing);
    fitColumns();
}

void GridView::move(int rows, int columns) {
    const QModelIndex now = currentIndex();
    if (!now.isValid()) return;
    const int row = std::clamp(now.row() + rows, 0, m_model.rowCount() - 1);
    const int column = std::clamp(now.column() + columns, 0, m_model.columnCount() - 1);
    setCurrentIndex(m_model.index(row, column));
}

void GridView::keyPressEvent(QKeyEvent* event) {
    if (event->matches(QKeySequence::Copy)) return copy();
    if (event->matches(QKeySequence::Paste)) return paste();
    switch (event->key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
        return move(event->modifiers() & Qt::ShiftModifier ? -1 : 1, 0);
    case Qt::Key_Delete:
    case Qt::Key_Backspace:
        return strikeSelected();
    case Qt::Key_D:
        if (event->modifiers() & Qt::ControlModifier) return fillDown();
        break;
    default:
        break;
    }
    QTableView::keyPressEvent(event);
}

void GridView::commitAndMove(QWidget* editor, int rows, int columns) {
    const QModelIndex edited = currentIndex();
    const QString text = static_cast<QLineEdit*>(editor)->text().trimmed();
    const bool changes = !text.isEmpty() && text != m_model.typedAt(edited.row(), edited.column());
    const Station station = m_model.stationAt(edited.row(), edited.column());
    m_committing = true;
    const bool kept = m_model.setData(edited, text, Qt::EditRole);
    m_committing = false;
    if (changes && !kept) return; // refused: the cell stays open with what was typed
    closeEditor(editor, QAbstractItemDelegate::NoHint);
    m_context.selection.setStation(station);
    setCurrentIndex(m_model.indexOf(station));
    move(rows, columns);
}

void GridView::closeEditor(QWidget* editor, QAbstractItemDelegate::EndEditHint) {
    // The hints would move by Qt's rules; this view moves by a spreadsheet's.
    QTableView::closeEditor(editor, QAbstractItemDelegate::NoHint);
}

std::vector<Station> GridView::selectedStations() const {
    std::vector<Station> stations;
    for (const QModelIndex& index : selectedIndexes())
        stations.push_back(m_model.stationAt(index.row(), index.column()));
    return stations;
}

void GridView::run(const Result<Edit>& edit, const QString& name, const QString& told) {
    if (!edit) {
        m_context.sounds.refused();
        emit refused(
            tr("%1; nothing was changed").arg(QString::fromStdString(edit.error().message())));
        return;
    }
    const auto result = m_context.document.edit(*edit, name);
    if (!result) {
        emit refused(QString::fromStdString(result.error().message()));
        return;
    }
    m_context.sounds.kept();
    emit done(told);
}

void GridView::copy() {
    const CellBlock block = blockOf(selectedIndexes());
    if (block.valid()) QGuiApplication::clipboard()->setText(copied(m_model, block));
}

void GridView::paste() {
    const CellBlock block = blockOf(selectedIndexes());
    const QModelIndex at = block.valid() ? m_model.index(block.top, block.left) : currentIndex();
    if (findSurvey(m_context.document.workbook(), m_model.survey()) == nullptr) return;
    run(pasteEdit(m_context, m_model, m_walk.unit(), at, QGuiApplication::clipboard()->text()),
        tr("paste of readings"), tr("The block was pasted."));
}

void GridView::fillDown() {
    if (findSurvey(m_context.document.workbook(), m_model.survey()) == nullptr) return;
    run(fillEdit(m_context, m_model, m_walk.unit(), blockOf(selectedIndexes())), tr("fill down"),
        tr("Filled down."));
}

void GridView::strikeSelected() {
    int readings = 0;
    for (const QModelIndex& index : selectedIndexes())
        readings += index.data(GridModel::repeatsRole).toInt();
    if (readings > 0) emit askStrike(readings);
}

} // namespace borewright
