// SPDX-License-Identifier: GPL-3.0-or-later
// The Hone page as it looks in the whole window, light and dark; that it fits, and that nothing
// jumps when another bore is looked at.
#include "app/shell/theme.h"

#include "tests/app/hone_support.h"
#include "tests/support/shop.h"

#include <QDir>
#include <QScrollArea>
#include <QScrollBar>
#include <QTableView>

namespace borewright {
namespace {

using namespace test;

TEST(HoneLook, IsPaintedLightAndDark) {
    const QString folder = QStringLiteral(BOREWRIGHT_BUILD_DIR) + "/pictures";
    QDir().mkpath(folder);
    const QPalette before = QApplication::palette();
    for (const bool dark : {false, true}) {
        QApplication::setPalette(dark ? darkPalette() : lightPalette());
        Shop shop;
        shop.workshop.document().open(roughBlock(3));
        const QImage image = shop.window.picture(Page::hone, {1280, 800});
        EXPECT_TRUE(image.save(folder + (dark ? "/hone-dark.png" : "/hone.png")));
        auto* page = static_cast<HonePage*>(shop.window.page(Page::hone));
        EXPECT_TRUE(page->search().isOfNow());
        EXPECT_NE(named<QLabel>(*page, "The next set-up of this bore")->text(), "");
        if (dark) continue;
        auto* tabs = page->findChild<QTabWidget*>();
        for (int i = 1; i < tabs->count(); ++i) {
            tabs->setCurrentIndex(i);
            const QString name = tabs->tabText(i).remove('&').remove(' ').toLower();
            EXPECT_TRUE(shop.window.picture(Page::hone, {1280, 800})
                            .save(folder + "/hone-" + name + ".png"));
        }
    }
    QApplication::setPalette(before);
}

TEST_F(Honing, FitsAWindowOf1280By800) {
    // What such a window leaves beside the rail and between menu and status line.
    EXPECT_LE(page.minimumSizeHint().width(), 1130);
    EXPECT_LE(page.minimumSizeHint().height(), 720);
}

TEST_F(Honing, TheLogIsReadWholeInAWindowOf1280By800) {
    HoneRecord logged = record();
    logged.stones[0].kind = StoneKind::finish;
    logged.hone.speedRpm = 200;
    for (int i = 0; i < 4; ++i) {
        std::vector<StrokeWindow> windows;
        for (const auto& [from, to] :
             {std::pair("3.15", "4.04"), std::pair("2.95", "3.05"), std::pair("2.00", "2.05")})
            windows.push_back(
                {*readTyped(from, Unit::inch), *readTyped(to, Unit::inch), 124, {}, 0});
        logged.passes.push_back(
            passNow(bench.document.workbook(), 1, "k1", windows, bench.document.now()));
        logged.passes.back().id = "h" + std::to_string(i + 1);
        logged.passes.back().simulated = true;
    }
    ASSERT_TRUE(bench.document.edit(SetHone{logged}, "passes"));
    openTab("Log");
    QTest::qWait(1);
    const auto* table = named<QTableView>(page, "Log of this bore");
    EXPECT_GT(table->verticalScrollBar()->maximum(), 0) << "more rows than are shown";
    EXPECT_EQ(table->horizontalScrollBar()->maximum(), 0) << "the last column is cut off";
    const QScrollArea* around = nullptr;
    for (const QWidget* up = table->parentWidget(); around == nullptr; up = up->parentWidget())
        around = qobject_cast<const QScrollArea*>(up);
    const auto* strike = button(page, "Strike this pass out");
    const int end = strike->mapTo(around->widget(), QPoint(0, strike->height())).y();
    EXPECT_LE(end, around->viewport()->height()) << "the rows push the verb out of sight";
    const QModelIndex windows = table->model()->index(table->model()->rowCount() - 1, 2);
    EXPECT_TRUE(windows.data(Qt::ToolTipRole).toString().contains("124 strokes 3.15–4.04"))
        << "where they are cut the whole is told";
    EXPECT_NE(says("What is odd about the log").find("Crosshatch: "), std::string::npos);
    EXPECT_NE(says("What is odd about the log").find("° where the scratches"), std::string::npos)
        << says("What is odd about the log");
}

TEST_F(Honing, TheHintOfAnOwnPassIsReadWhole) {
    openTab("Own pass");
    QTest::qWait(1);
    const QLabel* hint = nullptr;
    for (const QLabel* label : page.findChildren<QLabel*>())
        if (label->text().contains("a stroke is down and back")) hint = label;
    ASSERT_NE(hint, nullptr);
    const QScrollArea* around = nullptr;
    for (const QWidget* up = hint->parentWidget(); around == nullptr; up = up->parentWidget())
        around = qobject_cast<const QScrollArea*>(up);
    const int end = hint->mapTo(around->widget(), QPoint(0, hint->height())).y();
    EXPECT_LE(end, around->viewport()->height());
}

TEST_F(Honing, NothingJumpsFromBoreToBore) {
    page.settle();
    const auto places = [&] {
        std::vector<QPoint> found;
        for (const char* name : {"Done as planned (F9)", "Measure now (F8)", "Log a pass… (F4)"})
            found.push_back(button(page, QString::fromUtf8(name))->mapTo(&page, QPoint()));
        found.push_back(page.findChild<QTabWidget*>()->mapTo(&page, QPoint()));
        return found;
    };
    bench.selection.setBore(1);
    QTest::qWait(1);
    const auto before = places();
    bench.selection.setBore(2);
    QTest::qWait(1);
    EXPECT_EQ(places(), before);
    HoneRecord changed = record();
    changed.hone.feed = "soft";
    ASSERT_TRUE(bench.document.edit(SetHone{changed}, "feed"));
    QTest::qWait(1);
    EXPECT_EQ(places(), before) << "while the next plan is worked out";
    page.settle();
    EXPECT_EQ(places(), before);
}

} // namespace
} // namespace borewright
