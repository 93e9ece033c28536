// SPDX-License-Identifier: GPL-3.0-or-later
// The survey as a grid: depths down the side with the open end at the top, bores × axes across.
// Editing a cell becomes one edit of the document; the model itself keeps nothing.
#pragma once

#include "app/context/page_context.h"
#include "app/measure/entry_walk.h"

#include <QAbstractTableModel>

#include <map>
#include <memory>
#include <vector>

namespace borewright {

class GridModel : public QAbstractTableModel {
    Q_OBJECT
public:
    // What the cells show.
    enum class Showing { readings, sizes, toGo };
    // What a cell is, for its painting.
    enum Role {
        stateRole = Qt::UserRole, // int(State)
        oddRole,                  // bool
        repeatsRole,              // int
        judgedRole,               // bool
        boreRole,                 // int, the bore of a column
    };
    enum class State { waiting, read, noWall, notAsked };

    GridModel(const PageContext& context, EntryWalk& walk, QObject* parent = nullptr);

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;
    // Keeps what was typed over a cell; false with a refusal told by refused().
    bool setData(const QModelIndex& index, const QVariant& value, int role) override;

    void setShowing(Showing showing);
    [[nodiscard]] Showing showing() const { return m_showing; }

    [[nodiscard]] Station stationAt(int row, int column) const;
    [[nodiscard]] QModelIndex indexOf(const Station& station) const;
    [[nodiscard]] const StationResult* resultAt(int row, int column) const;
    // As typed, in the entry unit if it was typed in it, else with its unit: for editing, copying.
    [[nodiscard]] QString typedAt(int row, int column) const;
    [[nodiscard]] std::string survey() const { return m_survey; }

signals:
    void refused(const QString& why);
    void odd(const QString& why);

private:
    struct Column {
        int bore;
        std::string axis;
    };
    struct Cell {
        // Of its own: results are computed anew when doubts settle or a sheet is printed.
        std::shared_ptr<const StationResult> result;
        std::vector<const Reading*> readings; // unstruck
        std::vector<const Reading*> struck;
    };
    void rebuild(bool shapeMayDiffer);
    void layOut(std::vector<Length>& depths, std::vector<Column>& columns) const;
    void fillCells();
    [[nodiscard]] const Cell& cellAt(int row, int column) const;
    [[nodiscard]] State stateAt(int row, int column) const;
    [[nodiscard]] QString shown(int row, int column) const;
    [[nodiscard]] QString told(int row, int column) const; // tool tip and description in words

    PageContext m_context;
    EntryWalk& m_walk;
    Showing m_showing = Showing::readings;
    std::string m_survey;
    std::vector<Length> m_depths;
    std::vector<Column> m_columns;
    std::vector<Cell> m_cells; // row by row; points into the document's workbook and results
};

} // namespace borewright
