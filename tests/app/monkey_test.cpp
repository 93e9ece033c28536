// SPDX-License-Identifier: GPL-3.0-or-later
// The monkey over all pages: nothing crashes, the file on disk is the workbook on the screen, and
// undoing everything gives the start. BOREWRIGHT_MONKEY_STEPS and BOREWRIGHT_MONKEY_SEED ask for
// more or others; BOREWRIGHT_MONKEY_TELLS prints each step before it is done.
#include "core/storage/workbook_file.h"
#include "tests/app/monkey.h"

#include <QApplication>
#include <QDir>
#include <QFile>
#include <QScopeGuard>

#include <gtest/gtest.h>

#include <algorithm>

namespace borewright {
namespace {

using test::Monkey;
using test::Shop;

int asked(const char* variable, int usual) {
    return qEnvironmentVariableIsSet(variable) ? qEnvironmentVariableIntValue(variable) : usual;
}

// What was open when undo began afresh.
struct Start {
    explicit Start(Workshop& workshop)
        : workbook(workshop.document().workbook()) {
        QObject::connect(&workshop, &Workshop::opened,
                         [this, &workshop] { workbook = workshop.document().workbook(); });
    }
    Workbook workbook;
};

void expectFileAgrees(Shop& shop, const Monkey& monkey) {
    const Workbook& workbook = shop.workshop.document().workbook();
    Autosaver& saver = shop.workshop.autosaver();
    ASSERT_TRUE(saver.flush(10'000))
        << saver.sentence().toStdString() << "; " << monkey.lastSteps();
    const auto held = loadWorkbook(shop.files, saver.path().toStdString());
    if (!held && saver.state() == Autosaver::State::nothingToSave) return; // nothing was changed
    ASSERT_TRUE(held) << held.error().message() << "; " << monkey.lastSteps();
    ASSERT_TRUE(*held == workbook) << "the file differs; " << monkey.lastSteps();
}

// The open workbook with the history of an earlier state, all of which was saved: it must stand at
// the beginning of the history of now, since that only grows.
Workbook withHistoryOf(const Workbook& earlier, Workshop& workshop) {
    Workbook now = workshop.document().workbook();
    const auto& before = earlier.history.entries;
    EXPECT_TRUE(std::ranges::mismatch(before, now.history.entries).in1 == before.end())
        << "the history was rewritten";
    now.history = earlier.history;
    return now;
}

void expectUndoGivesTheStart(Shop& shop, const Start& start, const Monkey& monkey) {
    QUndoStack& stack = shop.workshop.document().undoStack();
    (void)shop.workshop.autosaver().flush(10'000);
    const Workbook before = shop.workshop.document().workbook();
    const int index = stack.index();
    stack.setIndex(0);
    ASSERT_TRUE(withHistoryOf(start.workbook, shop.workshop) == start.workbook)
        << "undoing all does not give the start; " << monkey.lastSteps();
    stack.setIndex(index);
    ASSERT_TRUE(withHistoryOf(before, shop.workshop) == before)
        << "redoing all does not give the end; " << monkey.lastSteps();
}

// The offscreen platform says at each raised window that it cannot.
void quietly(QtMsgType, const QMessageLogContext&, const QString& text) {
    if (!text.startsWith("This plugin does not support"))
        std::fprintf(stderr, "%s\n", qPrintable(text));
}

TEST(Monkey, NeitherCrashesNorPartsFileAndWindowAndUndoGivesTheStart) {
    const int steps = asked("BOREWRIGHT_MONKEY_STEPS", 3000);
    const int seed = asked("BOREWRIGHT_MONKEY_SEED", 7);
    const auto loud = qInstallMessageHandler(quietly);
    const auto loudAgain = qScopeGuard([loud] { qInstallMessageHandler(loud); });
    Shop shop;
    // What it types for a folder's name is made where it works.
    const QString home = QDir::currentPath();
    const auto homeAgain = qScopeGuard([home] { QDir::setCurrent(home); });
    ASSERT_TRUE(QDir::setCurrent(shop.folder.path()));
    const QString path = shop.folder.filePath("start.borebook");
    ASSERT_TRUE(
        QFile::copy(QStringLiteral(BOREWRIGHT_SOURCE_DIR) + "/demo/saltmarsh-v6.borebook", path));
    QFile::setPermissions(path, QFile::ReadOwner | QFile::WriteOwner);
    ASSERT_TRUE(shop.window.openPath(path));
    const Start start(shop.workshop);
    Monkey monkey(shop, static_cast<unsigned>(seed));
    int changes = 0, rounds = 0;
    std::uint64_t revision = shop.workshop.document().revision();
    for (int step = 1; step <= steps; ++step) {
        monkey.step();
        changes += shop.workshop.document().revision() != revision ? 1 : 0;
        revision = shop.workshop.document().revision();
        if (step % 50 == 0) expectFileAgrees(shop, monkey);
        if (step % 500 == 0 || step == steps) {
            expectUndoGivesTheStart(shop, start, monkey);
            revision = shop.workshop.document().revision();
            ++rounds;
        }
        if (testing::Test::HasFatalFailure()) {
            std::printf("seed %d, step %d\n", seed, step);
            return;
        }
    }
    std::printf("%d steps of a monkey (seed %d): %d changed the workbook, %d times undone to the "
                "start; no crash, the file always agreed\n",
                steps, seed, changes, rounds);
    EXPECT_GT(changes, steps / 100) << "the monkey hardly did anything: this proves nothing";
}

} // namespace
} // namespace borewright
