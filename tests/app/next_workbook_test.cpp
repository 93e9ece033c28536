// SPDX-License-Identifier: GPL-3.0-or-later
// What is still being typed when another workbook is opened belongs to the one that is left.
#include "app/sheet/summary_field.h"
#include "core/storage/workbook_file.h"
#include "tests/support/shop.h"

#include <QFile>
#include <gtest/gtest.h>

namespace borewright {
namespace {

TEST(NextWorkbook, TextStillTypedStaysWithItsOwnWorkbook) {
    test::Shop shop;
    const QString first = shop.folder.filePath("first.borebook");
    const QString second = shop.folder.filePath("second.borebook");
    const QString demo = QStringLiteral(BOREWRIGHT_SOURCE_DIR) + "/demo/";
    ASSERT_TRUE(QFile::copy(demo + "saltmarsh-v6.borebook", first));
    ASSERT_TRUE(QFile::copy(demo + "rushmere-3.borebook", second));
    for (const QString& path : {first, second})
        QFile::setPermissions(path, QFile::ReadOwner | QFile::WriteOwner);
    ASSERT_TRUE(shop.window.openPath(first));
    shop.window.showPage(Page::sheet);
    auto* field = shop.window.page(Page::sheet)->findChild<SummaryField*>();
    ASSERT_NE(field, nullptr);
    field->setFocus();
    QTest::keyClicks(field, "for the first");
    ASSERT_TRUE(shop.window.openPath(second));
    QTest::qWait(10);
    EXPECT_FALSE(shop.workshop.document().undoStack().canUndo())
        << shop.workshop.document().undoStack().undoText().toStdString();
    const auto left = loadWorkbook(shop.files, first.toStdString());
    ASSERT_TRUE(left) << left.error().message();
    EXPECT_NE(writeWorkbook(*left).find("for the first"), std::string::npos)
        << "lost from its own workbook";
    EXPECT_EQ(writeWorkbook(shop.workshop.document().workbook()).find("for the first"),
              std::string::npos)
        << "went into the other";
}

} // namespace
} // namespace borewright
