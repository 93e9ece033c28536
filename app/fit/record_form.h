// SPDX-License-Identifier: GPL-3.0-or-later
// A table of pieces with what can be done to it: type, Enter for the next, Delete empties a cell,
// paste a column, add and take off rows. What was refused stands beneath in words.
#pragma once

#include "app/fit/record_model.h"
#include "app/fit/text_table.h"

#include <QLabel>
#include <QPushButton>
#include <QTableView>

#include <functional>

class QHBoxLayout;

namespace borewright {

// Hints in fainter ink, refused texts in the colour of a warning and underlined.
class RecordDelegate final : public QuietDelegate {
public:
    using QuietDelegate::QuietDelegate;
    QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem& option,
                          const QModelIndex& index) const override;

    // What the key that closes an open cell (Enter, Tab) does once the cell is kept.
    void setLeft(std::function<void(int key)> left) { m_left = std::move(left); }

protected:
    void initStyleOption(QStyleOptionViewItem* option, const QModelIndex& index) const override;
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    std::function<void(int)> m_left;
};

class RecordTable final : public QTableView {
    Q_OBJECT
public:
    RecordTable(RecordModel& model, const QString& name, QWidget* parent = nullptr);
    // As high as its rows, as wide as there is room: the page scrolls, not the table within it.
    void fit();
    // To the first cell of the last piece, which is still to be filled.
    void beginLast();
    // The first of the chosen cells: where a paste begins.
    [[nodiscard]] QModelIndex firstChosen() const;

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;
    void currentChanged(const QModelIndex& now, const QModelIndex& before) override;
    bool focusNextPrevChild(bool next) override;

private:
    void goOn(int key);
    void goAfterEnter(const QModelIndex& here);
    bool goAside(bool right);
    void fitColumns();

    RecordModel& m_model;
    int m_begun = -1; // the row that is being filled for the first time; −1 = none
};

class RecordForm : public QWidget {
    Q_OBJECT
public:
    // `piece`: "piston", for the buttons.
    RecordForm(RecordModel& model, const QString& name, const QString& piece,
               QWidget* parent = nullptr);
    [[nodiscard]] RecordTable* table() const { return m_table; }
    [[nodiscard]] int currentRow() const { return m_table->currentIndex().row(); }

signals:
    void rowChosen(int row);

private:
    QHBoxLayout* makeButtons(const QString& piece);
    void addRow();
    void removeRows();
    void pasteBelow();
    void followRow();
    void sayRefusals();

    RecordModel& m_model;
    RecordTable* m_table;
    QLabel* m_refusal;
    QPushButton* m_remove;
};

} // namespace borewright
