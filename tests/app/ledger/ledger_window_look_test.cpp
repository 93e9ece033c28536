// SPDX-License-Identifier: GPL-3.0-or-later
// The ledger's window is never held up, however many jobs there are; every control has a name, and
// its pages are painted light and dark.
#include "app/ledger/ledger_connection.h"
#include "tests/app/ledger/ledger_window_support.h"

#include <QAbstractItemModelTester>
#include <QCheckBox>
#include <QElapsedTimer>
#include <QTabWidget>

#include <fstream>

namespace borewright {
namespace {

using namespace test;

// How long this thread was ready to run but had no core, in ms: a busy machine, not ours.
qint64 waitedForACore() {
    std::ifstream file("/proc/thread-self/schedstat");
    long long ran = 0, waited = 0;
    file >> ran >> waited;
    return waited / 1'000'000;
}

TEST_F(LedgerWindowTest, ManyJobsNeverHoldTheWindowAndComeAPageAtATime) {
    constexpr int many = 20'000;
    {
        auto store = LedgerStore::open({path("data/ledger.sqlite").toStdString(), {}});
        const auto done = (*store)->connection().together([&]() -> Result<void> {
            for (int i = 0; i < many; ++i)
                if (const auto put = (*store)->put(manyJobs(i)); !put) return put;
            return {};
        });
        ASSERT_TRUE(done.has_value()) << done.error().message();
    }
    open();
    QAbstractItemModelTester tester(table->model(),
                                    QAbstractItemModelTester::FailureReportingMode::Fatal);
    ASSERT_TRUE(QTest::qWaitFor([&] { return table->model()->rowCount() == many; }, 20'000));
    QElapsedTimer clock;
    clock.start();
    qint64 last = 0, worst = 0, lastWaited = waitedForACore();
    QTimer beat;
    QObject::connect(&beat, &QTimer::timeout, [&] {
        const qint64 now = clock.elapsed(), waited = waitedForACore();
        worst = std::max(worst, now - last - (waited - lastWaited));
        last = now;
        lastWaited = waited;
    });
    beat.start(1);
    for (const char letter : std::string("heronmarsh")) {
        QTest::keyClick(find, letter);
        QTest::qWait(15);
    }
    ASSERT_TRUE(QTest::qWaitFor([&] { return table->model()->rowCount() < 1000; }, 20'000));
    find->clear();
    choose(*window, "Sorted by", 3);
    QTest::keyClick(window->findChild<QCheckBox*>(), Qt::Key_Space);
    ASSERT_TRUE(QTest::qWaitFor([&] { return table->model()->rowCount() == many; }, 20'000));
    QTest::keyClick(table, Qt::Key_End, Qt::ControlModifier);
    // The highest serial number begins with 99.
    EXPECT_TRUE(QTest::qWaitFor(
        [&] { return table->model()->index(many - 1, 3).data().toString().startsWith("99-"); },
        20'000))
        << table->model()->index(many - 1, 3).data().toString().toStdString();
    beat.stop();
    std::printf("longest that the window stood still among %d jobs: %lld ms\n", many,
                static_cast<long long>(worst));
    EXPECT_LT(worst, 100);
}

TEST_F(LedgerWindowTest, EveryControlHasANameAndThePictureShowsNothingCutOff) {
    std::vector<JobEntry> jobs;
    for (int i = 0; i < 60; ++i)
        jobs.push_back(manyJobs(i));
    for (std::size_t i = 0; i < jobs.size(); ++i)
        jobs[i].invented = i == 7;
    put(jobs);
    const QString pictures = QStringLiteral(BOREWRIGHT_BUILD_DIR "/pictures");
    ASSERT_TRUE(QDir().mkpath(pictures));
    open();
    ASSERT_TRUE(QTest::qWaitFor([&] { return table->model()->rowCount() == 60; }));
    for (const QWidget* widget : window->findChildren<QWidget*>()) {
        const bool control = qobject_cast<const QAbstractButton*>(widget) != nullptr ||
                             qobject_cast<const QComboBox*>(widget) != nullptr ||
                             qobject_cast<const QLineEdit*>(widget) != nullptr;
        if (!control || (widget->focusPolicy() & Qt::TabFocus) == 0 || !widget->isVisible())
            continue;
        EXPECT_FALSE(widget->accessibleName().isEmpty() &&
                     (qobject_cast<const QAbstractButton*>(widget) == nullptr ||
                      static_cast<const QAbstractButton*>(widget)->text().isEmpty()))
            << widget->metaObject()->className() << " has no name";
    }
    auto* tabs = window->findChild<QTabWidget*>();
    for (const bool dark : {false, true}) {
        QApplication::setPalette(dark ? darkPalette() : lightPalette());
        fillIn(*tabs->widget(1), "Engine", "salt");
        fillIn(*tabs->widget(3), "Gauge or master", "no. 2");
        QTest::qWait(100);
        for (int tab = 0; tab < tabs->count(); ++tab) {
            tabs->setCurrentIndex(tab);
            QTest::qWait(20);
            EXPECT_TRUE(window->grab().save(QStringLiteral("%1/ledger-%2%3.png")
                                                .arg(pictures)
                                                .arg(tab)
                                                .arg(dark ? "-dark" : "")));
        }
    }
    QApplication::setPalette(lightPalette());
}

} // namespace
} // namespace borewright
