// SPDX-License-Identifier: GPL-3.0-or-later
// The Fit page with three bores and three pistons, for tests of its pistons' half.
#pragma once

#include "app/fit/fit_page.h"
#include "app/fit/match_table.h"
#include "app/fit/piston_model.h"
#include "app/fit/record_form.h"
#include "tests/app/form_hands.h"
#include "tests/support/bench_context.h"
#include "tests/support/blocks.h"

#include <QApplication>
#include <QToolButton>

namespace borewright::test {

// Bores of 3.5000, 3.5001, 3.5002 in, round and straight: with pistons of 3.4960, 3.4961, 3.4962
// each has 4.0 thou with the piston of its own number.
inline Workbook threeBores(SurveyKind kind) {
    Workbook workbook = inchBlock(3);
    const std::string survey = addSurvey(workbook, kind, "read");
    for (int bore = 1; bore <= 3; ++bore)
        typeShape(workbook, survey, bore,
                  [bore](double, const std::string&) { return 0.1 * (bore - 1); });
    return workbook;
}

inline Piston piston(const std::string& label, const std::string& size_in) {
    Piston piston;
    piston.id = "p" + label;
    piston.label = label;
    piston.size = typedIn(size_in);
    piston.height = typedIn("0.7");
    return piston;
}

class FitHands : public testing::Test {
protected:
    explicit FitHands(Workbook workbook = made())
        : bench(std::move(workbook))
        , page(bench.context()) {
        page.resize(1150, 740);
        page.show();
        page.activateWindow();
        EXPECT_TRUE(QTest::qWaitForWindowActive(&page));
        entry = named<RecordTable>(page, "Pistons as measured");
        matches = page.findChild<MatchView*>();
    }
    static Workbook made() {
        Workbook workbook = threeBores(SurveyKind::final);
        workbook.fit.pistons = {piston("1", "3.4960"), piston("2", "3.4961"),
                                piston("3", "3.4962")};
        workbook.fit.clearance.lower = typedThou("3.0");
        workbook.fit.clearance.upper = typedThou("5.0");
        return workbook;
    }
    const FitRecord& fit() { return bench.document.workbook().fit; }
    std::string bores() {
        std::string text;
        for (const Piston& each : fit().pistons)
            text += each.bore ? std::to_string(*each.bore) : "-";
        return text;
    }
    int steps() { return bench.document.undoStack().index(); }
    // Types into a cell as a hand does: keys over the chosen cell, then Enter.
    void typeInto(QTableView& table, int row, int column, const char* text) {
        table.setFocus();
        table.setCurrentIndex(table.model()->index(row, column));
        QTest::keyClick(&table, Qt::Key_F2);
        auto* editor = qobject_cast<QLineEdit*>(QApplication::focusWidget());
        ASSERT_NE(editor, nullptr) << "no cell is open at row " << row << ", column " << column;
        editor->selectAll();
        QTest::keyClick(editor, Qt::Key_Delete);
        QTest::keyClicks(editor, QString::fromUtf8(text));
        QTest::keyClick(editor, Qt::Key_Return);
        QApplication::processEvents();
    }
    std::string cell(int row, int column) {
        return entry->model()->index(row, column).data().toString().toStdString();
    }
    std::string says(const char* name) { return named<QLabel>(page, name)->text().toStdString(); }
    void unfold(const QString& title) {
        for (QToolButton* fold : page.findChildren<QToolButton*>())
            if (fold->accessibleName().startsWith(title)) fold->setChecked(true);
    }
    void chooseMatch(int row, int column) {
        matches->setFocus();
        matches->setCurrentIndex(matches->model()->index(row, column));
    }

    Bench bench;
    FitPage page;
    RecordTable* entry = nullptr;
    MatchView* matches = nullptr;
};

} // namespace borewright::test
