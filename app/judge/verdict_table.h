// SPDX-License-Identifier: GPL-3.0-or-later
// The view of the Judge page's table: a value's doubt in lighter ink beside it, columns that use a
// wide window, Enter and copying by keys.
#pragma once

#include <QTableView>

namespace borewright {

class VerdictModel;

class VerdictTable : public QTableView {
    Q_OBJECT
public:
    explicit VerdictTable(VerdictModel& model, QWidget* parent = nullptr);

    // Contents changed: makes the columns as wide as they need, and wider where there is room.
    void fitColumns();

signals:
    void copyWanted();
    void openWanted(const QModelIndex& index);

protected:
    void changeEvent(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void quietSelection();

    bool m_quieting = false;
};

} // namespace borewright
