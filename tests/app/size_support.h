// SPDX-License-Identifier: GPL-3.0-or-later
// The Size page on a bench, with hands: six bores as found, no sizes yet.
#pragma once

#include "app/size/damages_model.h"
#include "app/size/size_page.h"
#include "app/size/sizes_model.h"
#include "tests/app/form_hands.h"
#include "tests/support/bench_context.h"
#include "tests/support/blocks.h"
#include "tests/support/demo_scenarios.h"

#include <QTableView>

namespace borewright::test {

inline Workbook sixBores() {
    Workbook workbook = demo::correctedSaltmarsh();
    workbook.fit = {};
    workbook.sizing = {};
    workbook.targets = {};
    std::erase_if(workbook.limitSets,
                  [](const LimitSet& set) { return set.purpose == LimitPurpose::finish; });
    return workbook;
}

class Sizing : public testing::Test {
protected:
    explicit Sizing(Workbook workbook = sixBores())
        : bench(std::move(workbook))
        , page(bench.context()) {
        page.resize(1150, 720);
        page.show();
        page.activateWindow();
        EXPECT_TRUE(QTest::qWaitForWindowActive(&page));
    }
    [[nodiscard]] const SizingPlan& plan() const { return bench.document.workbook().sizing; }
    QTableView* sizes() { return named<QTableView>(page, "Sizes on offer"); }
    QTableView* damages() { return named<QTableView>(page, "Scores, pits and ring marks"); }
    QString headline() { return named<QLabel>(page, "Which size cleans up the block")->text(); }
    // Types into a cell as a hand does: choose it, type over it, Enter.
    static void typeCell(QTableView* table, int row, int column, const char* text) {
        table->setFocus();
        table->setCurrentIndex(table->model()->index(row, column));
        QTest::keyClick(table, Qt::Key_F2);
        auto* editor = table->findChild<QLineEdit*>();
        ASSERT_NE(editor, nullptr);
        editor->selectAll();
        QTest::keyClick(editor, Qt::Key_Delete);
        QTest::keyClicks(editor, QString::fromUtf8(text));
        QTest::keyClick(editor, Qt::Key_Return);
        QTest::qWait(1); // the editor goes in its own time
    }
    static QString why(const QTableView* table, int row, int column) {
        return table->model()->index(row, column).data(EntryModel::refusalRole).toString();
    }
    // What is refused at a committed field: the visible words beneath it.
    QString refusalAt(const char* name) {
        return named<QLineEdit>(page, name)->accessibleDescription();
    }
    std::vector<std::string> offered() const {
        std::vector<std::string> texts;
        for (const SizeOnOffer& size : plan().sizes)
            texts.push_back(size.oversize.withUnit());
        return texts;
    }
    void offer(std::initializer_list<const char*> oversizes) {
        SizingPlan wanted = plan();
        for (const char* text : oversizes) {
            SizeOnOffer size;
            size.oversize = typedIn(text);
            wanted.sizes.push_back(size);
        }
        EXPECT_TRUE(bench.document.edit(SetSizing{wanted}, "sizes"));
    }
    void damageBoreFour() {
        SizingPlan wanted = plan();
        Damage score;
        score.depth = typedIn("1.40");
        score.axis = "B";
        score.deep = typedThou("6");
        score.what = "score";
        wanted.bores[4].damages = {score};
        EXPECT_TRUE(bench.document.edit(SetSizing{wanted}, "score"));
    }

    Bench bench;
    SizePage page;
};

} // namespace borewright::test
