// SPDX-License-Identifier: GPL-3.0-or-later
// The Hone page as it looks in the whole window, light and dark; that it fits, and that nothing
// jumps when another bore is looked at.
#include "app/shell/theme.h"

#include "tests/app/hone_support.h"
#include "tests/support/shop.h"

#include <QDir>

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
