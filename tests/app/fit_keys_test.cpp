// SPDX-License-Identifier: GPL-3.0-or-later
// Pistons and rings typed as at a number pad: keys over a chosen cell, Enter along a new row and
// down an old one, Tab to the right; pasting below; nothing that jumps from under the pointer.
#include "app/fit/fit_page_parts.h"
#include "app/fit/ring_model.h"
#include "app/fit/text_table.h"
#include "tests/app/fit_hands.h"

#include <QClipboard>
#include <QHeaderView>
#include <QTabWidget>

#include <cmath>

namespace borewright {
namespace {

using namespace test;

class KeysOfTheFitPage : public FitHands {
protected:
    KeysOfTheFitPage() {
        rings = named<RecordTable>(page, "Rings as measured");
        entry->setFocus();
    }
    // Keys go where a hand's would: to whatever has the focus.
    static void type(const char* text) {
        for (const char* at = text; *at != 0; ++at)
            QTest::keyClick(QApplication::focusWidget(), *at, Qt::KeypadModifier);
    }
    static void press(Qt::Key key) {
        QTest::keyClick(QApplication::focusWidget(), key, Qt::KeypadModifier);
        QApplication::processEvents();
    }
    static void enter(const char* text) {
        type(text);
        press(Qt::Key_Enter);
    }
    static std::string at(const QTableView& table) {
        return std::to_string(table.currentIndex().row()) + "," +
               std::to_string(table.currentIndex().column());
    }
    void goTo(RecordTable& table, int row, int column) {
        if (&table == rings) page.findChild<QTabWidget*>()->setCurrentIndex(1);
        table.setFocus();
        table.setCurrentIndex(table.model()->index(row, column));
    }

