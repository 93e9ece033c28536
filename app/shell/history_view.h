// SPDX-License-Identifier: GPL-3.0-or-later
// Who changed what in the open workbook, and which sheets were printed. It stands beside the window
// and follows it; nothing is changed here.
#pragma once

#include "app/shell/history_model.h"
#include "app/shell/workshop.h"

#include <QDialog>
#include <QTimer>

class QLabel;
class QLineEdit;
class QPushButton;
class QTableView;

namespace borewright {

class HistoryView : public QDialog {
    Q_OBJECT
public:
    HistoryView(Workshop& workshop, QWidget* parent);

    [[nodiscard]] const HistoryModel& model() const { return m_model; }
    // What is said above the table.
    [[nodiscard]] QString told() const;

private:
    void build();
    void read();
    void take(HistoryModel::Prepared lines);
    void tell();
    void copy();
    void saveCsv();

    Workshop& m_workshop;
    HistoryModel m_model;
    QTimer m_soon; // after a change: fast typing does not read it at each key
    bool m_reading = false;
    bool m_readOnce = false;
    QString m_written; // what became of the CSV file
    QLineEdit* m_filter;
    QLabel* m_sentence;
    QTableView* m_table;
    QPushButton* m_csv;
};

} // namespace borewright
