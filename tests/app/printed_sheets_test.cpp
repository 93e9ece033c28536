// SPDX-License-Identifier: GPL-3.0-or-later
// A sheet once printed is printed again exactly, whatever was changed since; and its code tells
// which sheet it is.
#include "app/sheet/printed_sheets.h"
#include "app/sheet/sheet_page.h"
#include "core/storage/workbook_file.h"
#include "tests/app/sheet_texts.h"
#include "tests/support/bench_context.h"
#include "tests/support/blocks.h"
#include "tests/support/demo_scenarios.h"

#include <QComboBox>
#include <QLabel>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QTemporaryDir>
#include <QTest>

#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;
using Says = CodeAnswer::Says;

QStringList pagesOf(const SheetData& data, Preferences::Paper paper = Preferences::Paper::a4) {
    QStringList pages;
    for (const TextLog& page : textsOf(data, paper))
        pages << said(page);
    return pages;
}

class PrintedSheets : public testing::Test {
protected:
    PrintedSheets()
        : bench(demo::saltmarsh()) {
        bench.document.setPerson("A. Example");
        Preferences shop;
        shop.shopName = "Harbour Lane Engine Works (invented)";
        shop.shopAddress = "3 Harbour Lane\nSaltmarsh";
        bench.preferences.set(shop);
    }
    SheetData print() {
        Document& document = bench.document;
        const SheetData data =
            sheetData(document.workbook(), document.settledResults(), bench.preferences.value(),
                      document.units(), document.now());
        document.noteSheet(
            printedSheet(document.workbook(), data, bench.preferences.value(), document.units()));
        return data;
    }
    void change(const Edit& edit, const char* name) {
        const auto done = bench.document.edit(edit, QString::fromUtf8(name));
        ASSERT_TRUE(done) << done.error().message();
    }
    // Of every kind: what a bench does to a workbook over the years.
    void changeMuch() {
        const Workbook& workbook = bench.document.workbook();
        Job job = workbook.job;
        job.customer = "B. Example";
        change(SetJob{job}, "customer");
        std::vector<LimitSet> sets = workbook.limitSets;
        sets.front().limits.taper = typed("0.1", Unit::thou);
        change(SetLimitSets{sets}, "limits");
        change(SetStraightAim{typed("9", Unit::thou)}, "aim");
        SurveyHeader header = workbook.surveys.front().header;
        header.gauge.setSize = typed("3.45", Unit::inch);
        change(SetSurveyHeader{header.id, header}, "gauge");
        const std::string last = workbook.surveys.back().header.id;
        change(SetStrike{last, 0, Strike{"slip", bench.document.now(), {}}}, "strike");
        Reading reading = workbook.surveys.back().readings.front();
        reading.struck.reset();
        change(InsertReading{last, workbook.surveys.back().readings.size(), reading}, "reading");
        change(SetSheetText{{"Nothing of note.", {}}}, "sentences");
        Survey survey = workbook.surveys.back();
        survey.header.id = freshSurveyId(workbook);
        survey.header.name = "years later";
        change(InsertSurvey{workbook.surveys.size(), survey}, "survey");
    }
    Result<CodeAnswer> ask(const SheetData& data) const {
        return askForCode(bench.document.workbook(), data.code.toStdString());
    }

    Bench bench;
};

TEST_F(PrintedSheets, AreMadeAgainTextForTextAndWithTheSameCode) {
    const SheetData first = print();
    changeMuch();
    bench.document.setUnits(DisplayUnits::metric());
    bench.preferences.set({}); // the shop has another name by now, or none
    const SheetData second = print();
    ASSERT_NE(second.code, first.code);
    changeMuch();
    // From the file, as it is found again.
    const auto read = readWorkbook(writeWorkbook(bench.document.workbook()));
    ASSERT_TRUE(read) << read.error().message();
    const auto places = printedSheets(*read);
    ASSERT_EQ(places.size(), 2U);
    const auto again = sheetOfThen(*read, places[1], bench.preferences.value());
    ASSERT_TRUE(again) << again.error().message();
    EXPECT_FALSE(again->reworded);
    EXPECT_EQ(again->data.code, first.code);
    EXPECT_EQ(pagesOf(again->data), pagesOf(first));
    const auto later = sheetOfThen(*read, places[0], bench.preferences.value());
    ASSERT_TRUE(later) << later.error().message();
    EXPECT_EQ(later->data.code, second.code);
    EXPECT_EQ(pagesOf(later->data), pagesOf(second));
    EXPECT_TRUE(later->units == DisplayUnits::metric());
}

