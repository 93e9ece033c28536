// SPDX-License-Identifier: GPL-3.0-or-later
// A table of entries with what can be done to it: type, Enter or Tab for the next along the row and
// then a new one, the space bar to turn a choice, Delete to empty a cell. A row goes by the button
// only. What was refused stands beneath in words.
#pragma once

#include "app/size/entry_model.h"

#include <QLabel>
#include <QPushButton>
#include <QStyledItemDelegate>
#include <QTableView>

namespace borewright {

// Hints in fainter ink, refused texts in the colour of a warning.
class EntryDelegate final : public QStyledItemDelegate {
public:
    using QStyledItemDelegate::QStyledItemDelegate;
    QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem& option,
                          const QModelIndex& index) const override;

protected:
    void initStyleOption(QStyleOptionViewItem* option, const QModelIndex& index) const override;
};

class EntryView final : public QTableView {
    Q_OBJECT
public:
    EntryView(EntryModel& model, const QString& name, QWidget* parent = nullptr);
    void removeChosen();
    // As high as its rows: the page scrolls, not the table within it.
    void fit();

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void changeEvent(QEvent* event) override;
    void closeEditor(QWidget* editor, QAbstractItemDelegate::EndEditHint hint) override;
    void showEvent(QShowEvent* event) override;

private:
    bool goOn();
    void giveUp();
    EntryModel& m_model;
};

class EntryTable : public QWidget {
    Q_OBJECT
public:
    // `kind`: "size", for the button.
    EntryTable(EntryModel& model, const QString& name, const QString& kind,
               QWidget* parent = nullptr);
    [[nodiscard]] EntryView* view() const { return m_view; }

private:
    void sayRefusals();

    EntryModel& m_model;
    EntryView* m_view;
    QLabel* m_refusal;
    QPushButton* m_remove;
};

} // namespace borewright
