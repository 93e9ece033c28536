// SPDX-License-Identifier: GPL-3.0-or-later
// The runner of the window tests: offscreen unless told otherwise, with style and font pinned so
// that pictures are the same from machine to machine.
#include "tests/app/bad_disk.h"
#include "tests/app/robot.h"

#include <QApplication>
#include <QFont>
#include <QStandardPaths>
#include <QStyleFactory>

#include <gtest/gtest.h>

// The drawings lie in a static library, from which the linker would leave them out unasked.
static void takeResources() {
    Q_INIT_RESOURCE(borewright);
}

int main(int argc, char** argv) {
    if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
    testing::InitGoogleTest(&argc, argv);
    QStandardPaths::setTestModeEnabled(true);
    borewright::test::prepareBadDisk(); // before there are threads
    QApplication application(argc, argv);
    takeResources();
    QApplication::setStyle(QStyleFactory::create("Fusion"));
    QFont font("Noto Sans");
    font.setPixelSize(14);
    QApplication::setFont(font);
    // Started once more by the kill test, as the program that is to be killed.
    if (const QString folder = qEnvironmentVariable(borewright::test::robotVariable);
        !folder.isEmpty())
        return borewright::test::typeUntilKilled(folder);
    if (const QString work = qEnvironmentVariable(borewright::test::badDiskVariable);
        !work.isEmpty())
        return borewright::test::workOnBadDisk(work);
    return RUN_ALL_TESTS();
}
