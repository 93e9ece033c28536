// SPDX-License-Identifier: GPL-3.0-or-later
// Where dated copies go, as typed in the preferences.
#include "app/shell/preferences_dialog.h"
#include "app/shell/preferences_file.h"
#include "tests/support/memory_file_system.h"
#include "tests/support/shop.h"

#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <gtest/gtest.h>

namespace borewright {
namespace {

struct CopiesFolder : testing::Test {
    CopiesFolder()
        : dialog(shop.preferences, shop.dialogs) {
        dialog.show();
        for (QLineEdit* edit : dialog.findChildren<QLineEdit*>())
            if (edit->accessibleName() == "Folder of dated copies") field = edit;
    }
    void enter(const QString& folder) const {
        field->setText(folder);
        emit field->editingFinished();
    }
    bool refuses() const {
        for (const QLabel* label : dialog.findChildren<QLabel*>())
            if (label->isVisible() && label->text().contains("whole name")) return true;
        return false;
    }
    QString kept() const { return shop.preferences.value().copiesFolder; }

    test::Shop shop;
    PreferencesDialog dialog;
    QLineEdit* field = nullptr;
};

TEST_F(CopiesFolder, AWholeNameIsKept) {
    ASSERT_NE(field, nullptr);
    enter(shop.folder.filePath("kept"));
    EXPECT_FALSE(refuses());
    EXPECT_EQ(kept(), shop.folder.filePath("kept"));
}

// Else copies would lie wherever the program happened to be started.
TEST_F(CopiesFolder, PartOfANameIsRefusedAndStaysToBeMended) {
    ASSERT_NE(field, nullptr);
    enter(shop.folder.filePath("kept"));
    enter("kept");
    EXPECT_TRUE(refuses());
    EXPECT_EQ(kept(), shop.folder.filePath("kept")) << "copies go on where they went";
    EXPECT_EQ(field->text(), "kept") << "what was typed is not lost";
    enter({});
    EXPECT_FALSE(refuses());
    EXPECT_EQ(kept(), QString());
}

// The window may be closed with the preferences open and the cursor in a field.
TEST(PreferencesOpenAtTheEnd, WhatWasTypedIsKept) {
    test::Shop shop;
    {
        PreferencesDialog dialog(shop.preferences, shop.dialogs);
        dialog.show();
        dialog.activateWindow();
        auto* name = dialog.findChild<QLineEdit*>();
        auto* address = dialog.findChild<QPlainTextEdit*>();
        ASSERT_TRUE(name && address);
        name->setFocus();
        name->setText("Harbour Lane");
        address->setPlainText("by the slip");
    }
    EXPECT_EQ(shop.preferences.value().shopName, "Harbour Lane");
    EXPECT_EQ(shop.preferences.value().shopAddress, "by the slip");
}

// As above, where somebody wrote it into the file itself: it would mean another folder wherever the
// program is started.
TEST(PreferencesByHand, PartOfANameForTheCopiesIsNotFollowedAndSaid) {
    MemoryFileSystem files;
    for (const auto& [folder, good] :
         {std::pair{"kept", false}, std::pair{"../kept", false}, std::pair{"~/kept", false},
          std::pair{"/shop/kept", true}, std::pair{"", true}}) {
        Preferences written;
        written.copiesFolder = folder;
        written.shopName = "Harbour Lane";
        files.put("/home/preferences.json", writePreferences(written));
        PreferencesStore store;
        const PreferencesFile file(store, files, "/home/preferences.json");
        EXPECT_EQ(store.value().copiesFolder, good ? QString(folder) : QString()) << folder;
        EXPECT_EQ(store.value().shopName, "Harbour Lane") << "all else stands";
        EXPECT_EQ(file.notice().isEmpty(), good) << file.notice().toStdString();
        EXPECT_EQ(file.notice().contains(QString(folder) + ", is not a whole path"), !good)
            << file.notice().toStdString();
    }
}

} // namespace
} // namespace borewright
