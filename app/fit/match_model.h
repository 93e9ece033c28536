// SPDX-License-Identifier: GPL-3.0-or-later
// Bore × piston: the least clearance of each pair and how far it misses the aim. Shows the results
// and computes nothing.
#pragma once

#include "app/document/document.h"

#include <QAbstractTableModel>

namespace borewright {

class MatchModel final : public QAbstractTableModel {
    Q_OBJECT
public:
    enum Role {
        missRole = Qt::UserRole, // "0.1"
        verdictRole,             // Verdict, as a whole number
        chosenRole,
        fixedRole,    // by the user
        anyFixedRole, // some pair is: room for pins is needed
        spareRole,    // of a column's head: what stands on its second line
    };
    explicit MatchModel(const Document& document, QObject* parent = nullptr);

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation,
                                      int role) const override;

    [[nodiscard]] const Matching& matching() const;
    [[nodiscard]] const MatchCell* cellAt(const QModelIndex& index) const; // null where none
    [[nodiscard]] int boreAt(int row) const;
    [[nodiscard]] std::size_t pistonAt(int column) const; // place in the record
    [[nodiscard]] bool isChosen(const QModelIndex& index) const;
    [[nodiscard]] bool isFixed(const QModelIndex& index) const;
    // The cell chosen for a bore; invalid where there is none.
    [[nodiscard]] QModelIndex chosenFor(int bore) const;
    void refresh();

private:
    const Document& m_document;
    int m_rows = 0;
    int m_columns = 0;
};

} // namespace borewright
