// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/fit/record_form.h"

#include "app/fields/refusal_label.h"
#include "app/fit/quiet_header.h"
#include "app/pictures/picture_style.h"

#include <QClipboard>
#include <QGuiApplication>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLineEdit>
#include <QScrollBar>
#include <QVBoxLayout>

#include <algorithm>

namespace borewright {

QWidget* RecordDelegate::createEditor(QWidget* parent, const QStyleOptionViewItem&,
                                      const QModelIndex& index) const {
    auto* editor = new QLineEdit(parent);
    editor->setFrame(false);
    editor->setMaxLength(60);
    editor->setAlignment(Qt::Alignment(index.data(Qt::TextAlignmentRole).toInt()));
    editor->setPalette(quietSelection(parent->palette()));
    editor->setAccessibleName(index.data(Qt::AccessibleTextRole).toString());
    return editor;
}

void RecordDelegate::initStyleOption(QStyleOptionViewItem* option, const QModelIndex& index) const {
    QuietDelegate::initStyleOption(option, index);
    if (!index.data(RecordModel::refusalRole).toString().isEmpty()) {
        const PictureStyle style = PictureStyle::forPalette(option->palette, option->font);
        option->palette.setColor(QPalette::Text, style.outside);
        option->font.setUnderline(true);
        return;
    }
    if (!option->text.isEmpty()) return;
    option->text = index.data(RecordModel::hintRole).toString();
    option->features |= QStyleOptionViewItem::HasDisplay;
    option->palette.setColor(QPalette::Text, option->palette.color(QPalette::PlaceholderText));
}

bool RecordDelegate::eventFilter(QObject* watched, QEvent* event) {
    auto* editor = qobject_cast<QLineEdit*>(watched);
    const auto* key = event->type() == QEvent::KeyPress ? static_cast<QKeyEvent*>(event) : nullptr;
    if (editor == nullptr || key == nullptr ||
        (key->key() != Qt::Key_Return && key->key() != Qt::Key_Enter && key->key() != Qt::Key_Tab &&
         key->key() != Qt::Key_Backtab))
        return QuietDelegate::eventFilter(watched, event);
    const int which = key->key();
    emit commitData(editor);
    emit closeEditor(editor, QAbstractItemDelegate::NoHint);
    if (m_left) m_left(which);
    return true;
}

RecordTable::RecordTable(RecordModel& model, const QString& name, QWidget* parent)
    : QTableView(parent)
    , m_model(model) {
    setHorizontalHeader(new QuietHeader(this));
    setModel(&model);
    auto* delegate = new RecordDelegate(this);
    delegate->setLeft([this](int key) { goOn(key); });
    setItemDelegate(delegate);
    setAccessibleName(name);
    setToolTip(
        tr("Type over a cell; Enter keeps it and goes on, below or along a new row; Tab goes "
           "right; Delete empties it; Ctrl+V pastes into the chosen cells"));
    verticalHeader()->hide();
    verticalHeader()->setDefaultSectionSize(closeRow(fontMetrics()));
    setShowGrid(false);
    setAlternatingRowColors(true);
    setTabKeyNavigation(false);
    setWordWrap(false);
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setEditTriggers(QAbstractItemView::AnyKeyPressed | QAbstractItemView::DoubleClicked |
                    QAbstractItemView::EditKeyPressed);
    connect(&model, &QAbstractItemModel::rowsInserted, this, &RecordTable::fit);
    connect(&model, &QAbstractItemModel::rowsRemoved, this, &RecordTable::fit);
    connect(&model, &QAbstractItemModel::modelReset, this, &RecordTable::fit);
    connect(&model, &QAbstractItemModel::dataChanged, this, &RecordTable::fitColumns);
    fit();
}

void RecordTable::fit() {
    int height = horizontalHeader()->sizeHint().height() + 2 * frameWidth();
    for (int row = 0; row < m_model.rowCount(); ++row)
        height += rowHeight(row);
    if (horizontalScrollBar()->isVisible()) height += horizontalScrollBar()->sizeHint().height();
    setFixedHeight(height);
    fitColumns();
}

// What is left of a wide window goes to all columns alike, up to a gap that the eye still bridges.
void RecordTable::fitColumns() {
    constexpr int widest = 40;
    std::vector<int> wanted;
    int sum = 0;
    for (int column = 0; column < m_model.columnCount(); ++column) {
        wanted.push_back(
            std::max(sizeHintForColumn(column), horizontalHeader()->sectionSizeHint(column)));
        sum += wanted.back();
    }
    if (wanted.empty()) return;
    const int left = (viewport()->width() - sum) / static_cast<int>(wanted.size());
    for (int column = 0; column < static_cast<int>(wanted.size()); ++column)
        setColumnWidth(column,
                       wanted[static_cast<std::size_t>(column)] + std::clamp(left, 0, widest));
}

void RecordTable::resizeEvent(QResizeEvent* event) {
    QTableView::resizeEvent(event);
    fitColumns();
}

void RecordTable::changeEvent(QEvent* event) {
    QTableView::changeEvent(event);
    if (event->type() == QEvent::FontChange) fit();
}

void RecordTable::currentChanged(const QModelIndex& now, const QModelIndex& before) {
    QTableView::currentChanged(now, before);
    if (now.row() == m_model.pieces())
        m_begun = now.row();
    else if (now.row() != m_begun)
        m_begun = -1;
}

void RecordTable::beginLast() {
    m_begun = m_model.pieces() - 1;
    setCurrentIndex(m_model.index(m_begun, 0));
}

QModelIndex RecordTable::firstChosen() const {
    const QModelIndexList chosen = selectionModel()->selectedIndexes();
    if (chosen.isEmpty()) return currentIndex();
    int row = chosen.front().row(), column = chosen.front().column();
    for (const QModelIndex& one : chosen) {
        row = std::min(row, one.row());
        column = std::min(column, one.column());
    }
    return m_model.index(row, column);
}

// A refused cell is not left by Enter or Tab: it is to be mended.
void RecordTable::goOn(int key) {
    const QModelIndex here = currentIndex();
    if (!here.isValid() || !here.data(RecordModel::refusalRole).toString().isEmpty()) return;
    if (key == Qt::Key_Tab || key == Qt::Key_Backtab)
        goAside(key == Qt::Key_Tab);
    else
        goAfterEnter(here);
}

// Down a column of sizes as a hand works; along a row that is being filled for the first time.
void RecordTable::goAfterEnter(const QModelIndex& here) {
    if (here.row() != m_begun)
        setCurrentIndex(here.siblingAtRow(std::min(here.row() + 1, m_model.rowCount() - 1)));
    else if (here.column() + 1 < m_model.columnsTyped())
        setCurrentIndex(here.siblingAtColumn(here.column() + 1));
    else
        setCurrentIndex(m_model.index(m_model.pieces(), 0));
}

bool RecordTable::goAside(bool right) {
    const QModelIndex next =
        currentIndex().siblingAtColumn(currentIndex().column() + (right ? 1 : -1));
    if (next.isValid()) setCurrentIndex(next);
    return next.isValid();
}

// Tab goes along the row and leaves the table only at its end, so that nothing typed goes astray.
bool RecordTable::focusNextPrevChild(bool next) {
    return (hasFocus() && goAside(next)) || QTableView::focusNextPrevChild(next);
}

void RecordTable::keyPressEvent(QKeyEvent* event) {
    if (event->matches(QKeySequence::Paste)) {
        m_model.paste(firstChosen(), QGuiApplication::clipboard()->text());
    } else if (event->matches(QKeySequence::Copy)) {
        QGuiApplication::clipboard()->setText(currentIndex().data().toString());
    } else if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) {
        goOn(event->key());
    } else if (event->key() == Qt::Key_Delete || event->key() == Qt::Key_Backspace) {
        m_model.setData(currentIndex(), QString(), Qt::EditRole);
    } else {
        QTableView::keyPressEvent(event);
    }
}

