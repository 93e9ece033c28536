// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/run_window.h"

#include "app/shell/theme.h"
#include "app/shell/window.h"

#include <QApplication>
#include <QElapsedTimer>
#include <QFileDialog>
#include <QPrintDialog>
#include <QTimer>

#include <cstdio>

// The drawings lie in a static library, from which the linker would leave them out unasked.
static void takeResources() {
    Q_INIT_RESOURCE(borewright);
}

namespace borewright {
namespace {

class SystemDialogs final : public Dialogs {
public:
    QString fileToOpen(QWidget* parent, const QString& title, const QString& filter) override {
        return QFileDialog::getOpenFileName(parent, title, {}, filter);
    }
    QString fileToSave(QWidget* parent, const QString& title, const QString& proposal,
                       const QString& filter) override {
        return QFileDialog::getSaveFileName(parent, title, proposal, filter);
    }
    bool setUpPrinter(QWidget* parent, QPrinter& printer) override {
        return QPrintDialog(&printer, parent).exec() == QDialog::Accepted;
    }
};
class Silence final : public Sounds {
public:
    void kept() override {}
    void odd() override {}
    void refused() override {}
};
class NoFiles final : public FileSystem {};

} // namespace

int runWindow(int argc, char** argv) {
    takeResources();
    QApplication application(argc, argv);
    Theme theme(application);
    theme.apply(Preferences::Theme::system);
    SystemDialogs dialogs;
    Silence sounds;
    NoFiles files;
    SystemClock clock;
    PreferencesStore preferences;
    Workshop workshop({files, clock, dialogs, sounds, preferences, {}, {}});
    Window window(workshop);
    window.showPage(Page::block);
    window.show();
    return QApplication::exec();
}

} // namespace borewright
