// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/size/entry_table.h"

#include "app/fields/refusal_label.h"
#include "app/pictures/picture_style.h"

#include <QHeaderView>
#include <QKeyEvent>
#include <QLineEdit>
#include <QVBoxLayout>

namespace borewright {

QWidget* EntryDelegate::createEditor(QWidget* parent, const QStyleOptionViewItem&,
                                     const QModelIndex& index) const {
    auto* editor = new QLineEdit(parent);
    editor->setFrame(false);
    editor->setMaxLength(80);
    editor->setAccessibleName(index.data(Qt::AccessibleTextRole).toString());
    return editor;
}

void EntryDelegate::initStyleOption(QStyleOptionViewItem* option, const QModelIndex& index) const {
    QStyledItemDelegate::initStyleOption(option, index);
    const QPalette& palette = option->palette;
    QColor ink = palette.color(QPalette::Text);
    if (option->text.isEmpty()) {
        option->text = index.data(EntryModel::hintRole).toString();
        option->features |= QStyleOptionViewItem::HasDisplay;
        ink = palette.color(QPalette::PlaceholderText);
    }
    if (!index.data(EntryModel::refusalRole).toString().isEmpty()) {
        ink = PictureStyle::forPalette(palette, option->font).outside;
        option->font.setUnderline(true);
    }
    option->palette.setColor(QPalette::Text, ink);
    option->palette.setColor(QPalette::HighlightedText, ink);
}

EntryView::EntryView(EntryModel& model, const QString& name, QWidget* parent)
    : QTableView(parent)
    , m_model(model) {
    setModel(&model);
    setAccessibleName(name);
    setItemDelegate(new EntryDelegate(this));
    verticalHeader()->hide();
    horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
    horizontalHeader()->setHighlightSections(false);
    setShowGrid(false);
    setAlternatingRowColors(true);
    setTabKeyNavigation(false);
    setWordWrap(false);
    setEditTriggers(QAbstractItemView::AnyKeyPressed | QAbstractItemView::DoubleClicked |
                    QAbstractItemView::EditKeyPressed);
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    // A chosen cell is tinted, not filled: what is fainter in it has to stay readable.
    QPalette quiet = palette();
    QColor wash = quiet.color(QPalette::Highlight);
    wash.setAlphaF(0.2F);
    quiet.setColor(QPalette::Highlight, wash);
    setPalette(quiet);
    connect(&model, &QAbstractItemModel::rowsInserted, this, &EntryView::fit);
    connect(&model, &QAbstractItemModel::rowsRemoved, this, &EntryView::fit);
    fit();
}

void EntryView::fit() {
    int height = horizontalHeader()->sizeHint().height() + 2 * frameWidth();
    for (int row = 0; row < m_model.rowCount(); ++row)
        height += rowHeight(row);
    setFixedHeight(height);
}

void EntryView::changeEvent(QEvent* event) {
    QTableView::changeEvent(event);
    if (event->type() == QEvent::FontChange) fit();
}

void EntryView::removeChosen() {
    std::vector<int> rows;
    for (const QModelIndex& index : selectionModel()->selectedIndexes())
        rows.push_back(index.row());
    m_model.remove(rows);
}

// Along the row, then to the first of the new one; false where there is nowhere to go.
bool EntryView::goOn() {
    const QModelIndex here = currentIndex();
    // A refused cell is not left: it is to be mended.
    if (!here.isValid() || !here.data(EntryModel::refusalRole).toString().isEmpty()) return false;
    const bool along = here.column() + 1 < m_model.columnCount();
    if (!along && here.row() >= m_model.entries()) return false;
    setCurrentIndex(along ? here.siblingAtColumn(here.column() + 1)
                          : m_model.index(m_model.entries(), 0));
    return true;
}

// Escape: what was refused goes, and what is begun of a new row where the cursor is in it.
void EntryView::giveUp() {
    if (currentIndex().row() >= m_model.entries())
        m_model.forget();
    else
        m_model.giveUpRefused();
}

void EntryView::keyPressEvent(QKeyEvent* event) {
    // Enter that an open cell has taken comes by here too.
    if (state() == QAbstractItemView::EditingState) return event->accept();
    const QModelIndex here = currentIndex();
    const QString turned = here.isValid() && event->key() == Qt::Key_Space
                               ? m_model.turned(here.row(), here.column())
                               : QString();
    if (!turned.isEmpty())
        m_model.setData(here, turned, Qt::EditRole);
    else if (event->key() == Qt::Key_Delete)
        m_model.empty(selectionModel()->selectedIndexes());
    else if (event->key() == Qt::Key_Escape)
        giveUp();
    else if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)
        (void)goOn();
    else
        QTableView::keyPressEvent(event);
}

// Enter and Tab in an open cell keep it and go on; Tab opens the next at once, and leaves the table
// at its end. Escape gives up what was refused there.
void EntryView::closeEditor(QWidget* editor, QAbstractItemDelegate::EndEditHint hint) {
    const bool tab = hint == QAbstractItemDelegate::EditNextItem;
    QTableView::closeEditor(editor, tab ? QAbstractItemDelegate::NoHint : hint);
    const QModelIndex here = currentIndex();
    if (hint == QAbstractItemDelegate::RevertModelCache && here.isValid()) m_model.giveUp(here);
    if (hint == QAbstractItemDelegate::SubmitModelCache) (void)goOn();
    if (!tab) return;
    const bool refused = !here.data(EntryModel::refusalRole).toString().isEmpty();
    if (goOn())
        edit(currentIndex());
    else if (!refused)
        focusNextChild();
}

// Another page was looked at in between: what was refused then is not to be met again.
void EntryView::showEvent(QShowEvent* event) {
    QTableView::showEvent(event);
    if (!event->spontaneous()) m_model.giveUpRefused();
}

EntryTable::EntryTable(EntryModel& model, const QString& name, const QString& kind, QWidget* parent)
    : QWidget(parent)
    , m_model(model)
    , m_view(new EntryView(model, name, this))
    , m_refusal(makeRefusalLabel(this))
    , m_remove(new QPushButton(tr("Take %1 off").arg(kind), this)) {
    m_refusal->setAccessibleName(tr("Why it was not kept"));
    m_remove->setAccessibleName(m_remove->text());
    m_remove->setEnabled(false);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(6);
    column->addWidget(m_view);
    column->addWidget(m_refusal);
    column->addWidget(m_remove, 0, Qt::AlignLeft);
    column->addStretch(1); // takes what height is over, not the words between
    connect(m_remove, &QPushButton::clicked, m_view, &EntryView::removeChosen);
    connect(&model, &EntryModel::refusalsChanged, this, &EntryTable::sayRefusals);
    const auto follow = [this] {
        const QModelIndex now = m_view->currentIndex();
        m_remove->setEnabled(now.isValid() && now.row() < m_model.entries());
    };
    connect(m_view->selectionModel(), &QItemSelectionModel::currentChanged, this, follow);
    connect(m_view->selectionModel(), &QItemSelectionModel::currentChanged, &model,
            &EntryModel::hush);
    connect(&model, &EntryModel::refusalsChanged, this, follow);
    sayRefusals();
}

void EntryTable::sayRefusals() {
    const QString refusals = m_model.refusals();
    m_refusal->setText(refusals);
    m_refusal->setVisible(!refusals.isEmpty());
}

} // namespace borewright