RecordForm::RecordForm(RecordModel& model, const QString& name, const QString& piece,
                       QWidget* parent)
    : QWidget(parent)
    , m_model(model)
    , m_table(new RecordTable(model, name, this))
    , m_refusal(makeRefusalLabel(this)) {
    m_refusal->setAccessibleName(tr("Why a %1 was not kept").arg(piece));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(8);
    column->addWidget(m_table);
    column->addWidget(m_refusal);
    column->addLayout(makeButtons(piece));
    connect(&model, &RecordModel::refusalsChanged, this, &RecordForm::sayRefusals);
    connect(m_table->selectionModel(), &QItemSelectionModel::currentChanged, this,
            &RecordForm::followRow);
    connect(&model, &QAbstractItemModel::rowsInserted, this, &RecordForm::followRow);
    connect(&model, &QAbstractItemModel::rowsRemoved, this, &RecordForm::followRow);
    sayRefusals();
}

QHBoxLayout* RecordForm::makeButtons(const QString& piece) {
    auto* row = new QHBoxLayout;
    auto* add = new QPushButton(tr("Add %1").arg(piece), this);
    m_remove = new QPushButton(tr("Take %1 off").arg(piece), this);
    auto* paste = new QPushButton(tr("Paste below"), this);
    paste->setToolTip(tr("Adds what was copied below the last row, from the chosen column on; "
                         "Ctrl+V pastes it over the chosen cells instead"));
    m_remove->setEnabled(false);
    for (QPushButton* button : {add, m_remove, paste}) {
        button->setAccessibleName(button->text());
        row->addWidget(button);
    }
    row->addStretch();
    connect(add, &QPushButton::clicked, this, &RecordForm::addRow);
    connect(m_remove, &QPushButton::clicked, this, &RecordForm::removeRows);
    connect(paste, &QPushButton::clicked, this, &RecordForm::pasteBelow);
    return row;
}

void RecordForm::addRow() {
    m_model.add();
    m_table->setFocus();
    m_table->beginLast();
}

void RecordForm::pasteBelow() {
    const QModelIndex here = m_table->currentIndex();
    m_model.pasteBelow(here.isValid() ? here.column() : -1, QGuiApplication::clipboard()->text());
}

// Also where the chosen row has become a piece, or has ceased to be one.
void RecordForm::followRow() {
    m_remove->setEnabled(currentRow() >= 0 && currentRow() < m_model.pieces());
    emit rowChosen(currentRow());
}

void RecordForm::removeRows() {
    std::vector<int> rows;
    for (const QModelIndex& index : m_table->selectionModel()->selectedIndexes())
        rows.push_back(index.row());
    m_model.remove(rows);
}

void RecordForm::sayRefusals() {
    const QString refusals = m_model.refusals();
    m_refusal->setText(refusals);
    m_refusal->setVisible(!refusals.isEmpty());
}

} // namespace borewright
