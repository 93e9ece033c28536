// SPDX-License-Identifier: GPL-3.0-or-later
// The program with its page at the bench, and hands that type readings into it by keys: what the
// children of the tests are made of.
#pragma once

#include "app/measure/measure_page.h"
#include "app/shell/workshop.h"
#include "tests/support/bench_context.h"

#include <QString>

#include <string>

class QLineEdit;

namespace borewright::test {

// What a robot types as its n-th reading, in thou.
std::string robotText(std::size_t n);

class Typist {
public:
    // Begins a workbook of sixteen bores, 384 stations, in `folder`; rescue copies go elsewhere.
    Typist(const QString& folder, const QString& rescueFolder);

    // How many readings the workbook holds.
    [[nodiscard]] std::size_t typed();
    // Types the next reading; false where it was not kept.
    bool typeNext();

    PosixFileSystem files;
    StandingClock clock;
    AnsweringDialogs dialogs;
    CountingSounds sounds;
    PreferencesStore preferences;
    Workshop workshop;
    std::string survey;
    MeasurePage page;

private:
    QLineEdit* m_entry;
};

} // namespace borewright::test
