// SPDX-License-Identifier: GPL-3.0-or-later
// The ledger's window by real keys and clicks: found as it is typed, sorted, opened, taken in,
// exported; and never held up, however many jobs there are.
#include "app/jobs/ledger_window.h"
#include "app/ledger/ledger_connection.h"
#include "app/shell/theme.h"
#include "tests/app/form_hands.h"
#include "tests/app/ledger/ledger_desk_support.h"
#include "tests/app/ledger/made_jobs.h"
#include "tests/support/bench_context.h"

#include <QAbstractItemModelTester>
#include <QCheckBox>
#include <QDir>
#include <QElapsedTimer>
#include <QHeaderView>
#include <QProgressBar>
#include <QTabWidget>
#include <QTableView>

#include <fstream>
#include <nlohmann/json.hpp>

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

TEST_F(LedgerWindowTest, FindsAsItIsTypedAndEnterOpensWhatIsChosen) {
    put(three());
    open();
    EXPECT_TRUE(shows(customer, "Cedar | Birch | Ash & Son")) << column(customer);
    QTest::keyClicks(window->focusWidget(), "saltm 42");
    EXPECT_TRUE(shows(customer, "Ash & Son")) << column(customer);
    EXPECT_EQ(named<QLabel>(*window, "Jobs found")->text(), "1 job");
    QTest::keyClick(window->focusWidget(), Qt::Key_Return);
    EXPECT_TRUE(says("/shop/jobs/000001.borebook is not there")) << window->notice().toStdString();
}

TEST_F(LedgerWindowTest, EnterAtOnceOpensWhatWasTypedForNotWhatStoodThereBefore) {
    std::vector<JobEntry> jobs = three();
    for (JobEntry& job : jobs) {
        job.file = path(QString::fromStdString(job.serial) + ".borebook").toStdString();
        write(QString::fromStdString(job.serial) + ".borebook", job.customer);
    }
    put(jobs);
    open();
    ASSERT_TRUE(shows(customer, "Cedar | Birch | Ash & Son")) << column(customer);
    find->setText("0042"); // as fast as nobody types
    QTest::keyClick(find, Qt::Key_Return);
    ASSERT_TRUE(QTest::qWaitFor([&] { return !opened.isEmpty(); }));
    EXPECT_EQ(opened, QStringList{path("SM-0042.borebook")});
    EXPECT_EQ(window->notice(), "");
    refusal = "SM-0042.borebook was not opened: it is damaged.";
    const QPoint at = table->visualRect(table->model()->index(0, 1)).center();
    QTest::mouseClick(table->viewport(), Qt::LeftButton, {}, at);
    QTest::mouseDClick(table->viewport(), Qt::LeftButton, {}, at);
    EXPECT_TRUE(says(refusal)) << "not said where he looks";
    EXPECT_EQ(opened.size(), 2);
}

TEST_F(LedgerWindowTest, SortsByAHeadAndByKeysAlone) {
    put(three());
    open();
    ASSERT_TRUE(shows(customer, "Cedar | Birch | Ash & Son")) << column(customer);
    const QHeaderView* head = table->horizontalHeader();
    const QPoint at(head->sectionViewportPosition(customer) + 10, head->height() / 2);
    QTest::mouseClick(head->viewport(), Qt::LeftButton, {}, at);
    EXPECT_TRUE(shows(customer, "Ash & Son | Birch | Cedar")) << column(customer);
    QTest::mouseClick(head->viewport(), Qt::LeftButton, {}, at);
    EXPECT_TRUE(shows(customer, "Cedar | Birch | Ash & Son")) << column(customer);
    choose(*window, "Sorted by", engine);
    EXPECT_TRUE(shows(engine, "Saltmarsh V6 | Saltmarsh V4 | Rushmere 3")) << column(engine);
    QTest::keyClick(window->findChild<QCheckBox*>(), Qt::Key_Space);
    EXPECT_TRUE(shows(engine, "Rushmere 3 | Saltmarsh V4 | Saltmarsh V6")) << column(engine);
}

