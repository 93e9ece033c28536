// SPDX-License-Identifier: GPL-3.0-or-later
// A table of the sizing plan to type in: a row an entry, and a last empty row that becomes one.
// A cell is one undo step. What is refused stays in its cell with the reason, while the plan keeps
// what it had, until it is mended, given up, or something is undone.
#pragma once

#include "app/document/document.h"

#include <QAbstractTableModel>
#include <QStringList>

#include <map>
#include <optional>

namespace borewright {

class EntryModel : public QAbstractTableModel {
    Q_OBJECT
public:
    // Why what stands in a cell was refused; empty where it was not.
    static constexpr int refusalRole = Qt::UserRole;
    // What an empty cell shows in fainter ink.
    static constexpr int hintRole = Qt::UserRole + 1;

    explicit EntryModel(Document& document, QObject* parent = nullptr);

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation,
                                      int role) const override;
    [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role) override;

    // Rows that are entries; the one after them is for the next.
    [[nodiscard]] int entries() const { return m_entries; }
    void remove(std::vector<int> rows);
    // Empties cells as one undo step; those that must not be empty stay, and refusals() says why.
    void empty(const QModelIndexList& cells);
    // What the space bar does to a cell of a few choices; an empty text = it is typed.
    [[nodiscard]] virtual QString turned(int, int) const { return {}; }
    // What stands refused, a line each.
    [[nodiscard]] QString refusals() const;
    // Gives up what was refused: of one cell, or everywhere.
    void giveUp(const QModelIndex& cell);
    void giveUpRefused();
    // The cursor has gone on: why a cell was not emptied has been read.
    void hush();
    // Another workbook or bore: what was refused or begun is of the earlier one.
    void forget();
    void refresh();

signals:
    void refusalsChanged();

protected:
    struct Column {
        QString head;
        QString name; // "oversize": for undo steps and screen readers
    };
    [[nodiscard]] Document& document() const { return m_document; }
    [[nodiscard]] const Block& block() const { return m_document.workbook().block; }
    [[nodiscard]] const SizingPlan& plan() const { return m_document.workbook().sizing; }

    [[nodiscard]] virtual int count() const = 0;
    [[nodiscard]] virtual std::vector<Column> columns() const = 0;
    [[nodiscard]] virtual QString nameOf(int row) const = 0; // "size 0.020 in"
    [[nodiscard]] virtual QString kind() const = 0;          // "size"
    [[nodiscard]] virtual QString textAt(int row, int column) const = 0;
    [[nodiscard]] virtual QString hintAt(int row, int column) const = 0;
    // What is typed of the next entry already but is not enough to make it one.
    [[nodiscard]] virtual QString textOfNew(int) const { return {}; }
    virtual void clearNew() {}
    // Writes a cell of an entry into a plan; the row that the entry has there now.
    [[nodiscard]] virtual Result<int> put(SizingPlan& plan, int row, int column,
                                          const QString& text) const = 0;
    // Takes a cell of the next entry; writes the entry into the plan once there is enough of it.
    // The row that it has there, or the one after all while it has none.
    [[nodiscard]] virtual Result<int> begin(SizingPlan& plan, int column, const QString& text) = 0;
    virtual void erase(SizingPlan& plan, int row) const = 0;

private:
    struct Draft {
        QString text;
        QString why;
    };
    [[nodiscard]] bool isLast(int row) const { return row >= m_entries; }
    [[nodiscard]] QString spoken(const QModelIndex& index) const;
    [[nodiscard]] QString placeName(int row, int column) const;
    Result<void> write(int row, int column, const QString& text);
    void tryAgain(int row);
    void moveRow(int from, int to);
    void takeNewRow(int to);
    void setEntries(int now);
    void showAll();

    struct Move {
        int from, to;
    };
    Document& m_document;
    int m_entries = 0;
    int m_rows = 1;
    std::map<std::pair<int, int>, Draft> m_drafts; // by row and column
    QString m_said;                                // why something was not emptied
    std::optional<Move> m_move; // of the entry just being written: its row goes where it is sorted
};

} // namespace borewright
