// SPDX-License-Identifier: GPL-3.0-or-later
// One pair of bore and piston: what the swap would cost, and the clearance across by depth.
#pragma once

#include "app/document/document.h"

#include <QLabel>
#include <QModelIndex>
#include <QWidget>

namespace borewright {

class MatchModel;
class TextTable;

class PairPanel : public QWidget {
    Q_OBJECT
public:
    PairPanel(const Document& document, const MatchModel& model, QWidget* parent = nullptr);
    void show(const QModelIndex& index);
    using QWidget::show;

private:
    void showDepths(const Clearance* clearance);

    const Document& m_document;
    const MatchModel& m_model;
    QLabel* m_title;
    QLabel* m_cost;
    QLabel* m_words;
    TextTable* m_depths;
};

} // namespace borewright
