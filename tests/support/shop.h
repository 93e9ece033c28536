// SPDX-License-Identifier: GPL-3.0-or-later
// A whole window over a folder of its own, with a clock that stands and dialogs that answer.
#pragma once

#include "app/shell/start_form.h"
#include "app/shell/window.h"
#include "tests/support/bench_context.h"

#include <QTemporaryDir>
#include <QTest>

namespace borewright::test {

struct Shop {
    Shop()
        : workshop({files, clock, dialogs, sounds, preferences, folder.filePath("rescue"),
                    folder.filePath("workbooks")})
        , window(workshop) {
        window.show();
        window.activateWindow();
        QTest::qWait(1);
    }
    // Real keys to whatever has the focus; '\n' is Enter of the number pad.
    void type(const std::string& keys) {
        for (const char key : keys) {
            QWidget* focus = window.focusWidget();
            ASSERT_NE(focus, nullptr) << "nothing has the focus";
            key == '\n' ? QTest::keyClick(focus, Qt::Key_Enter, Qt::KeypadModifier)
                        : QTest::keyClick(focus, key);
        }
    }
    // A V-less block of four, typed by keys alone; the survey form stands open afterwards.
    void typeNewBlock() {
        window.showStart();
        type("4\n\n3.42\n4.1\n\n\n\n3.424\n3\n2\nSaltmarsh/V6\nA. Example\n");
    }

    QTemporaryDir folder;
    PosixFileSystem files;
    StandingClock clock;
    AnsweringDialogs dialogs;
    CountingSounds sounds;
    PreferencesStore preferences;
    Workshop workshop;
    Window window;
};

} // namespace borewright::test
