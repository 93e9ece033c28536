// SPDX-License-Identifier: GPL-3.0-or-later
// Every job of the shop: what is typed narrows the list, a head sorts it, Enter opens the workbook.
#pragma once

#include "app/jobs/jobs_model.h"
#include "app/jobs/ledger_clerk.h"

#include <QWidget>

class QCheckBox;
class QComboBox;
class QLabel;
class QLineEdit;
class QStackedLayout;
class QTableView;

namespace borewright {

class JobsList : public QWidget {
    Q_OBJECT
public:
    JobsList(LedgerClerk& clerk, LedgerSettingsStore& settings, QWidget* parent = nullptr);

    // Asks the ledger anew; the chosen job stays chosen where it is still found.
    void refresh();
    // Why nothing is listed, in place of the list; empty: the list says itself.
    void setObstacle(const QString& sentence);
    [[nodiscard]] LedgerQuestion question() const;
    void focusFilter();
    // Whether the chosen job is among the first, so that a refresh moves nothing away.
    [[nodiscard]] bool isNearTop() const;

signals:
    void openAsked(const QString& file);
    void exportAsked();

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    void build();
    QLayout* makeHead();
    QLayout* makeFoot();
    void connectParts();
    void ask(bool keepsPlace);
    void show(int count, std::vector<LedgerRow> rows, bool keepsPlace);
    void askPage(int page);
    void sortBy(int column);
    void showSort();
    void showPlace();
    void openCurrent();
    void followUnits();

    LedgerClerk& m_clerk;
    LedgerSettingsStore& m_settings;
    LedgerColumn m_sort = LedgerColumn::opened;
    bool m_descending = true;
    std::uint64_t m_answer = 0; // counts answers: a page of an earlier one is stale
    bool m_asked = false;       // the list is not yet what was asked for
    bool m_openNext = false;    // Enter was pressed meanwhile
    JobsModel* m_model;
    QLineEdit* m_filter;
    QComboBox* m_sortedBy;
    QCheckBox* m_down;
    QComboBox* m_units;
    QLabel* m_count;
    QStackedLayout* m_stack;
    QTableView* m_table;
    QLabel* m_empty;
    QLabel* m_place;
};

} // namespace borewright
