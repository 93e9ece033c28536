// SPDX-License-Identifier: GPL-3.0-or-later
// The runner of the ledger's tests: offscreen unless told otherwise, with a server of their own.
#include "tests/app/ledger/keyring_hand.h"

#include <QApplication>
#include <QFont>
#include <QStandardPaths>
#include <QStyleFactory>

#include <gtest/gtest.h>

#include <string_view>

// The drawings lie in a static library, from which the linker would leave them out unasked.
static void takeResources() {
    Q_INIT_RESOURCE(borewright);
}

int main(int argc, char** argv) {
    if (argc > 3 && std::string_view(argv[1]) == "--keyring")
        return borewright::test::useKeyring(argc, argv);
    if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
    testing::InitGoogleTest(&argc, argv);
    QStandardPaths::setTestModeEnabled(true);
    QApplication application(argc, argv);
    takeResources();
    QApplication::setStyle(QStyleFactory::create("Fusion"));
    QFont font("Noto Sans");
    font.setPixelSize(14);
    QApplication::setFont(font);
    return RUN_ALL_TESTS();
}
