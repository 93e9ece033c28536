// SPDX-License-Identifier: GPL-3.0-or-later
// Blocks of cells: copying out, pasting from a spreadsheet, filling down, striking out. Each is one
// undo step, and a block with one wrong cell is refused whole.
#pragma once

#include "app/measure/grid_model.h"

#include <QItemSelection>

namespace borewright {

// The rectangle round a selection; invalid where nothing is selected.
struct CellBlock {
    int top = -1, left = -1, bottom = -1, right = -1;
    [[nodiscard]] bool valid() const { return top >= 0; }
};
CellBlock blockOf(const QModelIndexList& selected);

// As typed, tabs between columns, a line a row.
QString copied(const GridModel& model, const CellBlock& block);

// Readings for `text` (tabs between columns) with its first cell at `at`; empty cells and dashes
// leave what is there. Refuses, naming row and column of the block, the first cell that cannot be
// a reading, that has no wall, or that lies outside the grid.
Result<Edit> pasteEdit(const PageContext& context, const GridModel& model, Unit unit,
                       const QModelIndex& at, const QString& text);

// The topmost cell of each column of the block typed into the cells below it.
Result<Edit> fillEdit(const PageContext& context, const GridModel& model, Unit unit,
                      const CellBlock& block);

} // namespace borewright
