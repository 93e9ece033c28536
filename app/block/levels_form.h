// SPDX-License-Identifier: GPL-3.0-or-later
// The table of levels with what can be done to it.
#pragma once

#include "app/block/levels_model.h"

#include <QLabel>
#include <QTableView>

namespace borewright {

class LevelsForm : public QWidget {
    Q_OBJECT
public:
    explicit LevelsForm(BoreScope& scope, QWidget* parent = nullptr);
    [[nodiscard]] QTableView* table() const { return m_table; }

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void setUpTable();
    QWidget* makeButtons();
    void removeChosen();
    void turnJudged(const QModelIndex& index);
    void fit();

    LevelsModel* m_model;
    QTableView* m_table;
    QLabel* m_refusal;
};

} // namespace borewright
