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

// Enter keeps the cell and goes on below, as a hand works down a column of sizes.
bool RecordDelegate::eventFilter(QObject* watched, QEvent* event) {
    auto* editor = qobject_cast<QLineEdit*>(watched);
    const auto* key = event->type() == QEvent::KeyPress ? static_cast<QKeyEvent*>(event) : nullptr;
    if (editor == nullptr || key == nullptr ||
        (key->key() != Qt::Key_Return && key->key() != Qt::Key_Enter))
        return QuietDelegate::eventFilter(watched, event);
    emit commitData(editor);
    emit closeEditor(editor, QAbstractItemDelegate::NoHint);
    if (m_entered) m_entered();
    return true;
}

RecordTable::RecordTable(RecordModel& model, const QString& name, QWidget* parent)
    : QTableView(parent)
    , m_model(model) {
    setHorizontalHeader(new QuietHeader(this));
    setModel(&model);
    auto* delegate = new RecordDelegate(this);
    delegate->setEntered([this] { goDown(); });
    setItemDelegate(delegate);
    setAccessibleName(name);
    setToolTip(tr("Type over a cell; Enter keeps it and goes on below; Delete empties it; a copied "
                  "column can be pasted"));
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

void RecordTable::goDown() {
    const QModelIndex here = currentIndex();
    // A refused cell is not left: it is to be mended.
    if (!here.isValid() || !here.data(RecordModel::refusalRole).toString().isEmpty()) return;
    setCurrentIndex(here.siblingAtRow(std::min(here.row() + 1, m_model.rowCount() - 1)));
}

void RecordTable::keyPressEvent(QKeyEvent* event) {
    if (event->matches(QKeySequence::Paste)) {
        m_model.paste(currentIndex(), QGuiApplication::clipboard()->text());
    } else if (event->matches(QKeySequence::Copy)) {
        QGuiApplication::clipboard()->setText(currentIndex().data().toString());
    } else if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) {
        goDown();
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
            [this](const QModelIndex& now) {
                m_remove->setEnabled(now.isValid() && now.row() < m_model.pieces());
                emit rowChosen(now.row());
            });
    sayRefusals();
}

QHBoxLayout* RecordForm::makeButtons(const QString& piece) {
    auto* row = new QHBoxLayout;
    auto* add = new QPushButton(tr("Add %1").arg(piece), this);
    m_remove = new QPushButton(tr("Take %1 off").arg(piece), this);
    auto* paste = new QPushButton(tr("Paste below"), this);
    paste->setToolTip(tr("From the clipboard, the first line into the chosen cell (Ctrl+V)"));
    m_remove->setEnabled(false);
    for (QPushButton* button : {add, m_remove, paste}) {
        button->setAccessibleName(button->text());
        row->addWidget(button);
    }
    row->addStretch();
    connect(add, &QPushButton::clicked, this, &RecordForm::addRow);
    connect(m_remove, &QPushButton::clicked, this, &RecordForm::removeRows);
    connect(paste, &QPushButton::clicked, this, [this] {
        m_model.paste(m_table->currentIndex(), QGuiApplication::clipboard()->text());
    });
    return row;
}

void RecordForm::addRow() {
    m_model.add();
    m_table->setFocus();
    const int column = std::max(0, m_table->currentIndex().column());
    m_table->setCurrentIndex(m_model.index(m_model.pieces() - 1, column));
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
