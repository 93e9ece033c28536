// SPDX-License-Identifier: GPL-3.0-or-later
// The rest of the plan, what it could be instead at what price, how he wants it planned, and what
// was learned and expected against what was found.
#pragma once

#include "app/context/page_context.h"
#include "app/hone/hone_search.h"

#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QWidget>

namespace borewright {

class PlanTab : public QWidget {
    Q_OBJECT
public:
    PlanTab(const PageContext& context, HoneSearch& search, QWidget* parent = nullptr);
    void refresh();

private:
    QWidget* buildWishes();
    void wish();
    [[nodiscard]] QString planWords(const BoreOutlook& outlook) const;
    [[nodiscard]] QString foundWords(const BoreOutlook& outlook) const;
    void showFitted();

    PageContext m_context;
    HoneSearch& m_search;
    QLabel* m_plan;
    QLabel* m_found;
    QCheckBox* m_oneStone = nullptr;
    QCheckBox* m_noShort = nullptr;
    QCheckBox* m_fewerStops = nullptr;
    QCheckBox* m_alternatives = nullptr;
    QComboBox* m_fitted = nullptr;
};

} // namespace borewright
