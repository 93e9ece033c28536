// SPDX-License-Identifier: GPL-3.0-or-later
// The whole window driven by real keys: from the start form to the saved and reopened workbook.
#include "app/shell/theme.h"
#include "core/storage/workbook_file.h"

#include <gtest/gtest.h>

#include "tests/support/shop.h"

#include <QAbstractButton>
#include <QComboBox>
#include <QDir>
#include <QFile>
#include <QLineEdit>

namespace borewright {
namespace {

using test::Shop;

void typeReadings(Shop& shop) {
    QTest::keyClick(shop.window.focusWidget(), Qt::Key_Return); // start measuring
    auto* entry = shop.window.page(Page::measure)->findChild<QLineEdit*>("entry");
    ASSERT_NE(entry, nullptr);
    const Workbook& workbook = shop.workshop.document().workbook();
    ASSERT_EQ(workbook.surveys.size(), 1U) << "Return on the survey form begins the survey";
    const std::size_t stations = plannedStations(workbook.block).size();
    for (std::size_t i = 0; i < stations; ++i) {
        QTest::keyClicks(entry, QString::number(0.5 + 0.1 * static_cast<double>(i % 7)));
        QTest::keyClick(entry, Qt::Key_Enter, Qt::KeypadModifier);
    }
    EXPECT_EQ(workbook.surveys[0].readings.size(), stations) << "a reading for every station";
}

TEST(ShellWindow, ABlockIsBegunByKeysAloneAndIsOnDiskAtOnce) {
    Shop shop;
    shop.typeNewBlock();
    ASSERT_TRUE(shop.workshop.isOpen());
    const Workbook& workbook = shop.workshop.document().workbook();
    ASSERT_EQ(workbook.block.bores.size(), 4U);
    EXPECT_EQ(workbook.block.bores[0].standardSize->withUnit(), "3.42 in");
    EXPECT_EQ(workbook.block.bores[3].depth->withUnit(), "4.1 in");
    ASSERT_EQ(workbook.limitSets.size(), 1U);
    EXPECT_EQ(workbook.limitSets[0].limits.taper->withUnit(), "2 thou");
    EXPECT_EQ(workbook.block.bores[0].levels.size(), 5U) << "levels proposed by depth alone";
    EXPECT_TRUE(shop.workshop.autosaver().flush(2000));
    const QString path = shop.workshop.autosaver().path();
    EXPECT_TRUE(path.contains("Saltmarsh V6, A. Example")) << path.toStdString();
    const auto held = loadWorkbook(shop.files, path.toStdString());
    ASSERT_TRUE(held) << held.error().message();
    EXPECT_EQ(*held, workbook);
}

// All but who changed what, which stays where a save came between.
Workbook recordOf(Workbook workbook) {
    workbook.history = {};
    return workbook;
}

TEST(ShellWindow, ATypedBlockIsUndoneRedoneSavedAndReopenedEqual) {
    Shop shop;
    shop.typeNewBlock();
    const Workbook empty = shop.workshop.document().workbook();
    typeReadings(shop);
    const Workbook full = shop.workshop.document().workbook();
    QUndoStack& stack = shop.workshop.document().undoStack();
    EXPECT_TRUE(stack.undoText().startsWith("reading bore 4")) << stack.undoText().toStdString();
    while (stack.canUndo())
        stack.undo();
    EXPECT_EQ(recordOf(shop.workshop.document().workbook()), recordOf(empty));
    while (stack.canRedo())
        stack.redo();
    EXPECT_EQ(recordOf(shop.workshop.document().workbook()), recordOf(full));
    EXPECT_TRUE(shop.workshop.autosaver().flush(2000));
    EXPECT_TRUE(shop.window.windowTitle().endsWith("· saved"))
        << shop.window.windowTitle().toStdString();
    EXPECT_TRUE(shop.window.openPath(shop.workshop.autosaver().path()));
    EXPECT_EQ(recordOf(shop.workshop.document().workbook()), recordOf(full));
}

TEST(ShellWindow, OpeningAnotherWorkbookAfterAReadingLooksNoMoreAtTheOldOne) {
    Shop shop;
    const QString path = shop.folder.filePath("other.borebook");
    ASSERT_TRUE(
        QFile::copy(QStringLiteral(BOREWRIGHT_SOURCE_DIR) + "/demo/rushmere-3.borebook", path));
    shop.typeNewBlock();
    typeReadings(shop);
    ASSERT_TRUE(shop.window.openPath(path)); // once crashed in the cells of the grid
    QTest::qWait(1);
    EXPECT_EQ(shop.workshop.autosaver().path(), path);
}

TEST(ShellWindow, ADamagedFileIsRefusedInTheBannerAndLeftAsItWas) {
    Shop shop;
    const QString path = shop.folder.filePath("broken.borebook");
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write("{\"a\": 1,");
    file.close();
    EXPECT_FALSE(shop.window.openPath(path));
    EXPECT_TRUE(shop.window.notice().contains("broken.borebook was not opened"))
        << shop.window.notice().toStdString();
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    EXPECT_EQ(file.readAll(), "{\"a\": 1,");
}

// Whether a screen reader has a word for what can be used.
bool isNamed(const QWidget& widget) {
    if (!widget.accessibleName().isEmpty()) return true;
    const auto* button = qobject_cast<const QAbstractButton*>(&widget);
    if (button != nullptr && !button->text().isEmpty()) return true;
    for (const QLabel* label : widget.window()->findChildren<QLabel*>())
        if (label->buddy() == &widget) return true;
    return widget.parentWidget() != nullptr && widget.parentWidget()->focusProxy() == &widget &&
           !widget.parentWidget()->accessibleName().isEmpty();
}

TEST(ShellWindow, EveryControlOfEveryPageHasAName) {
    Shop shop;
    shop.typeNewBlock();
    typeReadings(shop);
    for (int i = 0; i < pageCount; ++i)
        shop.window.showPage(static_cast<Page>(i));
    for (const QWidget* widget : shop.window.findChildren<QWidget*>()) {
        const bool control = qobject_cast<const QAbstractButton*>(widget) != nullptr ||
                             qobject_cast<const QComboBox*>(widget) != nullptr ||
                             qobject_cast<const QLineEdit*>(widget) != nullptr;
        if (!control || (widget->focusPolicy() & Qt::TabFocus) == 0) continue;
        if (widget->objectName().startsWith("qt_")) continue; // parts of Qt's own controls
        EXPECT_TRUE(isNamed(*widget))
            << widget->metaObject()->className() << " in "
            << widget->parentWidget()->metaObject()->className() << " has no name";
    }
}

TEST(ShellWindow, EveryPageIsPaintedLightAndDark) {
    const QString folder = QStringLiteral(BOREWRIGHT_BUILD_DIR) + "/pictures";
    QDir().mkpath(folder);
    const QPalette before = QApplication::palette();
    for (const bool dark : {false, true}) {
        QApplication::setPalette(dark ? darkPalette() : lightPalette());
        Shop shop;
        shop.typeNewBlock();
        typeReadings(shop);
        for (int i = 0; i < pageCount; ++i) {
            const auto page = static_cast<Page>(i);
            const QImage image = shop.window.picture(page, {1280, 800});
            const QString file = folder + "/window-" + keyOf(page) + (dark ? "-dark" : "") + ".png";
            EXPECT_TRUE(image.save(file)) << file.toStdString();
            // The corner below the pages is bare window: it tells the theme.
            EXPECT_EQ(image.pixelColor(20, 780).lightness() < 128, dark) << file.toStdString();
        }
    }
    QApplication::setPalette(before);
}

} // namespace
} // namespace borewright
