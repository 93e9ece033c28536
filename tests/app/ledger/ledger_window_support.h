// SPDX-License-Identifier: GPL-3.0-or-later
// The ledger's window over a ledger of the test's own.
#pragma once

#include "app/jobs/ledger_window.h"
#include "app/shell/theme.h"
#include "tests/app/form_hands.h"
#include "tests/app/ledger/ledger_desk_support.h"
#include "tests/app/ledger/made_jobs.h"
#include "tests/support/bench_context.h"

#include <QApplication>
#include <QDir>
#include <QTableView>

namespace borewright::test {

class LedgerWindowTest : public LedgerDeskTest {
protected:
    LedgerWindowTest() {
        EXPECT_TRUE(QDir().mkpath(path("data")));
        EXPECT_TRUE(QDir().mkpath(path("jobs")));
    }
    void put(const std::vector<JobEntry>& jobs) const {
        auto store = LedgerStore::open({path("data/ledger.sqlite").toStdString(), {}});
        ASSERT_TRUE(store.has_value()) << store.error().message();
        const auto done = (*store)->put(jobs.front());
        ASSERT_TRUE(done.has_value());
        for (const JobEntry& job : jobs)
            ASSERT_TRUE((*store)->put(job).has_value());
    }
    // As a hand does: the window comes up and the list is there.
    void open() {
        start();
        window = std::make_unique<LedgerWindow>(LedgerOutside{
            *desk, *settings, dialogs,
            [this](QWidget*, const QString&, const QString&) { return dialogs.answer; }, files,
            path("nowhere"),
            [this](const QString& file) {
                opened += file;
                return refusal;
            }});
        QApplication::setPalette(lightPalette());
        window->show();
        window->activateWindow();
        list = window->findChild<JobsList*>();
        table = named<QTableView>(*window, "All jobs");
        find = named<QLineEdit>(*window, "Find");
        QTest::qWait(1);
    }
    // The column's texts from the top, joined, as soon as they are what is wanted.
    std::string column(int which) const {
        std::string texts;
        for (int row = 0; row < std::min(8, table->model()->rowCount()); ++row)
            texts += (row == 0 ? "" : " | ") +
                     table->model()->index(row, which).data().toString().toStdString();
        return texts;
    }
    bool shows(int which, const std::string& texts) const {
        return QTest::qWaitFor([&] { return column(which) == texts; }, 10'000);
    }
    [[nodiscard]] std::vector<JobEntry> three() const {
        JobEntry ash = madeJob(1, "Ash & Son", "Saltmarsh V6", "SM-0042");
        JobEntry birch = madeJob(2, "Birch", "Rushmere 3", "RM-1");
        JobEntry cedar = madeJob(3, "Cedar", "Saltmarsh V4", "SM-7");
        for (JobEntry* job : {&ash, &birch, &cedar})
            job->invented = false;
        return {ash, birch, cedar};
    }
    // A sentence that holds this text is seen somewhere in the window, sooner or later.
    bool says(const QString& text) const {
        return QTest::qWaitFor([&] {
            for (const QLabel* label : window->findChildren<QLabel*>())
                if (label->isVisible() && label->text().contains(text)) return true;
            return false;
        });
    }
    static constexpr int customer = 1, engine = 2;

    AnsweringDialogs dialogs;
    QStringList opened;
    QString refusal;
    std::unique_ptr<LedgerWindow> window;
    JobsList* list = nullptr;
    QTableView* table = nullptr;
    QLineEdit* find = nullptr;
};

} // namespace borewright::test
