// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/fit/text_table.h"

#include "app/fit/quiet_header.h"
#include "app/pictures/picture_style.h"
#include "app/pictures/verdict_mark.h"

#include <QApplication>
#include <QHeaderView>
#include <QKeyEvent>
#include <QScrollBar>

#include <algorithm>

namespace borewright {

void TextModel::show(Content content, const QPalette& palette) {
    const bool sameShape =
        content.rows.size() == m_content.rows.size() && content.heads == m_content.heads;
    if (!sameShape) beginResetModel();
    m_content = std::move(content);
    m_palette = palette;
    if (!sameShape)
        endResetModel();
    else if (rowCount() > 0)
        emit dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
}

int TextModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_content.rows.size());
}

int TextModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_content.heads.size());
}

int TextModel::alignment(int column, Qt::AlignmentFlag vertical) const {
    const bool words = std::ranges::find(m_content.words, column) != m_content.words.end();
    return static_cast<int>((words ? Qt::AlignLeft : Qt::AlignRight) | vertical);
}

QVariant TextModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid()) return {};
    const auto& row = m_content.rows.at(static_cast<std::size_t>(index.row()));
    if (static_cast<std::size_t>(index.column()) >= row.size()) return {};
    const Cell& cell = row[static_cast<std::size_t>(index.column())];
    switch (role) {
    case Qt::DisplayRole:
        return cell.text;
    case Qt::ToolTipRole:
        return cell.said;
    case Qt::AccessibleTextRole:
        return cell.said.isEmpty() ? QString(m_content.heads[index.column()]).replace('\n', ' ') +
                                         QStringLiteral(": ") + cell.text
                                   : cell.said;
    case Qt::TextAlignmentRole:
        return alignment(index.column(), Qt::AlignVCenter);
    case Qt::DecorationRole:
        if (cell.mark) return verdictIcon(*cell.mark, PictureStyle::forPalette(m_palette, {}));
        return {};
    case Qt::ForegroundRole:
        return cell.quiet ? QVariant(m_palette.brush(QPalette::PlaceholderText)) : QVariant();
    case Qt::FontRole: {
        if (!cell.bold) return {};
        QFont font;
        font.setBold(true);
        return font;
    }
    default:
        return {};
    }
}

QVariant TextModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal) return {};
    if (role == Qt::DisplayRole) return m_content.heads.value(section);
    if (role == Qt::TextAlignmentRole) return alignment(section, Qt::AlignBottom);
    return {};
}

QPalette quietSelection(QPalette whole) {
    const QColor accent = whole.color(QPalette::Highlight);
    const QColor base = whole.color(QPalette::Base);
    const auto mixed = [](int a, int b) { return (a + 4 * b) / 5; };
    whole.setColor(QPalette::Highlight,
                   QColor(mixed(accent.red(), base.red()), mixed(accent.green(), base.green()),
                          mixed(accent.blue(), base.blue())));
    whole.setColor(QPalette::HighlightedText, whole.color(QPalette::Text));
    return whole;
}

QSize QuietDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const {
    QSize size = QStyledItemDelegate::sizeHint(option, index);
    size.rwidth() += 2 * cellAir;
    return size;
}

// The whole cell takes part in the selection, its text keeps away from its neighbours'.
void QuietDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                          const QModelIndex& index) const {
    QStyleOptionViewItem item = option;
    item.palette = quietSelection(option.palette);
    initStyleOption(&item, index);
    const QWidget* widget = option.widget;
    const QStyle* style = widget != nullptr ? widget->style() : QApplication::style();
    QStyleOptionViewItem ground = item;
    ground.text.clear();
    ground.icon = QIcon();
    style->drawControl(QStyle::CE_ItemViewItem, &ground, painter, widget);
    item.backgroundBrush = Qt::NoBrush;
    item.showDecorationSelected = false;
    item.state.setFlag(QStyle::State_Selected, false);
    item.state.setFlag(QStyle::State_HasFocus, false);
    item.rect.adjust(cellAir, 0, -cellAir, 0);
    style->drawControl(QStyle::CE_ItemViewItem, &item, painter, widget);
}

