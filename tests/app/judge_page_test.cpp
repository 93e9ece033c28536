// SPDX-License-Identifier: GPL-3.0-or-later
// The Judge page with its real widgets, on the demonstrations.
#include "app/judge/judge_page.h"
#include "app/judge/judge_words.h"
#include "app/judge/verdict_model.h"
#include "app/judge/verdict_text.h"
#include "tests/support/bench_context.h"
#include "tests/support/demo_scenarios.h"

#include <QAbstractItemModelTester>
#include <QComboBox>
#include <QLabel>
#include <QSignalSpy>
#include <QTabWidget>
#include <QTableView>
#include <QTest>

#include <gtest/gtest.h>

namespace borewright {
namespace {

class Judging : public testing::Test {
protected:
    Judging()
        : bench(demo::saltmarsh()) {
        bench.selection.setSurvey("s1");
    }
    std::string cell(const VerdictModel& model, int row, int column) {
        return model.data(model.index(row, column), Qt::DisplayRole).toString().toStdString();
    }
    std::string next() {
        return judge_words::nextStep(bench.document.workbook(),
                                     findResult(bench.document.results(), bench.selection.survey()),
                                     bench.document.units())
            .toStdString();
    }
    test::Bench bench;
};

TEST_F(Judging, TheModelKeepsItsPromises) {
    VerdictModel model(bench.document, bench.selection);
    const QAbstractItemModelTester tester(&model,
                                          QAbstractItemModelTester::FailureReportingMode::Fatal);
    for (const char* survey : {"s2", "s3", "s4", "s1"}) {
        bench.selection.setSurvey(survey);
        model.refresh();
        EXPECT_EQ(model.rowCount(), 6);
    }
    bench.document.open(emptyWorkbook());
    model.refresh();
    EXPECT_EQ(model.rowCount(), 0);
    bench.document.open(demo::rushmere());
    model.refresh();
    EXPECT_EQ(model.rowCount(), 3);
}

TEST_F(Judging, ARowSaysWhatTheBoreIs) {
    const VerdictModel model(bench.document, bench.selection);
    EXPECT_EQ(cell(model, 3, columns::bore), "4");
    EXPECT_EQ(cell(model, 3, columns::verdict), "outside");
    EXPECT_EQ(cell(model, 3, columns::largest), "3.4243");
    EXPECT_EQ(cell(model, 3, columns::outOfRound), "1.9");
    EXPECT_EQ(cell(model, 3, columns::taper), "3.5");
    const QString said =
        model.data(model.index(3, columns::largest), Qt::AccessibleTextRole).toString();
    EXPECT_EQ(said.toStdString(),
              "Bore 4: largest 3.4243 in ± 0.26 thou at 0.60 in on B; allowed ≤ 3.4240: outside, "
              "1 chance in 120 that it is within after all; 0.21 thou kept from the limit");
}

TEST_F(Judging, UnitsChangeOnlyWhatIsShown) {
    VerdictModel model(bench.document, bench.selection);
    const Workbook before = bench.document.workbook();
    bench.document.setUnits(DisplayUnits::metric());
    model.refresh();
    EXPECT_EQ(cell(model, 3, columns::largest), "86.977") << "3.4243 in is 86.97722 mm";
    EXPECT_TRUE(bench.document.workbook() == before);
}

TEST_F(Judging, TheTableIsCopiedWithItsHeads) {
    const VerdictModel model(bench.document, bench.selection);
    const QString text = model.asText();
    EXPECT_EQ(text.count('\n'), 7) << "a head and six bores";
    EXPECT_TRUE(text.contains("largest, in ± thou ≤ 3.4240")) << text.toStdString();
}

TEST_F(Judging, ChoosingARowChoosesTheBoreEverywhere) {
    JudgePage page(bench.context());
    auto* table = page.findChild<QTableView*>();
    table->setCurrentIndex(table->model()->index(3, 0));
    EXPECT_EQ(bench.selection.bore(), 4);
    bench.selection.setBore(2);
    EXPECT_EQ(table->currentIndex().row(), 1);
}

TEST_F(Judging, EnterLeadsToTheReadingThatEarnsTheCell) {
    JudgePage page(bench.context());
    const QSignalSpy spy(&page, &JudgePage::goToReading);
    auto* table = page.findChild<QTableView*>();
    table->setCurrentIndex(table->model()->index(3, columns::largest));
    QTest::keyClick(table, Qt::Key_Return);
    EXPECT_EQ(spy.count(), 1);
    ASSERT_TRUE(bench.selection.station());
    EXPECT_TRUE(*bench.selection.station() == demo::at(4, "0.60", "B"));
}

TEST_F(Judging, TheSurveyIsChosenByKeys) {
    JudgePage page(bench.context());
    auto* surveys = page.findChild<QComboBox*>();
    ASSERT_EQ(surveys->count(), 4);
    EXPECT_EQ(surveys->currentText().toStdString(), "as found");
    QTest::keyClick(surveys, Qt::Key_Down);
    EXPECT_EQ(bench.selection.survey(), "s2");
    auto* table = page.findChild<QTableView*>();
    EXPECT_FALSE(table->isColumnHidden(columns::toGo)) << "honing: there is something to go";
}

TEST_F(Judging, TheFirstLineSaysWhatToDoNext) {
    EXPECT_EQ(next().substr(0, 33), "Look again at bore 2, 1.20 in, A:") << next();
    bench.selection.setSurvey("s4");
    EXPECT_EQ(next(), "Everything that was measured is within: the sheet can be printed.");
    bench.document.open(emptyWorkbook());
    EXPECT_EQ(next(), "Describe the block first, on the Block page.");
}

TEST_F(Judging, APlateOnOneSideOnlyIsSaid) {
    EXPECT_TRUE(judge_words::plateWarning(bench.document.workbook(), "s4").isEmpty());
    Workbook workbook = demo::saltmarsh();
    workbook.surveys.back().header.plate = true;
    const QString warning = judge_words::plateWarning(workbook, "s4");
    EXPECT_TRUE(warning.contains("as found")) << warning.toStdString();
    EXPECT_TRUE(warning.contains("torque plate")) << warning.toStdString();
}

TEST_F(Judging, EveryControlHasAName) {
    JudgePage page(bench.context());
    EXPECT_FALSE(page.findChild<QTableView*>()->accessibleName().isEmpty());
    EXPECT_FALSE(page.findChild<QComboBox*>()->accessibleName().isEmpty());
    EXPECT_FALSE(page.findChild<QTabWidget*>()->accessibleName().isEmpty());
}

} // namespace
} // namespace borewright
