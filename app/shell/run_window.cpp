// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/run_window.h"

#include "app/document/this_bench.h"
#include "app/ledger/ledger_place.h"
#include "app/shell/bench_sounds.h"
#include "app/shell/desk_keyring.h"
#include "app/shell/file_verbs.h"
#include "app/shell/preferences_file.h"
#include "app/shell/system_outside.h"
#include "app/shell/theme.h"
#include "app/shell/window.h"
#include "core/storage/posix_file_system.h"

#include <QApplication>
#include <QFileDialog>
#include <QProcess>
#include <QScreen>

#include <cstdio>

// The drawings lie in a static library, from which the linker would leave them out unasked.
static void takeResources() {
    Q_INIT_RESOURCE(borewright);
}

namespace borewright {
namespace {

// The file named on the command line, else the last job where it is still there, else a new one.
void showFirst(Window& window, const Workshop& workshop, const QString& last) {
    const QStringList arguments = QCoreApplication::arguments();
    const QString file = arguments.size() > 1 ? arguments.at(1) : last;
    if (file.isEmpty() || !window.openPath(file)) window.showStart();
    if (!workshop.isOpen()) return;
    window.showPage(Page::measure);
}

LedgerMeans ledgerMeans(Keyring& keyring) {
    return {QString::fromStdString(usualLedger().file), ledgerSettingsPath(), &keyring,
            [](QWidget* before, const QString& title, const QString& beginning) {
                return QFileDialog::getExistingDirectory(before, title, beginning);
            }};
}

// A copy to look at has a window of its own, in a process of its own.
void openBesides(const Window& window) {
    QObject::connect(window.findChild<FileVerbs*>(), &FileVerbs::besideAsked, &window,
                     [](const QString& path) {
                         QProcess::startDetached(QCoreApplication::applicationFilePath(), {path});
                     });
}

// With its frame the usual size would not fit a small screen.
void showInItsRoom(Window& window) {
    const QSize room = window.screen()->availableSize();
    if (room.width() < 1300 || room.height() < 860)
        window.showMaximized();
    else
        window.show();
}

void tellTiming(const Window& window, std::chrono::steady_clock::time_point started) {
    if (qEnvironmentVariable("BOREWRIGHT_TIMING") != QStringLiteral("1")) return;
    QObject::connect(&window, &Window::firstPainted, &window, [started] {
        const auto elapsed = std::chrono::steady_clock::now() - started;
        const auto ms = std::chrono::duration_cast<std::chrono::milliseconds>(elapsed);
        std::printf("first paint after %lld ms\n", static_cast<long long>(ms.count()));
        std::fflush(stdout);
    });
}

} // namespace

// Qt ends the process with an abort where there is no display; this asks before it does.
static bool hasDisplay() {
#if defined(Q_OS_UNIX) && !defined(Q_OS_DARWIN)
    return qEnvironmentVariableIsSet("DISPLAY") || qEnvironmentVariableIsSet("WAYLAND_DISPLAY") ||
           qEnvironmentVariableIsSet("QT_QPA_PLATFORM");
#else
    return true;
#endif
}

int runWindow(int argc, char** argv, std::chrono::steady_clock::time_point started) {
    if (!hasDisplay()) {
        std::fputs("borewright: there is no display to open a window on; "
                   "borewright --help tells what works without one\n",
                   stderr);
        return 3;
    }
    takeResources();
    QApplication application(argc, argv);
    QApplication::setApplicationName(QStringLiteral("borewright"));
    QApplication::setApplicationDisplayName(QString());
    QApplication::setDesktopFileName(QStringLiteral("borewright"));
    Theme theme(application);
    PosixFileSystem files;
    PreferencesStore preferences;
    PreferencesFile preferencesFile(preferences, files, preferencesPath());
    theme.apply(preferences.value().theme);
    QApplication::setWindowIcon(QIcon(QStringLiteral(":/icons/borewright.svg")));
    SystemDialogs dialogs;
    BenchSounds sounds(preferences, soundFolder());
    SystemClock clock;
    MachineProcesses processes(files);
    DeskKeyring keyring;
    Workshop workshop({files, clock, dialogs, sounds, preferences, rescueFolder(), workbookFolder(),
                       copiesFolder(), thisBench(processes), &processes, ledgerMeans(keyring)});
    Window window(workshop);
    QObject::connect(&preferences, &PreferencesStore::changed, &window,
                     [&] { theme.apply(preferences.value().theme); });
    QObject::connect(&window, &Window::deskThemeChanged, &window,
                     [&] { theme.followDesk(preferences.value().theme); });
    QObject::connect(&preferencesFile, &PreferencesFile::failed, &window, &Window::say);
    openBesides(window);
    tellTiming(window, started);
    QObject::connect(&workshop.ledgerSettings(), &LedgerSettingsStore::failed, &window,
                     &Window::say);
    for (const QString& notice : {workshop.ledgerSettings().notice(), preferencesFile.notice()})
        if (!notice.isEmpty()) window.say(notice);
    showFirst(window, workshop, preferences.value().lastFile);
    showInItsRoom(window);
    return QApplication::exec();
}

} // namespace borewright
