// SPDX-License-Identifier: GPL-3.0-or-later
// A table to enter pistons, rings or a skirt in: a row a piece, and a last empty row that becomes
// one when something is typed. A cell is one undo step, so is a paste. What is refused stays in its
// cell with the reason, while the record keeps what it had.
#pragma once

#include "app/document/document.h"

#include <QAbstractTableModel>

#include <map>

namespace borewright {

class RecordModel : public QAbstractTableModel {
    Q_OBJECT
public:
    // Why what stands in a cell was refused; an empty text where it was not.
    static constexpr int refusalRole = Qt::UserRole;
    // What is shown in an empty cell, in fainter ink.
    static constexpr int hintRole = Qt::UserRole + 1;

    explicit RecordModel(Document& document, QObject* parent = nullptr);

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation,
                                      int role) const override;
    [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role) override;

    // Rows that are pieces; the one after them is for the next.
    [[nodiscard]] int pieces() const { return m_pieces; }
    // One more piece, with what it takes over from the one above.
    void add();
    void remove(const std::vector<int>& rows);
    // Rows by line and columns by tab, the first in `at`. All of it, or nothing with the reason.
    bool paste(const QModelIndex& at, const QString& text);
    // The same below the last piece, from `column` on; without one (−1) a bare list is of sizes.
    bool pasteBelow(int column, const QString& text);
    // The first columns, that a hand fills one after another; the others seldom differ by row.
    [[nodiscard]] virtual int columnsTyped() const = 0;
    // What stands refused, a line each; empty where nothing is.
    [[nodiscard]] QString refusals() const;
    // Another workbook: what was refused is of the earlier one.
    void forget();
    // Shows what the record holds now.
    void refresh();

signals:
    void refusalsChanged();

protected:
    struct Column {
        QString head;
        QString name; // "size": for undo steps and screen readers
        QString hint; // in an empty cell
        bool figure = true;
    };
    [[nodiscard]] Document& document() const { return m_document; }
    [[nodiscard]] const FitRecord& record() const { return m_document.workbook().fit; }

    [[nodiscard]] virtual int count() const = 0;
    [[nodiscard]] virtual std::string idOf(int row) const = 0;
    [[nodiscard]] virtual QString nameOf(int row) const = 0; // "piston 3"
    [[nodiscard]] virtual QString pieceName() const = 0;     // "piston"
    [[nodiscard]] virtual int columnsWanted() const = 0;
    // Where a list of one figure a line belongs.
    [[nodiscard]] virtual int columnOfList() const = 0;
    [[nodiscard]] virtual Column column(int column) const = 0;
    [[nodiscard]] virtual QString textAt(int row, int column) const = 0;
    // Where a cell's hint depends on its row.
    [[nodiscard]] virtual QString hintAt(int row, int column) const;
    // What is typed of the next piece already but is not enough to make it one.
    [[nodiscard]] virtual QString textOfNew(int) const { return {}; }
    // Writes a cell into a record that has that row. An empty text means "not given".
    [[nodiscard]] virtual Result<void> put(FitRecord& fit, int row, int column,
                                           const QString& text) const = 0;
    virtual void append(FitRecord& fit) const = 0;
    virtual void erase(FitRecord& fit, int row) const = 0;
    [[nodiscard]] virtual int countIn(const FitRecord& fit) const = 0;

private:
    struct Draft {
        QString text;
        QString why;
    };
    using Place = std::pair<std::string, int>; // id of the piece (empty = the last row), column

    [[nodiscard]] Place placeOf(const QModelIndex& index) const;
    // By the record, which is ahead of what is shown while rows come and go.
    [[nodiscard]] bool isLast(int row) const { return row >= count(); }
    [[nodiscard]] Result<void> putInto(FitRecord& fit, int row, int column,
                                       const QString& text) const;
    [[nodiscard]] Result<void> putLine(FitRecord& fit, int row, int column,
                                       const QString& line) const;
    [[nodiscard]] QString placeName(const std::string& id, int column) const;
    [[nodiscard]] QString spoken(const QModelIndex& index) const;
    void keepDraft(const QModelIndex& index, const QString& text, const Error& error);
    void dropDraft(const QModelIndex& index);
    void handOnDrafts(int row);
    void forgetLostDrafts();

    Document& m_document;
    int m_pieces = 0;
    int m_columns = 0;
    std::map<Place, Draft> m_drafts;
    QString m_pasteRefused;
};

} // namespace borewright