TEST_F(LedgerWindowTest, DownLeadsIntoTheListAndUpBackAgain) {
    put(three());
    open();
    ASSERT_TRUE(shows(customer, "Cedar | Birch | Ash & Son")) << column(customer);
    EXPECT_EQ(window->focusWidget(), find) << "what is typed first looks for a job";
    QTest::keyClick(find, Qt::Key_Down);
    EXPECT_EQ(window->focusWidget(), table);
    QTest::keyClick(table, Qt::Key_Down);
    EXPECT_EQ(table->currentIndex().row(), 1);
    QTest::keyClick(table, Qt::Key_Up);
    QTest::keyClick(table, Qt::Key_Up);
    EXPECT_EQ(window->focusWidget(), find);
    QTest::keyClick(find, Qt::Key_Escape);
    EXPECT_FALSE(window->isVisible());
}

TEST_F(LedgerWindowTest, AFileThatIsGoneIsExplainedHereAndTakenOutOnceAsked) {
    put(three());
    open();
    ASSERT_TRUE(shows(customer, "Cedar | Birch | Ash & Son")) << column(customer);
    QTest::keyClick(find, Qt::Key_Return);
    EXPECT_EQ(QApplication::activeModalWidget(), nullptr);
    ASSERT_TRUE(says("/shop/jobs/000003.borebook is not there any more"))
        << window->notice().toStdString();
    EXPECT_TRUE(opened.isEmpty());
    button(*window, "Take it out of the list")->click();
    EXPECT_TRUE(shows(customer, "Birch | Ash & Son")) << column(customer);
    EXPECT_EQ(window->notice(), "");
}

