// SPDX-License-Identifier: GPL-3.0-or-later
// Keystroke to repaint on the page at the bench, at 16 bores × 12 depths × 2 axes × 10 surveys:
// each reading is typed by keys, kept with Enter, and the window painted; p50 and p99 are printed.
#include "app/measure/measure_page.h"
#include "core/storage/posix_file_system.h"
#include "tests/bench/large_block.h"

#include <QApplication>
#include <QElapsedTimer>
#include <QLineEdit>
#include <QStyleFactory>
#include <QTest>

#include <algorithm>
#include <cstdio>

namespace borewright {
namespace {

class NoDialogs final : public Dialogs {
    QString fileToOpen(QWidget*, const QString&, const QString&) override { return {}; }
    QString fileToSave(QWidget*, const QString&, const QString&, const QString&) override {
        return {};
    }
    bool setUpPrinter(QWidget*, QPrinter&) override { return false; }
};
class Silence final : public Sounds {
    void kept() override {}
    void odd() override {}
    void refused() override {}
};

void tell(const char* what, std::vector<double> times_ms) {
    std::ranges::sort(times_ms);
    const auto at = [&](double share) {
        return times_ms[static_cast<std::size_t>(share * static_cast<double>(times_ms.size() - 1))];
    };
    std::printf("%-28s n %4zu   p50 %6.2f ms   p99 %6.2f ms   max %6.2f ms\n", what,
                times_ms.size(), at(0.5), at(0.99), times_ms.back());
}

// Types a whole survey of `workbook` by keys; false where the page has no entry.
bool typeSurvey(const char* name, Workbook workbook) {
    SystemClock clock;
    Document document(clock);
    Selection selection(document);
    PreferencesStore preferences;
    NoDialogs dialogs;
    Silence sounds;
    PosixFileSystem files;
    MeasurePage page({document, selection, preferences, dialogs, sounds, files});
    page.resize(1280, 760);
    page.show();
    workbook.surveys.back().readings.clear();
    document.open(std::move(workbook));
    auto* entry = page.findChild<QLineEdit*>("entry");
    if (entry == nullptr) return false;
    entry->setFocus();
    QApplication::processEvents();
    std::vector<double> keys, kept;
    for (int i = 0; i < 380; ++i) {
        for (const char* key : {"1", ".", "5"}) {
            QElapsedTimer timer;
            timer.start();
            QTest::keyClicks(entry, key);
            QApplication::processEvents();
            keys.push_back(static_cast<double>(timer.nsecsElapsed()) / 1e6);
        }
        QElapsedTimer timer;
        timer.start();
        QTest::keyClick(entry, Qt::Key_Enter);
        QApplication::processEvents();
        kept.push_back(static_cast<double>(timer.nsecsElapsed()) / 1e6);
    }
    std::printf("%s\n", name);
    tell("a digit, to repaint", keys);
    tell("Enter: kept, to repaint", kept);
    return true;
}

} // namespace
} // namespace borewright

int main(int argc, char** argv) {
    using namespace borewright;
    if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication application(argc, argv);
    QApplication::setStyle(QStyleFactory::create("Fusion"));
    const Workbook block = bench::largeBlock(16, 12, 10, bench::WithGear::yes);
    const bool typed = typeSurvey("readings alone", block) &&
                       typeSurvey("with 4 sizes on offer, 24 pistons and 32 rings recorded",
                                  bench::withSizesAndFit(block));
    return typed ? 0 : 1;
}
