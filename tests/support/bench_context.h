// SPDX-License-Identifier: GPL-3.0-or-later
// A page's context for window tests: a clock that stands, dialogs that answer, sounds that count.
#pragma once

#include "app/context/page_context.h"
#include "core/storage/posix_file_system.h"

namespace borewright::test {

class StandingClock final : public Clock {
public:
    [[nodiscard]] Timestamp now() const override { return {m_seconds++, 60}; }

private:
    mutable std::int64_t m_seconds = 1'774'000'000;
};

class AnsweringDialogs final : public Dialogs {
public:
    QString answer; // to every question for a file
    QString fileToOpen(QWidget*, const QString&, const QString&) override { return answer; }
    QString fileToSave(QWidget*, const QString&, const QString&, const QString&) override {
        return answer;
    }
    bool setUpPrinter(QWidget*, QPrinter&) override { return false; }
};

class CountingSounds final : public Sounds {
public:
    int keptCount = 0, oddCount = 0, refusedCount = 0;
    void kept() override { ++keptCount; }
    void odd() override { ++oddCount; }
    void refused() override { ++refusedCount; }
};

// Everything a page needs, around a workbook.
struct Bench {
    explicit Bench(Workbook workbook)
        : document(clock)
        , selection(document) {
        document.open(std::move(workbook));
    }
    PageContext context() { return {document, selection, preferences, dialogs, sounds, files}; }

    StandingClock clock;
    Document document;
    Selection selection;
    PreferencesStore preferences;
    AnsweringDialogs dialogs;
    CountingSounds sounds;
    PosixFileSystem files;
};

} // namespace borewright::test