    RecordTable* rings = nullptr;
};

TEST_F(KeysOfTheFitPage, EnterGoesAlongANewPistonAndOnToTheNext) {
    goTo(*entry, 3, PistonModel::label);
    enter("7");
    EXPECT_EQ(at(*entry), "3,1");
    enter("3.4361");
    EXPECT_EQ(at(*entry), "3,2");
    enter("0.6");
    EXPECT_EQ(at(*entry), "4,0") << "the first cell of the next new row";
    enter("8");
    enter("3.4362");
    press(Qt::Key_Enter); // its height was not measured
    enter("9");
    ASSERT_EQ(fit().pistons.size(), 6U);
    EXPECT_EQ(fit().pistons[3].label, "7");
    EXPECT_EQ(fit().pistons[3].size->text(), "3.4361");
    EXPECT_EQ(fit().pistons[3].height->text(), "0.6");
    EXPECT_EQ(fit().pistons[4].label, "8");
    EXPECT_EQ(fit().pistons[4].size->text(), "3.4362");
    EXPECT_FALSE(fit().pistons[4].height);
    EXPECT_EQ(fit().pistons[5].label, "9");
}

TEST_F(KeysOfTheFitPage, EnterGoesDownInRowsThatStand) {
    goTo(*entry, 0, PistonModel::size);
    enter("3.4970");
    EXPECT_EQ(at(*entry), "1,1");
    press(Qt::Key_Enter);
    EXPECT_EQ(at(*entry), "2,1");
    goTo(*entry, 3, PistonModel::label);
    enter("7");
    goTo(*entry, 1, PistonModel::size);
    goTo(*entry, 3, PistonModel::size);
    enter("3.4361");
    EXPECT_EQ(at(*entry), "4,1") << "once left it is a row like any other";
}

TEST_F(KeysOfTheFitPage, ARefusedCellOfANewRowIsNotLeft) {
    goTo(*entry, 3, PistonModel::size);
    enter("3.43.61");
    EXPECT_EQ(at(*entry), "3,1");
    press(Qt::Key_Tab);
    EXPECT_TRUE(entry->hasFocus());
    goTo(*entry, 3, PistonModel::size);
    enter("3.4361");
    EXPECT_EQ(at(*entry), "3,2");
    EXPECT_EQ(fit().pistons.size(), 4U);
}

TEST_F(KeysOfTheFitPage, TabKeepsWhatWasTypedAndGoesRight) {
    goTo(*entry, 3, PistonModel::label);
    type("7");
    press(Qt::Key_Tab);
    EXPECT_EQ(at(*entry), "3,1");
    type("3.4361");
    press(Qt::Key_Tab);
    EXPECT_EQ(at(*entry), "3,2");
    EXPECT_EQ(fit().pistons.at(3).size->text(), "3.4361");
    press(Qt::Key_Tab);
    EXPECT_TRUE(entry->hasFocus()) << "a cell that is only chosen is left for the next";
    EXPECT_EQ(at(*entry), "3,3");
    press(Qt::Key_Backtab);
    EXPECT_EQ(at(*entry), "3,2");
    goTo(*entry, 0, PistonModel::bore);
    press(Qt::Key_Tab);
    EXPECT_FALSE(entry->hasFocus()) << "the end of a row is the way out";
}

TEST_F(KeysOfTheFitPage, EnterGoesAlongANewRing) {
    goTo(*rings, 0, RingModel::label);
    for (const char* typed : {"1", "2", "3", "1.5", "14"})
        enter(typed);
    EXPECT_EQ(at(*rings), "1,0");
    ASSERT_EQ(fit().rings.size(), 1U);
    const Ring& ring = fit().rings[0];
    EXPECT_EQ(ring.label, "1");
    EXPECT_EQ(ring.groove, 2);
    EXPECT_EQ(ring.measuredIn, 3);
    EXPECT_EQ(ring.measuredAt->text(), "1.5");
    EXPECT_EQ(ring.gap->text(), "14");
    type("5");
    press(Qt::Key_Tab);
    EXPECT_EQ(at(*rings), "1,1");
}

TEST_F(KeysOfTheFitPage, AnAddedPistonIsFilledAlongItsRow) {
    button(page, "Add piston")->click();
    EXPECT_EQ(at(*entry), "3,0");
    press(Qt::Key_Enter);
    enter("3.4361");
    enter("0.6");
    EXPECT_EQ(cell(3, PistonModel::label), "4");
    EXPECT_EQ(cell(3, PistonModel::height), "0.6");
    EXPECT_EQ(at(*entry), "4,0");
    goTo(*entry, 3, 0);
    EXPECT_TRUE(button(page, "Take piston off")->isEnabled());
}

TEST_F(KeysOfTheFitPage, ARowThatBecameAPistonCanBeTakenOff) {
    goTo(*entry, 3, PistonModel::label);
    EXPECT_FALSE(button(page, "Take piston off")->isEnabled());
    enter("7");
    EXPECT_TRUE(button(page, "Take piston off")->isEnabled());
    bench.document.undoStack().undo();
    EXPECT_FALSE(button(page, "Take piston off")->isEnabled());
}

TEST_F(KeysOfTheFitPage, PasteBelowLeavesThePistonsThatStandAlone) {
    const std::vector<Piston> before = fit().pistons;
    goTo(*entry, 0, PistonModel::size);
    QGuiApplication::clipboard()->setText("3.4970\n3.4971\n");
    button(*entry->parentWidget(), "Paste below")->click();
    ASSERT_EQ(fit().pistons.size(), 5U);
    for (std::size_t i = 0; i < before.size(); ++i)
        EXPECT_TRUE(fit().pistons[i] == before[i]) << "piston " << i + 1;
    EXPECT_EQ(fit().pistons[3].size->text(), "3.4970");
    EXPECT_EQ(fit().pistons[4].size->text(), "3.4971");
    EXPECT_EQ(steps(), 1);
    const QString tip = button(*entry->parentWidget(), "Paste below")->toolTip();
    EXPECT_TRUE(tip.contains("below the last row") && tip.contains("Ctrl+V")) << tip.toStdString();
}

TEST_F(KeysOfTheFitPage, AListIsOfSizesWhereNoColumnIsChosen) {
    entry->setCurrentIndex({});
    QGuiApplication::clipboard()->setText("3.4970\n");
    button(*entry->parentWidget(), "Paste below")->click();
    ASSERT_EQ(fit().pistons.size(), 4U);
    EXPECT_EQ(fit().pistons[3].size->text(), "3.4970");
    QGuiApplication::clipboard()->setText("9\t3.4971\t0.6\n");
    button(*entry->parentWidget(), "Paste below")->click();
    ASSERT_EQ(fit().pistons.size(), 5U);
    EXPECT_EQ(fit().pistons[4].label, "9");
    EXPECT_EQ(fit().pistons[4].height->text(), "0.6");
}

TEST_F(KeysOfTheFitPage, PastingByKeyBeginsAtTheFirstOfTheChosenCells) {
    goTo(*entry, 2, PistonModel::size);
    QTest::keyClick(entry, Qt::Key_Up, Qt::ShiftModifier);
    QTest::keyClick(entry, Qt::Key_Up, Qt::ShiftModifier);
    QTest::keyClick(entry, Qt::Key_Down, Qt::ShiftModifier);
    QGuiApplication::clipboard()->setText("3.4970\n3.4971\n");
    QTest::keySequence(entry, QKeySequence::Paste);
    EXPECT_EQ(cell(1, PistonModel::size), "3.4970");
    EXPECT_EQ(cell(2, PistonModel::size), "3.4971");
}

TEST_F(KeysOfTheFitPage, APistonWithoutItsHeightIsNamedInTheFirstLine) {
    const auto said = [this] { return says("More about the pistons"); };
    EXPECT_EQ(said().find("gets no clearance"), std::string::npos) << said();
    goTo(*entry, 3, PistonModel::size);
    enter("3.4963");
    EXPECT_EQ(entry->model()->index(3, PistonModel::height).data(RecordModel::hintRole),
              "not given");
    EXPECT_EQ(said().find("Piston 4 gets no clearance: the height it was measured at is not given"),
              0U)
        << said();
    goTo(*entry, 0, PistonModel::height);
    press(Qt::Key_Delete);
    EXPECT_EQ(said().find("Pistons 1 and 4 get no clearance"), 0U) << said();
}

TEST_F(KeysOfTheFitPage, SentencesKeepTheirRoomWhateverTheySay) {
    auto* sentences = new Sentences("Something said", &page);
    sentences->resize(700, 60);
    sentences->show();
    auto* label = named<QLabel>(*sentences, "Something said");
    auto* more = sentences->findChild<QToolButton*>();
    const std::string words = "Piston 1 in bore 3 is too close to a limit to call. ";
    std::string endless = words;
    for (int i = 0; i < 12; ++i)
        endless += words;
    const int height = sentences->sizeHint().height();
    for (const std::vector<std::string>& said : {std::vector<std::string>{},
                                                 {words},
                                                 {words, words, words, words},
                                                 {endless},
                                                 {endless, endless}}) {
        sentences->say(said);
        QApplication::processEvents();
        EXPECT_EQ(sentences->sizeHint().height(), height) << said.size() << " sentences";
        EXPECT_EQ(sentences->minimumSizeHint().height(), height) << said.size() << " sentences";
    }
    EXPECT_FALSE(more->isHidden());
    EXPECT_NE(more->arrowType(), Qt::NoArrow);
    EXPECT_TRUE(more->focusPolicy() & Qt::TabFocus);
    EXPECT_EQ(more->text(), "2 more") << "the first is not all there either";
    EXPECT_TRUE(label->text().endsWith("…"));
    more->setFocus();
    QTest::keyClick(more, Qt::Key_Space);
    EXPECT_FALSE(label->text().contains("…"));
    EXPECT_GT(sentences->sizeHint().height(), height);
}

// Relative luminance and contrast as WCAG 2.1 defines them; 4.5 is its least for text (1.4.3).
double luminance(const QColor& colour) {
    const auto linear = [](double c) {
        return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
    };
    return 0.2126 * linear(colour.redF()) + 0.7152 * linear(colour.greenF()) +
           0.0722 * linear(colour.blueF());
}

double contrast(const QColor& a, const QColor& b) {
    const double first = luminance(a), second = luminance(b);
    return (std::max(first, second) + 0.05) / (std::min(first, second) + 0.05);
}

TEST_F(KeysOfTheFitPage, TextChosenInAnOpenCellCanBeRead) {
    goTo(*entry, 0, PistonModel::size);
    press(Qt::Key_F2);
    auto* editor = qobject_cast<QLineEdit*>(QApplication::focusWidget());
    ASSERT_NE(editor, nullptr);
    for (const auto group : {QPalette::Active, QPalette::Inactive}) {
        const QPalette& colours = editor->palette();
        EXPECT_GE(contrast(colours.color(group, QPalette::HighlightedText),
                           colours.color(group, QPalette::Highlight)),
                  4.5);
        EXPECT_GE(
            contrast(colours.color(group, QPalette::Text), colours.color(group, QPalette::Base)),
            4.5);
    }
}

} // namespace
} // namespace borewright