TextTable::TextTable(const QString& name, QWidget* parent)
    : QTableView(parent)
    , m_model(new TextModel(this)) {
    setHorizontalHeader(new QuietHeader(this));
    setModel(m_model);
    setItemDelegate(new QuietDelegate(this));
    setAccessibleName(name);
    setSelectionMode(QAbstractItemView::NoSelection);
    setFocusPolicy(Qt::TabFocus);
    setShowGrid(false);
    setFrameShape(QFrame::NoFrame);
    setTabKeyNavigation(false);
    setWordWrap(false);
    setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    verticalHeader()->hide();
    verticalHeader()->setDefaultSectionSize(closeRow(fontMetrics()));
    viewport()->setBackgroundRole(QPalette::Window);
}

void TextTable::setChoosable() {
    setSelectionMode(QAbstractItemView::SingleSelection);
    setSelectionBehavior(QAbstractItemView::SelectRows);
    setFocusPolicy(Qt::StrongFocus);
    connect(selectionModel(), &QItemSelectionModel::currentChanged, this,
            [this](const QModelIndex& now) { emit rowChosen(now.row()); });
    connect(this, &QTableView::doubleClicked, this,
            [this](const QModelIndex& here) { emit rowTaken(here.row()); });
}

void TextTable::setMostRows(int rows) {
    m_mostRows = rows;
    fit();
}

void TextTable::setGivesWay(int column) {
    m_givesWay = column;
    fit();
}

void TextTable::show(TextModel::Content content) {
    m_shown = content;
    m_model->show(std::move(content), palette());
    fit();
}

QSize TextTable::sizeHint() const {
    int height = horizontalHeader()->sizeHint().height() + 2 * frameWidth();
    const int rows =
        m_mostRows > 0 ? std::min(m_mostRows, m_model->rowCount()) : m_model->rowCount();
    for (int row = 0; row < rows; ++row)
        height += rowHeight(row);
    int width = 0;
    for (int column = 0; column < m_model->columnCount(); ++column)
        width += std::max(sizeHintForColumn(column), horizontalHeader()->sectionSizeHint(column));
    if (width > viewport()->width() && m_mostRows == 0)
        height += horizontalScrollBar()->sizeHint().height();
    return {width, height};
}

QSize TextTable::minimumSizeHint() const {
    return {120, sizeHint().height()};
}

void TextTable::fit() {
    constexpr int widest = 32, narrowest = 120;
    const int columns = m_model->columnCount();
    const int left = columns > 0 ? (viewport()->width() - sizeHint().width()) / columns : 0;
    for (int column = 0; column < columns; ++column)
        setColumnWidth(column, std::max(sizeHintForColumn(column),
                                        horizontalHeader()->sectionSizeHint(column)) +
                                   std::clamp(left, 0, widest));
    const int lacks = sizeHint().width() - viewport()->width();
    if (lacks > 0 && m_givesWay >= 0 && m_givesWay < columns)
        setColumnWidth(m_givesWay, std::max(narrowest, columnWidth(m_givesWay) - lacks));
    updateGeometry();
}

void TextTable::resizeEvent(QResizeEvent* event) {
    QTableView::resizeEvent(event);
    fit();
}

void TextTable::keyPressEvent(QKeyEvent* event) {
    if ((event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) &&
        currentIndex().isValid())
        emit rowTaken(currentIndex().row());
    else
        QTableView::keyPressEvent(event);
}

void TextTable::changeEvent(QEvent* event) {
    QTableView::changeEvent(event);
    if (event->type() == QEvent::FontChange) fit();
    if (event->type() == QEvent::PaletteChange) m_model->show(m_shown, palette());
}

} // namespace borewright