TEST_F(PrintedSheets, TheirCodeTellsWhatTheyAre) {
    const SheetData first = print();
    auto answer = ask(first);
    ASSERT_TRUE(answer);
    EXPECT_EQ(answer->says, Says::asNow);
    changeMuch();
    answer = ask(first);
    ASSERT_TRUE(answer);
    EXPECT_EQ(answer->says, Says::earlier);
    ASSERT_TRUE(answer->then);
    EXPECT_TRUE(answer->broken.empty()) << answer->broken;
    Workbook begun = demo::saltmarsh();
    EXPECT_TRUE(*answer->then == begun);
    const auto foreign = askForCode(inchBlock(2), first.code.toStdString());
    ASSERT_TRUE(foreign);
    EXPECT_EQ(foreign->says, Says::none);
}

TEST_F(PrintedSheets, ChangedBackItIsTheSheetAsItStandsNow) {
    const SheetData first = print();
    Job job = bench.document.workbook().job;
    const Job before = job;
    job.customer = "B. Example";
    change(SetJob{job}, "customer");
    EXPECT_EQ(ask(first)->says, Says::earlier);
    change(SetJob{before}, "customer");
    EXPECT_EQ(ask(first)->says, Says::asNow);
}

TEST_F(PrintedSheets, AFileChangedWithoutANoteSaysThatItCannotBeMadeAgain) {
    const SheetData first = print();
    changeMuch();
    Workbook tampered = bench.document.workbook();
    tampered.surveys.front().readings.front().typed = typed("0.4", Unit::thou);
    const auto again = sheetOfThen(tampered, printedSheets(tampered).front(), {});
    ASSERT_FALSE(again) << "a reading was changed behind the history's back";
    const auto answer = askForCode(tampered, first.code.toStdString());
    ASSERT_TRUE(answer);
    EXPECT_EQ(answer->says, Says::earlier);
    EXPECT_FALSE(answer->then);
    EXPECT_FALSE(answer->broken.empty());
}

TEST_F(PrintedSheets, WhatIsOpenToLookAtNotesNothing) {
    bench.document.setLookOnly("an earlier copy");
    const SheetData data = print();
    EXPECT_TRUE(bench.document.workbook().history.entries.empty());
    EXPECT_EQ(ask(data)->says, Says::asNow);
}

TEST_F(PrintedSheets, ThePageShowsThemAndPrintsThemAgain) {
    QTemporaryDir folder;
    SheetPage page(bench.context());
    page.resize(1100, 700);
    page.show();
    bench.dialogs.answer = folder.filePath("first.pdf");
    page.savePdf();
    ASSERT_TRUE(QFile::exists(bench.dialogs.answer));
    ASSERT_EQ(printedSheets(bench.document.workbook()).size(), 1U);
    const std::string code = bench.document.workbook().history.entries.back().sheet->code;
    EXPECT_EQ(bench.document.workbook().history.entries.back().who, "A. Example");
    changeMuch();
    QComboBox* sheets = nullptr;
    for (auto* combo : page.findChildren<QComboBox*>())
        if (combo->accessibleName() == "Which sheet") sheets = combo;
    ASSERT_NE(sheets, nullptr);
    ASSERT_EQ(sheets->count(), 2);
    EXPECT_TRUE(sheets->itemText(1).startsWith("Printed 20 March 2026, "))
        << sheets->itemText(1).toStdString();
    sheets->setCurrentIndex(1);
    emit sheets->activated(1);
    auto* sentences = page.findChild<QPlainTextEdit*>();
    EXPECT_TRUE(sentences->isReadOnly());
    EXPECT_NE(sentences->toPlainText(), "Nothing of note.");
    QStringList said;
    for (auto* label : page.findChildren<QLabel*>())
        said << label->text();
    EXPECT_TRUE(said.join(' ').contains(QString::fromStdString(code)))
        << said.join(' ').toStdString();
    bench.dialogs.answer = folder.filePath("again.pdf");
    page.savePdf();
    EXPECT_EQ(printedSheets(bench.document.workbook()).size(), 1U) << "it is noted already";
    // A change elsewhere leaves it as it is; going back shows how it stands now.
    change(SetStraightAim{std::nullopt}, "aim");
    EXPECT_EQ(sheets->currentIndex(), 1);
    sheets->setCurrentIndex(0);
    emit sheets->activated(0);
    EXPECT_FALSE(sentences->isReadOnly());
    EXPECT_EQ(sentences->toPlainText(), "Nothing of note.");
}

