// SPDX-License-Identifier: GPL-3.0-or-later
// "What did this look like on Tuesday": the copies are listed, compared with now, looked at beside,
// and brought back as one step of undo.
#include "app/shell/earlier_copies.h"
#include "app/shell/file_verbs.h"
#include "core/storage/workbook_file.h"
#include "tests/support/blocks.h"
#include "tests/support/shop.h"

#include <QComboBox>
#include <QFile>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QSignalSpy>
#include <QTableWidget>

#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;

// All but who changed what.
Workbook recordOf(Workbook workbook) {
    workbook.history = {};
    return workbook;
}

class EarlierCopiesTest : public testing::Test {
protected:
    EarlierCopiesTest() {
        Preferences preferences;
        preferences.copiesFolder = shop.folder.filePath("copies");
        shop.preferences.set(preferences);
        tuesday = inchBlock(2);
        found = addSurvey(tuesday, SurveyKind::asFound, "as found");
        type(tuesday, found, 1, "0.5", "A", "1.5");
        QFile file(path);
        EXPECT_TRUE(file.open(QIODevice::WriteOnly));
        file.write(QByteArray::fromStdString(writeWorkbook(tuesday)));
        file.close();
        const auto kept = keepCopy(shop.files, shop.workshop.copyRules(), path.toStdString(),
                                   writeWorkbook(tuesday), readIso("2026-03-10T16:20:00Z").value());
        EXPECT_TRUE(kept) << kept.error().message();
        EXPECT_TRUE(shop.window.openPath(path));
        Document& document = shop.workshop.document();
        EXPECT_TRUE(document.edit(SetStrike{found, 0, Strike{"by mistake", {}, {}}}, "strike"));
        Job job = document.workbook().job;
        job.customer = "A. Example";
        EXPECT_TRUE(document.edit(SetJob{job}, "customer"));
        now = document.workbook();
        shop.window.findChild<FileVerbs*>()->showEarlierCopies();
        view = shop.window.findChild<EarlierCopies*>();
    }
    void press(const QString& name) {
        for (auto* button : view->findChildren<QPushButton*>())
            if (button->text() == name && button->isEnabled()) return button->click();
        ADD_FAILURE() << "no button " << name.toStdString();
    }
    // The rows of the table, from "where" to "now".
    std::string rows() const {
        const auto* table = view->findChild<QTableWidget*>();
        std::string text;
        for (int row = 0; row < table->rowCount(); ++row)
            for (int column = 0; column < 4; ++column)
                text +=
                    table->item(row, column)->text().toStdString() + (column < 3 ? " | " : "\n");
        return text;
    }
    const Workbook& open() { return shop.workshop.document().workbook(); }

    Shop shop;
    const QString path = shop.folder.filePath("job.borebook");
    Workbook tuesday, now;
    std::string found;
    EarlierCopies* view = nullptr;
};

TEST_F(EarlierCopiesTest, AreListedAndComparedWithNow) {
    ASSERT_NE(view, nullptr);
    EXPECT_FALSE(view->isModal());
    const auto* list = view->findChild<QListWidget*>();
    ASSERT_EQ(list->count(), 1);
    EXPECT_EQ(list->item(0)->text(), "10 March 2026, 16:20");
    EXPECT_EQ(rows(), "job | customer | empty | A. Example\n"
                      "as found, bore 1, 0.50 in, A | reading | 1.5 thou | 1.5 thou, struck out "
                      "(by mistake)\n");
}

TEST_F(EarlierCopiesTest, OneSurveyComesBackAsOneStep) {
    const int steps = shop.workshop.document().undoStack().count();
    EXPECT_EQ(view->findChild<QComboBox*>()->currentText(), "as found");
    press("Bring back this survey");
    EXPECT_EQ(open().surveys, tuesday.surveys);
    EXPECT_EQ(open().job, now.job) << "only the survey was asked for";
    EXPECT_EQ(shop.workshop.document().undoStack().count(), steps + 1);
    EXPECT_EQ(shop.workshop.document().undoStack().undoText(),
              "survey as found as of 10 March 2026, 16:20");
    EXPECT_EQ(rows(), "job | customer | empty | A. Example\n") << "the list follows";
    shop.workshop.document().undoStack().undo();
    EXPECT_EQ(open(), now);
}

TEST_F(EarlierCopiesTest, TheWholeComesBackAsOneStepAndIsSaved) {
    press("Bring back the whole");
    EXPECT_EQ(recordOf(open()), recordOf(tuesday));
    EXPECT_EQ(open().history.entries.size(), now.history.entries.size() + 1)
        << "the history is not brought back: it grows";
    EXPECT_EQ(rows(), "");
    EXPECT_TRUE(shop.workshop.autosaver().flush(2000));
    EXPECT_EQ(recordOf(loadWorkbook(shop.files, path.toStdString()).value()), recordOf(tuesday));
    shop.workshop.document().undoStack().undo();
    EXPECT_EQ(recordOf(open()), recordOf(now));
    EXPECT_EQ(open().history.entries.size(), now.history.entries.size() + 2);
}

TEST_F(EarlierCopiesTest, OneIsAskedForBesideByItsPath) {
    QSignalSpy asked(shop.window.findChild<FileVerbs*>(), &FileVerbs::besideAsked);
    press("Open it beside to look");
    ASSERT_EQ(asked.count(), 1);
    const auto copy = loadWorkbook(shop.files, asked.at(0).at(0).toString().toStdString());
    ASSERT_TRUE(copy) << copy.error().message();
    EXPECT_EQ(*copy, tuesday);
    EXPECT_EQ(open(), now) << "looking changes nothing";
}

TEST_F(EarlierCopiesTest, ADamagedCopyIsSaidAndBringsNothing) {
    const auto copies = datedCopies(shop.files, shop.workshop.copyRules(), path.toStdString());
    ASSERT_FALSE(copies->empty());
    QFile file(QString::fromStdString(copies->back().path));
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write("{");
    file.close();
    view->close();
    EarlierCopies again(shop.workshop, nullptr);
    again.setAttribute(Qt::WA_DeleteOnClose, false);
    auto* list = again.findChild<QListWidget*>();
    list->setCurrentRow(list->count() - 1);
    EXPECT_TRUE(again.findChild<QLabel*>()->text().startsWith("This copy cannot be read: "))
        << again.findChild<QLabel*>()->text().toStdString();
    for (const auto* button : again.findChildren<QPushButton*>())
        EXPECT_FALSE(button->isEnabled()) << button->text().toStdString();
}

} // namespace
} // namespace borewright
