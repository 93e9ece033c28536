// SPDX-License-Identifier: GPL-3.0-or-later
// The stones of this job: the list with what was learned of each, one of them to be changed, what
// was done to it, and the shop's own drawer of stones.
#pragma once

#include "app/context/page_context.h"
#include "app/fit/text_table.h"
#include "app/hone/hone_search.h"

#include <QComboBox>
#include <QLabel>
#include <QPushButton>
#include <QWidget>

namespace borewright {

class StoneForm;

class StonesTab : public QWidget {
    Q_OBJECT
public:
    StonesTab(const PageContext& context, const HoneSearch& search, QWidget* parent = nullptr);
    void refresh(bool anew);
    void addUsual();

private:
    QWidget* buildButtons();
    QWidget* buildCare();
    QWidget* buildDrawer();
    void choose(int row);
    [[nodiscard]] const Stone* chosen() const;
    [[nodiscard]] std::vector<TextModel::Cell> rowOf(const Stone& stone) const;
    void showDrawer();
    void addOne();
    void takeOff();
    void care(StoneCare::Kind kind, const QString& step);
    void takeFromDrawer();
    void putIntoDrawer();
    void followDone(const Result<void>& done);

    PageContext m_context;
    const HoneSearch& m_search;
    TextTable* m_table;
    StoneForm* m_form;
    QLabel* m_learned;
    QLabel* m_refusal;
    QPushButton* m_takeOff = nullptr;
    QLabel* m_stays = nullptr;           // why not
    std::vector<QPushButton*> m_ofStone; // act on the chosen one
    QComboBox* m_drawer = nullptr;
    QPushButton* m_fromDrawer = nullptr;
    std::string m_stone; // id of the chosen one
};

} // namespace borewright
