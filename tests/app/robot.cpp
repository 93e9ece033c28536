// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/robot.h"

#include "app/measure/measure_page.h"
#include "app/shell/workshop.h"
#include "tests/support/bench_context.h"
#include "tests/support/blocks.h"

#include <QApplication>
#include <QLineEdit>
#include <QTest>
#include <QTimer>

#include <cstdio>

namespace borewright::test {

std::string robotText(std::size_t n) {
    return "-" + std::to_string(n / 10 % 4) + "," + std::to_string(n % 10);
}

int typeUntilKilled(const QString& folder) {
    PosixFileSystem files;
    SystemClock clock;
    AnsweringDialogs dialogs;
    CountingSounds sounds;
    PreferencesStore preferences;
    Workshop workshop({files, clock, dialogs, sounds, preferences, folder + "/rescue", folder});
    Workbook workbook = inchBlock(
        16, {"0.25", "0.5", "0.75", "1", "1.25", "1.5", "1.75", "2", "2.25", "2.5", "2.75", "3"});
    const std::string survey = addSurvey(workbook, SurveyKind::asFound, "found");
    workshop.begin(std::move(workbook));
    const auto typed = [&] {
        return findSurvey(workshop.document().workbook(), survey)->readings.size();
    };
    // Soon after each change, so that many saves are under way when the kill comes.
    Autosaver::Delays delays;
    delays.afterChange = std::chrono::milliseconds(2);
    workshop.autosaver().setDelays(delays);
    std::size_t saved = 0;
    QObject::connect(&workshop.autosaver(), &Autosaver::stateChanged, [&] {
        if (workshop.autosaver().state() != Autosaver::State::saved) return;
        saved = typed();
        std::printf("saved %zu\n", saved);
        std::fflush(stdout);
    });
    std::printf("path %s\n", qPrintable(workshop.autosaver().path()));
    std::fflush(stdout);

    MeasurePage page(workshop.context());
    page.resize(1100, 700);
    page.show();
    auto* entry = page.findChild<QLineEdit*>("entry");
    if (entry == nullptr) return 3;
    QTimer keys;
    QObject::connect(&keys, &QTimer::timeout, [&] {
        const std::size_t before = typed();
        // "Saved" is told when the hand pauses: without, a robot would outrun it for ever.
        if (before > saved + saved % 5) return;
        for (const char c : robotText(before))
            QTest::keyClick(entry, c, Qt::KeypadModifier);
        QTest::keyClick(entry, Qt::Key_Enter, Qt::KeypadModifier);
        if (typed() != before + 1) QApplication::exit(4); // refused, or the block is full
    });
    keys.start(3);
    return QApplication::exec();
}

} // namespace borewright::test
