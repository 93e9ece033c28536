// SPDX-License-Identifier: GPL-3.0-or-later
// The program typing on a disk that the preloaded library makes bad or slow.
#include "app/document/this_bench.h"
#include "app/shell/window.h"
#include "core/storage/saver.h"
#include "core/storage/workbook_file.h"
#include "tests/app/bad_disk.h"
#include "tests/app/typist.h"
#include "tests/shim/disk_shim.h"
#include "tests/support/blocks.h"

#include <QElapsedTimer>
#include <QFile>
#include <QFileInfo>
#include <QTest>

#include <array>
#include <cerrno>
#include <cstdio>
#include <fstream>
#include <functional>
#include <vector>

#include <dlfcn.h>

namespace borewright::test {
namespace {

using State = Autosaver::State;

// The preloaded library, by its exported names.
class Disk {
public:
    explicit Disk(const QString& folder)
        : m_folder(folder.toStdString())
        , m_order(reinterpret_cast<DiskShimOrder>(dlsym(RTLD_DEFAULT, diskShimOrderName)))
        , m_calls(reinterpret_cast<DiskShimCalls>(dlsym(RTLD_DEFAULT, diskShimCallsName))) {}
    [[nodiscard]] bool isThere() const { return m_order != nullptr && m_calls != nullptr; }
    void order(const DiskShimOrders& orders) const { m_order(m_folder.c_str(), &orders); }
    void healthy() const { order({-1, 0, 0, 0, 0}); }
    [[nodiscard]] int calls() const { return m_calls(); }

private:
    std::string m_folder;
    DiskShimOrder m_order;
    DiskShimCalls m_calls;
};

struct Tally {
    int cases = 0, saved = 0, told = 0, rescued = 0;
    int falselySaved = 0, damaged = 0, unhealed = 0;
};

bool settled(const Autosaver& saver) {
    return QTest::qWaitFor(
        [&] { return saver.state() == State::saved || saver.state() == State::failed; }, 10'000);
}

// Where the disk is well: not below the folder that is watched.
QString healthyBeside(const QString& folder) {
    return QFileInfo(folder).path() + "/rescue";
}

class FaultRun {
public:
    FaultRun(const QString& folder, const Disk& disk)
        : m_disk(disk)
        , m_typist(folder, healthyBeside(folder))
        , m_saver(m_typist.workshop.autosaver()) {
        using std::chrono::milliseconds;
        m_saver.setDelays({milliseconds(0), milliseconds(20), milliseconds(20)});
    }
    bool begin() { return m_saver.flush(5000); }
    // One change saved under the orders, over the earlier file or where that was taken away; false
    // where it was over before they struck.
    bool run(const DiskShimOrders& orders, bool earlier);
    Tally tally;

private:
    [[nodiscard]] std::optional<Workbook> at(const QString& path) {
        auto read = loadWorkbook(m_typist.files, path.toStdString());
        return read ? std::optional(std::move(*read)) : std::nullopt;
    }
    void change() {
        if (m_typist.typed() > 60 || (tally.cases % 2 == 1 && m_typist.typed() > 0))
            m_typist.workshop.document().undoStack().undo();
        else if (!m_typist.typeNext())
            ++tally.damaged;
    }
    void judge(const Workbook& before, bool earlier);

    const Disk& m_disk;
    Typist m_typist;
    Autosaver& m_saver;
};

bool FaultRun::run(const DiskShimOrders& orders, bool earlier) {
    if (!earlier) QFile::remove(m_saver.path());
    const Workbook before = m_typist.workshop.document().workbook();
    m_disk.order(orders);
    change();
    const bool answered = settled(m_saver);
    const bool struck = m_disk.calls() > orders.call;
    m_disk.healthy();
    ++tally.cases;
    if (!answered) ++tally.unhealed;
    judge(before, earlier);
    if (!m_saver.flush(5000) && !(QTest::qWait(50), m_saver.flush(5000))) ++tally.unhealed;
    if (at(m_saver.path()) != m_typist.workshop.document().workbook()) ++tally.unhealed;
    return struck;
}

void FaultRun::judge(const Workbook& before, bool earlier) {
    const Workbook& now = m_typist.workshop.document().workbook();
    const auto kept = at(m_saver.path());
    const bool gone = !earlier && !QFile::exists(m_saver.path());
    if (!gone && kept != before && kept != now) ++tally.damaged;
    if (m_saver.state() == State::saved) {
        ++tally.saved;
        if (kept != now) ++tally.falselySaved;
        return;
    }
    ++tally.told;
    if (m_saver.rescuePath().isEmpty()) return;
    ++tally.rescued;
    if (at(m_saver.rescuePath()) != now) ++tally.falselySaved;
}

// How long this thread was ready to run but had no core, in nanoseconds: a busy machine, not ours.
long long waitedForACore() {
    std::ifstream file("/proc/thread-self/schedstat");
    long long ran = 0, waited = 0;
    file >> ran >> waited;
    return waited;
}

// Does `work`, and returns the longest time the window stood still meanwhile, in ms: the window's
// beat must go on also where `work` waits for the disk.
double longestStandstill(const std::function<void()>& work) {
    QElapsedTimer clock;
    clock.start();
    qint64 last = clock.nsecsElapsed(), worst = 0;
    long long lastWaited = waitedForACore();
    const auto beatOnce = [&] {
        const qint64 now = clock.nsecsElapsed();
        const long long waited = waitedForACore();
        worst = std::max(worst, now - last - (waited - lastWaited));
        last = now;
        lastWaited = waited;
    };
    QTimer beat;
    QObject::connect(&beat, &QTimer::timeout, beatOnce);
    beat.start(1);
    work();
    beatOnce();
    return static_cast<double>(worst) / 1e6;
}

// Types every 20 ms for `ms` and returns the longest time the window stood still, in ms.
double worstStandstill(Typist& typist, int ms) {
    return longestStandstill([&] {
        QTimer keys;
        QObject::connect(&keys, &QTimer::timeout, [&] { (void)typist.typeNext(); });
        keys.start(20);
        QTest::qWait(ms);
    });
}

} // namespace

int workUnderFaults(const QString& folder, bool interruptedOnly) {
    const Disk disk(folder);
    if (!disk.isThere()) return 3;
    disk.healthy();
    FaultRun run(folder, disk);
    if (!run.begin()) return 4;
    std::vector<int> errors{EINTR};
    if (!interruptedOnly) errors = {ENOSPC, EDQUOT, EIO, EROFS, EACCES, EINTR, ENOENT, 0};
    for (const bool earlier : {true, false})
        for (const int share : {0, 1})
            for (const int fromThenOn : {0, 1})
                for (const int error : errors)
                    for (int call = 0; call < 60; ++call)
                        if (!run.run({call, fromThenOn, error, share, 0}, earlier)) break;
    const Tally& tally = run.tally;
    std::printf("cases %d saved %d told %d rescued %d false %d damaged %d unhealed %d\n",
                tally.cases, tally.saved, tally.told, tally.rescued, tally.falselySaved,
                tally.damaged, tally.unhealed);
    return 0;
}

int workOnSlowDisk(const QString& folder) {
    const Disk disk(folder);
    if (!disk.isThere()) return 3;
    disk.healthy();
    Typist typist(folder, healthyBeside(folder));
    if (!typist.workshop.autosaver().flush(5000)) return 4;
    (void)typist.typeNext(); // what is made once, as the first picture, is no matter of the disk
    QTest::qWait(500);
    for (const int milliseconds : {2000, -2000}) {
        disk.order({-1, 0, 0, 0, milliseconds});
        const double worst = worstStandstill(typist, 2500);
        std::printf("worst %.1f\n", worst);
    }
    std::printf("readings %zu\n", typist.typed());
    disk.healthy();
    const bool saved = QTest::qWaitFor(
        [&] { return typist.workshop.autosaver().state() == State::saved; }, 20'000);
    const auto kept = loadWorkbook(typist.files, typist.workshop.autosaver().path().toStdString());
    std::printf("held %d\n", saved && kept && *kept == typist.workshop.document().workbook());
    return 0;
}

namespace {

// The window with a real lock, opening and closing a workbook.
struct OpeningBench {
    explicit OpeningBench(const QString& folder)
        : processes(files)
        , workshop({files,
                    clock,
                    dialogs,
                    sounds,
                    preferences,
                    healthyBeside(folder),
                    folder,
                    {},
                    thisBench(processes),
                    &processes})
        , window(workshop) {
        window.show();
    }
    PosixFileSystem files;
    StandingClock clock;
    AnsweringDialogs dialogs;
    CountingSounds sounds;
    PreferencesStore preferences;
    MachineProcesses processes;
    Workshop workshop;
    Window window;
};

} // namespace

int openOnSlowDisk(const QString& folder) {
    const Disk disk(folder);
    if (!disk.isThere()) return 3;
    disk.healthy();
    QApplication::setQuitOnLastWindowClosed(false); // it is shown again for the next disk
    const QString path = folder + "/job.borebook";
    const QString other = folder + "/other.borebook";
    OpeningBench bench(folder);
    for (const QString& begun : {path, other})
        if (!save(bench.files, begun.toStdString(), writeWorkbook(inchBlock(4)))) return 4;
    if (!bench.window.openPath(path)) return 5; // pages are built once
    bench.window.showPage(Page::block);
    bench.workshop.settleLock();
    for (const int milliseconds : {2000, -2000}) {
        disk.order({-1, 0, 0, 0, milliseconds});
        const double worst = longestStandstill([&] {
            std::printf("opened %d\n", bench.window.openPath(other));
            Job job;
            job.customer = "A. Example " + std::to_string(milliseconds);
            (void)bench.workshop.document().edit(SetJob{job}, "customer");
            (void)bench.window.openPath(path); // not before the change is saved, or told
            job.customer += " again";
            (void)bench.workshop.document().edit(SetJob{job}, "customer");
            bench.window.close();
        });
        disk.healthy();
        (void)bench.workshop.autosaver().flush(20'000);
        bench.workshop.settleLock();
        std::printf("worst %.1f\n", worst);
        bench.window.show();
        if (!bench.window.openPath(path)) return 6;
    }
    return 0;
}

} // namespace borewright::test
