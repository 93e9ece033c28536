// SPDX-License-Identifier: GPL-3.0-or-later
// The grid on screen: arrows and Enter as in a spreadsheet, blocks by the clipboard.
#pragma once

#include "app/measure/grid_model.h"

#include <QTableView>

namespace borewright {

class GridView : public QTableView {
    Q_OBJECT
public:
    GridView(const PageContext& context, EntryWalk& walk, QWidget* parent = nullptr);
    [[nodiscard]] GridModel& gridModel() { return m_model; }
    void setShowing(GridModel::Showing showing);

    // Each is one undo step; a refusal is told by refused().
    void copy();
    void paste();
    void fillDown();
    // Asks (askStrike) for the reason to strike out what is selected.
    void strikeSelected();
    [[nodiscard]] std::vector<Station> selectedStations() const;

signals:
    void refused(const QString& why);
    void odd(const QString& why);
    void done(const QString& what); // "Pasted 12 readings"
    void askStrike(int readings);

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void closeEditor(QWidget* editor, QAbstractItemDelegate::EndEditHint hint) override;

private:
    void setUpLook();
    void fitColumns();
    void setAllWidths(int width);
    void widenForLastKept();
    void move(int rows, int columns);
    void commitAndMove(QWidget* editor, int rows, int columns);
    void followSelection();
    void tellSelection(const QModelIndex& current);
    void run(const Result<Edit>& edit, const QString& name, const QString& told);

    PageContext m_context;
    EntryWalk& m_walk;
    GridModel m_model;
    bool m_following = false;  // the shared selection is moving this view, not the user
    bool m_committing = false; // a cell is being kept: the walk moves on, this view does not follow
};

} // namespace borewright
