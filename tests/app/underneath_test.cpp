// SPDX-License-Identifier: GPL-3.0-or-later
// A file that somebody else changed: what differs is shown before anything is overwritten, and each
// way out does what it says.
#include "app/shell/differences_view.h"
#include "core/storage/history_log.h"
#include "core/storage/workbook_file.h"
#include "tests/support/blocks.h"
#include "tests/support/shop.h"

#include <QFile>
#include <QPushButton>
#include <QTableWidget>

#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;

class Underneath : public testing::Test {
protected:
    Underneath() {
        workbook = inchBlock(2);
        survey = addSurvey(workbook, SurveyKind::asFound, "as found");
        type(workbook, survey, 1, "0.5", "A", "1.5");
        write(workbook);
        EXPECT_TRUE(shop.window.openPath(path));
        Workbook theirs = workbook;
        type(theirs, survey, 2, "1.25", "B", "-2.5");
        theirs.surveys[0].readings[0].typed = typed("1.7", Unit::thou);
        write(theirs);
        Job job = workbook.job;
        job.customer = "A. Example";
        EXPECT_TRUE(shop.workshop.document().edit(SetJob{job}, "customer"));
        EXPECT_FALSE(shop.workshop.autosaver().flush(2000)) << "somebody's work was overwritten";
        mine = shop.workshop.document().workbook();
        other = theirs;
    }
    void write(const Workbook& held) {
        QFile file(path);
        EXPECT_TRUE(file.open(QIODevice::WriteOnly));
        file.write(QByteArray::fromStdString(writeWorkbook(held)));
    }
    // All but who changed what.
    static Workbook recordOf(Workbook held) {
        held.history = {};
        return held;
    }
    Workbook onDisk(const QString& where) {
        const auto held = loadWorkbook(shop.files, where.toStdString());
        EXPECT_TRUE(held) << held.error().message();
        return held.value_or(Workbook());
    }
    static void press(QWidget& in, const QString& name) {
        for (auto* button : in.findChildren<QPushButton*>())
            if (button->text() == name && button->isVisibleTo(&in)) return button->click();
        ADD_FAILURE() << "no button " << name.toStdString();
    }
    DifferencesView* view() {
        press(shop.window, "Show what differs");
        auto* shown = shop.window.findChild<DifferencesView*>();
        EXPECT_NE(shown, nullptr);
        EXPECT_TRUE(shown == nullptr || !shown->isModal()) << "it must not stop the work";
        return shown;
    }

    Shop shop;
    const QString path = shop.folder.filePath("job.borebook");
    Workbook workbook, mine, other;
    std::string survey;
};

TEST_F(Underneath, TheDifferencesAreListedByBoreAndStationAndNothingIsOverwritten) {
    DifferencesView* shown = view();
    ASSERT_NE(shown, nullptr);
    const auto* table = shown->findChild<QTableWidget*>();
    ASSERT_NE(table, nullptr);
    QStringList rows;
    for (int row = 0; row < table->rowCount(); ++row) {
        QStringList cells;
        for (int column = 0; column < 4; ++column)
            cells += table->item(row, column)->text();
        rows += cells.join(" | ");
    }
    EXPECT_EQ(rows.join('\n').toStdString(),
              "job | customer | empty | A. Example\n"
              "as found, bore 1, 0.50 in, A | reading | 1.7 thou | 1.5 thou\n"
              "as found, bore 2, 1.25 in, B | reading | -2.5 thou | not there");
    EXPECT_EQ(table->horizontalHeaderItem(2)->text(), "In the file");
    EXPECT_EQ(onDisk(path), other);
}

TEST_F(Underneath, MineIsKept) {
    press(*view(), "Keep mine");
    EXPECT_TRUE(shop.workshop.autosaver().flush(2000));
    const Workbook held = onDisk(path);
    EXPECT_EQ(recordOf(held), recordOf(mine));
    EXPECT_EQ(held, shop.workshop.document().workbook());
    ASSERT_EQ(held.history.entries.size(), mine.history.entries.size() + 2);
    EXPECT_EQ(held.history.entries[1], mine.history.entries[0]) << "his own stands there as before";
}

TEST_F(Underneath, WhatTheOtherNotedStaysInTheHistoryOfMine) {
    Workbook theirs = other;
    theirs.history.id = mine.history.id;
    theirs.job.customer = "B. Example";
    HistoryEntry entry{{1'774'000'000, 60}, "B. Example", "customer"};
    entry.was = oldValues(other, theirs);
    ASSERT_TRUE(noteChange(theirs, entry));
    PrintedSheet sheet;
    sheet.code = "9KWW-4Y4T-7RYG";
    HistoryEntry printed{{1'774'000'060, 60}, "B. Example", {}};
    printed.sheet = sheet;
    noteSheet(theirs, printed);
    write(theirs);
    shop.workshop.document().setPerson("A. Example");
    press(*view(), "Keep mine");
    EXPECT_TRUE(shop.workshop.autosaver().flush(2000));
    const Workbook held = onDisk(path);
    EXPECT_EQ(recordOf(held), recordOf(mine));
    const auto& entries = held.history.entries;
    ASSERT_EQ(entries.size(), 5U);
    EXPECT_EQ(entries[0], theirs.history.entries[0]);
    EXPECT_EQ(entries[1], theirs.history.entries[1]);
    EXPECT_EQ(entries[3], mine.history.entries[0]);
    EXPECT_EQ(entries[4].who, "A. Example");
    EXPECT_EQ(entries[4].what, "kept own over B. Example, 20 March 2026, 10:47");
    const auto then = atSheet(held, 1);
    ASSERT_TRUE(then) << then.error().message();
    EXPECT_EQ(*then, recordOf(theirs)) << "his printed sheet can be printed again";
    // What was done before is undone as a change of its own: no entry is lost for it.
    shop.workshop.document().undoStack().undo();
    EXPECT_TRUE(shop.workshop.autosaver().flush(2000));
    ASSERT_EQ(onDisk(path).history.entries.size(), 6U);
    EXPECT_EQ(onDisk(path).job.customer, "");
}

TEST_F(Underneath, TheirsIsTakenAndMineLiesInTheRescueFolder) {
    press(*view(), "Take theirs");
    EXPECT_EQ(shop.workshop.document().workbook(), other);
    EXPECT_EQ(onDisk(path), other);
    EXPECT_EQ(onDisk(shop.folder.filePath("rescue/rescue-job.borebook")), mine);
    EXPECT_TRUE(shop.window.notice().startsWith("Theirs is open now. Yours is kept in "))
        << shop.window.notice().toStdString();
}

TEST_F(Underneath, MineIsSavedElsewhere) {
    shop.dialogs.answer = shop.folder.filePath("mine.borebook");
    press(*view(), "Save mine elsewhere …");
    EXPECT_TRUE(shop.workshop.autosaver().flush(2000));
    EXPECT_EQ(onDisk(path), other);
    Workbook saved = onDisk(shop.folder.filePath("mine.borebook"));
    EXPECT_NE(saved.history.id, mine.history.id) << "it is a workbook of its own from now on";
    saved.history.id = mine.history.id;
    EXPECT_EQ(saved, mine);
}

} // namespace
} // namespace borewright