TEST(HistoryOfADocument, WhatNoDiskHasSeenLeavesNothingWhenItIsUndone) {
    Bench bench(demo::saltmarsh());
    Document& document = bench.document;
    document.setPerson("A. Example");
    const Workbook start = document.workbook();
    Job job = start.job;
    job.customer = "B. Example";
    ASSERT_TRUE(document.edit(SetJob{job}, "customer"));
    ASSERT_EQ(document.workbook().history.entries.size(), 1U);
    EXPECT_EQ(document.workbook().history.entries[0].who, "A. Example");
    EXPECT_EQ(document.workbook().history.entries[0].what, "customer");
    const Workbook changed = document.workbook();
    document.undoStack().undo();
    EXPECT_TRUE(document.workbook() == start);
    document.undoStack().redo();
    ASSERT_EQ(document.workbook().history.entries.size(), 1U);
    EXPECT_TRUE(document.workbook().history.entries[0].was == changed.history.entries[0].was);
    document.undoStack().undo();
    EXPECT_TRUE(document.workbook() == start);
}

TEST(HistoryOfADocument, WhatWasHandedOutStaysAndItsUndoingIsAChangeOfItsOwn) {
    Bench bench(demo::saltmarsh());
    Document& document = bench.document;
    Job job = document.workbook().job;
    job.customer = "B. Example";
    ASSERT_TRUE(document.edit(SetJob{job}, "customer"));
    EXPECT_FALSE(document.handOut().history.id.empty());
    const std::string id = document.workbook().history.id;
    document.undoStack().undo();
    ASSERT_EQ(document.workbook().history.entries.size(), 2U);
    EXPECT_EQ(document.workbook().history.entries[1].what, "taken back: customer");
    document.undoStack().redo(); // the undoing was seen by nobody
    EXPECT_EQ(document.workbook().history.entries.size(), 1U);
    EXPECT_EQ(document.handOut().history.id, id) << "it keeps its id";
    document.undoStack().undo();
    document.undoStack().redo();
    document.undoStack().undo();
    EXPECT_EQ(document.workbook().history.entries.size(), 2U);
}

TEST(HistoryOfADocument, AReadingTakenBackAfterItWasSavedIsKeptInTheHistory) {
    Bench bench(demo::saltmarsh());
    Document& document = bench.document;
    const Survey& survey = document.workbook().surveys.back();
    const Reading reading = survey.readings.front();
    const Edit typed = InsertReading{survey.header.id, survey.readings.size(), reading};
    ASSERT_TRUE(document.edit(typed, "reading"));
    EXPECT_TRUE(document.workbook().history.entries.empty());
    document.undoStack().undo();
    EXPECT_TRUE(document.workbook().history.entries.empty()) << "no disk had seen it";
    document.undoStack().redo();
    (void)document.handOut();
    document.undoStack().undo();
    ASSERT_EQ(document.workbook().history.entries.size(), 1U);
    EXPECT_NE(document.workbook().history.entries[0].was[0].was->find("\"typed\""),
              std::string::npos);
}

TEST(HistoryOfADocument, AStrikeCarriesWhoMadeIt) {
    Bench bench(demo::saltmarsh());
    bench.document.setPerson("A. Example");
    const std::string id = bench.document.workbook().surveys.back().header.id;
    ASSERT_TRUE(
        bench.document.edit(SetStrike{id, 0, Strike{"slip", bench.document.now(), {}}}, "strike"));
    EXPECT_EQ(bench.document.workbook().surveys.back().readings[0].struck->who, "A. Example");
    ASSERT_EQ(bench.document.workbook().history.entries.size(), 1U);
    const SheetData data = test::dataOf(bench.document.workbook());
    EXPECT_TRUE(data.surveys.back().remarks.join(' ').contains("A. Example)"))
        << data.surveys.back().remarks.join(' ').toStdString();
}

} // namespace
} // namespace borewright
