// SPDX-License-Identifier: GPL-3.0-or-later
// All jobs found, however many: rows are asked for a page at a time, as they come into sight.
#pragma once

#include "app/jobs/ledger_settings.h"
#include "app/ledger/ledger_store.h"

#include <QAbstractTableModel>
#include <QPalette>

#include <map>
#include <set>
#include <vector>

namespace borewright {

class JobsModel final : public QAbstractTableModel {
    Q_OBJECT
public:
    static constexpr int pageRows = 200;
    // As they stand from left to right.
    static const std::vector<LedgerColumn>& columns();
    static QString nameOf(LedgerColumn column);

    using QAbstractTableModel::QAbstractTableModel;

    // Another answer: how many there are, and the first page of them.
    void begin(int count, std::vector<LedgerRow> first);
    // A page that was wanted; one of an earlier answer must not come here.
    void setPage(int page, std::vector<LedgerRow> rows);
    void setUnits(LedgerSettings::Units units);
    void setPalette(const QPalette& palette);
    // What the row shows, if it has come; valid until the next change.
    [[nodiscard]] const LedgerRow* rowAt(int row) const;
    // The row of this file among those that have come; −1 = none.
    [[nodiscard]] int rowOf(const std::string& file) const;

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation,
                                      int role) const override;

signals:
    // Rows of this page are looked at and have not come yet; told once.
    void pageWanted(int page) const;

private:
    [[nodiscard]] QString textOf(const LedgerRow& job, LedgerColumn column) const;
    [[nodiscard]] QString toolTipOf(const LedgerRow& job, LedgerColumn column) const;
    [[nodiscard]] DisplayUnits unitsOf(const LedgerRow& job) const;

    int m_count = 0;
    std::map<int, std::vector<LedgerRow>> m_pages;
    mutable std::set<int> m_wanted;
    LedgerSettings::Units m_units{};
    QPalette m_palette;
};

} // namespace borewright
