// SPDX-License-Identifier: GPL-3.0-or-later
// The doubt on screen and at the command line, on made blocks whose doubt is known.
#include "app/fields/decision_form.h"
#include "app/cli/cli.h"
#include "app/judge/doubt_page.h"
#include "app/judge/judge_page.h"
#include "app/judge/judge_words.h"
#include "app/judge/verdict_model.h"
#include "app/judge/verdict_table.h"
#include "app/judge/verdict_text.h"
#include "app/pictures/budget_bars.h"
#include "core/storage/workbook_file.h"
#include "tests/app/picture_support.h"
#include "tests/support/bench_context.h"
#include "tests/support/doubted_blocks.h"
#include "tests/support/memory_file_system.h"

#include <QLabel>
#include <QPushButton>
#include <QStackedWidget>
#include <QTableWidget>
#include <QTest>

#include <gtest/gtest.h>

#include <algorithm>
#include <sstream>

namespace borewright {
namespace {

using namespace test;

class Doubted : public testing::Test {
protected:
    explicit Doubted(Workbook workbook = wellKnownBlock())
        : bench(std::move(workbook)) {
        bench.selection.setSurvey("s1");
    }
    [[nodiscard]] const SurveyResult& survey() const {
        return *findResult(bench.document.results(), bench.selection.survey());
    }
    [[nodiscard]] std::string next() const {
        return judge_words::nextStep(bench.document.workbook(), &survey(), bench.document.units())
            .toStdString();
    }
    static std::string text(const VerdictModel& model, int row, int column, int role) {
        return model.data(model.index(row, column), role).toString().toStdString();
    }
    static bool says(const QWidget& page, const QString& part) {
        return std::ranges::any_of(page.findChildren<QLabel*>(), [&](const QLabel* label) {
            return label->text().contains(part);
        });
    }
    Bench bench;
};

TEST_F(Doubted, ACellHasItsDoubtBesideItAndInItsSentence) {
    const VerdictModel model(bench.document, bench.selection);
    EXPECT_EQ(text(model, 0, columns::largest, Qt::DisplayRole), "3.5052");
    EXPECT_EQ(text(model, 0, columns::largest, VerdictModel::doubtRole), "±0.3");
    EXPECT_EQ(text(model, 0, columns::taper, VerdictModel::doubtRole), "+0.3 −0.0")
        << "a difference is never below nothing";
    EXPECT_EQ(text(model, 0, columns::mean, VerdictModel::doubtRole).substr(0, 2), "\xC2\xB1");
    EXPECT_EQ(text(model, 1, columns::shape, Qt::DisplayRole), "bell-mouth");
    EXPECT_EQ(text(model, 2, columns::shape, Qt::DisplayRole), "V");
    const std::string taper = text(model, 1, columns::taper, Qt::ToolTipRole);
    EXPECT_NE(taper.find("too close to call, 1 chance in"), std::string::npos) << taper;
    EXPECT_NE(taper.find("kept from the limit; the gauge alone would show about 0.2"),
              std::string::npos)
        << taper;
    const std::string round = text(model, 0, columns::outOfRound, Qt::ToolTipRole);
    EXPECT_NE(round.find("no odd number of lobes; that takes a roundness machine"),
              std::string::npos)
        << round;
    EXPECT_TRUE(model.asText().contains("±, thou")) << "a doubt has its own column when copied";
}

TEST_F(Doubted, TheOneThingToDoIsSaid) {
    EXPECT_NE(next().find("Bore 2 is too close to call. Three readings at each station "
                          "would settle it"),
              std::string::npos)
        << next();
    JudgePage page(bench.context());
    EXPECT_TRUE(says(page, "Called with 5 % risk"));
    bench.selection.setBore(2);
    EXPECT_TRUE(says(page, "Bore 2: Bell-mouth")) << "the chosen bore's shape";
    EXPECT_TRUE(says(page, "Too close to call: three readings at each station"));
    bench.selection.setBore(3);
    EXPECT_TRUE(says(page, "Bore 3: V, 1.7"));
}

TEST_F(Doubted, WithoutGearEverythingIsAsItWasAndItIsSaid) {
    SurveyHeader header = bench.document.workbook().surveys[0].header;
    header.gauge.gear = {};
    Workbook workbook = bench.document.workbook();
    workbook.surveys[0].header = header;
    bench.document.open(workbook);
    bench.selection.setSurvey("s1");
    JudgePage page(bench.context());
    auto* table = page.findChild<VerdictTable*>();
    EXPECT_TRUE(table->isColumnHidden(columns::shape));
    EXPECT_TRUE(says(page, "Doubt not known: values compared as they stand."));
    const VerdictModel model(bench.document, bench.selection);
    EXPECT_EQ(text(model, 0, columns::largest, VerdictModel::doubtRole), "");
    EXPECT_EQ(text(model, 1, columns::verdict, Qt::DisplayRole), "within");
    EXPECT_FALSE(model.asText().contains("±"));
    const DoubtPage doubt(bench.document, bench.selection);
    EXPECT_TRUE(
        says(doubt, "not entered is the gauge's repeatability and the doubt of the master"));
    EXPECT_TRUE(says(doubt, "on the Measure page")) << "where to enter it";
}

TEST_F(Doubted, TheColumnsFitAndUseAWideWindow) {
    JudgePage page(bench.context());
    auto* table = page.findChild<VerdictTable*>();
    const auto widthAt = [&](int width) {
        page.resize(width, 740);
        page.show();
        QTest::qWait(1);
        int sum = 0;
        for (int column = 0; column < columns::count; ++column)
            sum += table->columnWidth(column);
        return sum;
    };
    const int narrow = widthAt(1150);
    EXPECT_LE(narrow, table->viewport()->width()) << "columns beside the pages of a 1280 window";
    EXPECT_GT(widthAt(1790), narrow + 100) << "a wide window is used";
}

TEST_F(Doubted, TheBudgetIsBarsOrATable) {
    DoubtPage page(bench.document, bench.selection);
    EXPECT_TRUE(says(page, "One diameter ± 0.2"));
    EXPECT_TRUE(says(page, "What would help most"));
    auto* sources = page.findChild<QStackedWidget*>();
    EXPECT_EQ(sources->currentIndex(), 0);
    page.findChild<QPushButton*>()->click();
    EXPECT_EQ(sources->currentIndex(), 1);
    auto* table = page.findChild<QTableWidget*>();
    EXPECT_EQ(table->rowCount(), static_cast<int>(survey().doubts.budget.lines.size()));
    EXPECT_EQ(table->item(0, 0)->text().toStdString(), "repeatability of a reading");
    EXPECT_EQ(table->item(0, 2)->text().toStdString(), "0.080 thou");
    EXPECT_EQ(table->item(0, 7)->text().toStdString(), "∞");
    EXPECT_TRUE(says(page, "effective degrees of freedom"));
}

TEST_F(Doubted, BarsAreFoldedRatherThanClipped) {
    const BudgetBarsData data = budgetBarsData(survey().doubts.budget, bench.document.units());
    ASSERT_GE(data.bars.size(), 5U);
    for (const int height : {150, 400}) {
        TextLog log;
        PictureStyle style = styleOf(false);
        style.log = &log;
        QImage image(560, height, QImage::Format_RGB32);
        QPainter painter(&image);
        paintBudgetBars(painter, QRectF(4, 4, 552, height - 8), data, style);
        for (const DrawnText& text : log) {
            EXPECT_LE(text.ink.bottom(), height - 4) << text.text.toStdString();
            EXPECT_FALSE(text.text.contains(QChar(0x2026))) << text.text.toStdString();
        }
        const bool folded = std::ranges::any_of(
            log, [](const DrawnText& text) { return text.text.contains("together"); });
        EXPECT_EQ(folded, height == 150);
    }
    const QString said = describeBudgetBars(data);
    EXPECT_TRUE(said.contains("repeatability of a reading: 0.08 own")) << said.toStdString();
    EXPECT_TRUE(said.contains("the master it was set on: 0.03 shared") ||
                said.contains("the master it was set on: 0.02 shared"))
        << said.toStdString();
}

class Warm : public Doubted {
protected:
    Warm()
        : Doubted(warmBlock()) {}
};

TEST_F(Warm, TheWarmBlockIsWarnedOfAndTheWayOutIsNamed) {
    const DoubtPage page(bench.document, bench.selection);
    EXPECT_TRUE(says(page, "warmer than the master"));
    EXPECT_NE(next().find("Bore 1 is too close to call."), std::string::npos) << next();
}

TEST(DecisionRules, AreChosenAndRefusedAtTheField) {
    DecisionRule kept;
    DecisionForm form([&](const DecisionRule& rule) -> Result<void> {
        kept = rule;
        return {};
    });
    form.show();
    auto* box = form.findChild<QComboBox*>();
    QTest::keyClick(box, Qt::Key_End);
    EXPECT_EQ(kept.kind, DecisionRule::Kind::own);
    auto* own = form.findChild<CommittedField*>();
    EXPECT_TRUE(own->isVisibleTo(&form));
    const double before = kept.ownPercent;
    for (const char* bad : {"0", "-1", "51", "five", ""}) {
        own->lineEdit()->setText(bad);
        EXPECT_FALSE(own->commitNow()) << bad;
        EXPECT_FALSE(own->refusal().isEmpty()) << bad;
    }
    EXPECT_EQ(kept.ownPercent, before);
    own->lineEdit()->setText("2,5 %");
    EXPECT_TRUE(own->commitNow()) << own->refusal().toStdString();
    EXPECT_EQ(kept.ownPercent, 2.5);
}

class StandingAt final : public Clock {
public:
    [[nodiscard]] Timestamp now() const override { return {1'774'000'000, 60}; }
};

TEST(CheckCommand, PrintsTheDoubtAndWhatSettles) {
    MemoryFileSystem files;
    files.makeFolder("/shop");
    Workbook workbook = wellKnownBlock();
    files.put("/shop/six.borebook", writeWorkbook(workbook));
    const StandingAt clock;
    std::ostringstream out, err;
    const auto run = [&](const std::string& survey) {
        out.str({});
        return runCommand({"check", "/shop/six.borebook", "--survey", survey},
                          {files, clock, out, err});
    };
    EXPECT_EQ(run("s2"), exitUndecided) << "too close to call is 2, as the manual page says";
    EXPECT_NE(out.str().find("Bore 5, too close to call: "), std::string::npos)
        << out.str();
    EXPECT_EQ(run("s1"), exitOutside);
    for (const char* part : {"largest, in ± thou", "3.5052 ±0.3", "bell-mouth",
                             "One diameter ± 0.2", "Called with 5 % risk",
                             "Bore 2, too close to call: three readings at each station"})
        EXPECT_NE(out.str().find(part), std::string::npos) << part << " is not in\n" << out.str();
    workbook.surveys[1].header.gauge.gear = {};
    files.put("/shop/six.borebook", writeWorkbook(workbook));
    EXPECT_EQ(run("s2"), exitWithin) << "with no doubt known the limit itself is within";
    EXPECT_NE(out.str().find("Doubt not known"), std::string::npos) << out.str();
}

} // namespace
} // namespace borewright