TEST_F(LedgerWindowTest, AnEmptyLedgerSaysWhatToDoAndFillsFromTheFolderChosen) {
    open();
    EXPECT_TRUE(says("No job is in the ledger yet"));
    write("jobs/a.borebook", "Ash");
    write("jobs/b.borebook", "Birch");
    QFile broken(path("jobs/broken.borebook"));
    ASSERT_TRUE(broken.open(QIODevice::WriteOnly) && broken.write("{") > 0);
    broken.close();
    dialogs.answer = path("jobs");
    button(*window, "Take in a folder …")->click();
    choose(*window, "Sorted by", customer);
    EXPECT_TRUE(QTest::qWaitFor([&] { return table->model()->rowCount() == 2; }, 10'000));
    EXPECT_TRUE(window->notice().contains(path("jobs/broken.borebook")))
        << window->notice().toStdString();
    QTest::keyClicks(find, "nobody");
    EXPECT_TRUE(says("No job holds nobody."));
    find->clear();
    ASSERT_TRUE(QFile::remove(path("jobs/a.borebook")));
    ASSERT_TRUE(QFile::remove(path("jobs/broken.borebook")));
    button(*window, "Take in once more")->click();
    EXPECT_TRUE(QTest::qWaitFor([&] { return table->model()->rowCount() == 1; }, 10'000))
        << "from the folder of last time";
    EXPECT_EQ(window->notice(), "");
}

TEST_F(LedgerWindowTest, TakingInIsGivenUpAndTheLedgerIsAsItWas) {
    put(three());
    for (int i = 0; i < 400; ++i)
        write(QStringLiteral("jobs/%1.borebook").arg(i), "Dogwood");
    open();
    ASSERT_TRUE(shows(customer, "Cedar | Birch | Ash & Son")) << column(customer);
    dialogs.answer = path("jobs");
    button(*window, "Take in a folder …")->click();
    ASSERT_TRUE(window->takeInBar().isUnderWay());
    EXPECT_TRUE(window->findChild<QProgressBar*>()->isVisible());
    button(*window, "Give up")->click();
    ASSERT_TRUE(QTest::qWaitFor([&] { return !window->takeInBar().isUnderWay(); }, 20'000));
    EXPECT_FALSE(window->findChild<QProgressBar*>()->isVisible());
    EXPECT_EQ(customers(), "Ash & Son, Birch, Cedar");
}

TEST_F(LedgerWindowTest, SizesStandInTheUnitsOfEachJobOrAsHeWants) {
    put(three());
    open();
    ASSERT_TRUE(shows(customer, "Cedar | Birch | Ash & Son"));
    // 3.5020 to 3.5033 in by made_jobs.cpp; 25.4 mm an inch.
    EXPECT_EQ(table->model()->index(0, 5).data().toString(), u"3.5020 – 3.5033\u00a0in");
    choose(*window, "Sizes in", 2);
    EXPECT_EQ(table->model()->index(0, 5).data().toString(), u"88.951 – 88.984");
    EXPECT_EQ(table->model()->headerData(5, Qt::Horizontal, Qt::DisplayRole).toString(),
              "Before, mm");
    EXPECT_EQ(settings->value().units, LedgerSettings::Units::metric) << "kept for next time";
}

TEST_F(LedgerWindowTest, TotalsAnswerWhatARebuilderAsks) {
    put(three());
    open();
    auto* tabs = window->findChild<QTabWidget*>();
    const auto rows = [&](int tab) { return tabs->widget(tab)->findChild<QTableView*>()->model(); };
    tabs->setCurrentIndex(1);
    QTest::keyClicks(window->focusWidget(), "rushmere"); // the field of the page that came up
    ASSERT_TRUE(QTest::qWaitFor([&] { return rows(1)->rowCount() == 3; })) << rows(1)->rowCount();
    EXPECT_EQ(rows(1)->index(0, 5).data().toString(), "3.5031 in");
    tabs->setCurrentIndex(2);
    // Three jobs, each 4 thou in 72.5 strokes: 4 × 25.4 / 72.5 µm.
    ASSERT_TRUE(QTest::qWaitFor([&] { return rows(2)->rowCount() == 1; })) << rows(2)->rowCount();
    EXPECT_EQ(rows(2)->index(0, 7).data().toString(), "1.401 µm");
    choose(*window, "Sizes in", 1);
    EXPECT_TRUE(QTest::qWaitFor([&] {
        return rows(2)->index(0, 7).data().toString() == "0.0552 thou";
    })) << rows(2)->index(0, 7).data().toString().toStdString();
    tabs->setCurrentIndex(3);
    fillIn(*tabs->widget(3), "Gauge or master", "gauge no. 3");
    ASSERT_TRUE(QTest::qWaitFor([&] { return rows(3)->rowCount() == 3; })) << rows(3)->rowCount();
    tabs->widget(3)->findChild<QTableView*>()->setFocus();
    QTest::keyClick(tabs->widget(3)->findChild<QTableView*>(), Qt::Key_Down);
    QTest::keyClick(tabs->widget(3)->findChild<QTableView*>(), Qt::Key_Return);
    EXPECT_TRUE(says("is not there any more")) << "Enter did not open the job";
}

TEST_F(LedgerWindowTest, ExportsWhatIsFoundAsCsvAndJson) {
    put(three());
    open();
    find->setText("saltmarsh");
    ASSERT_TRUE(shows(customer, "Cedar | Ash & Son"));
    const auto exported = [&](const QString& name) {
        dialogs.answer = path(name);
        button(*list, "Export …")->click();
        EXPECT_TRUE(QTest::qWaitFor([&] { return QFile::exists(path(name)); }));
        QTest::qWait(50);
        QFile file(path(name));
        EXPECT_TRUE(file.open(QIODevice::ReadOnly));
        return file.readAll().toStdString();
    };
    const std::string csv = exported("jobs.csv");
    EXPECT_EQ(std::ranges::count(csv, '\n'), 3) << csv;
    EXPECT_NE(csv.find(",Cedar,Saltmarsh V4,SM-7,"), std::string::npos) << csv;
    const auto json = nlohmann::json::parse(exported("jobs.json"));
    ASSERT_EQ(json["jobs"].size(), 2U);
    EXPECT_EQ(json["jobs"][1]["serial"], "SM-0042");
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
