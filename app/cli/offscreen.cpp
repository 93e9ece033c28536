// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/offscreen.h"

#include "app/shell/theme.h"

// The drawings lie in a static library, from which the linker would leave them out unasked.
static void takeResources() {
    Q_INIT_RESOURCE(borewright);
}

namespace borewright {
namespace {

// An application keeps references to these for as long as it lives.
int argumentCount = 1;
char programName[] = "borewright";
char* arguments[] = {programName, nullptr};

} // namespace

Offscreen::Offscreen() {
    takeResources();
    if (QCoreApplication::instance() != nullptr) return;
    // What the platform without a display cannot do is of no interest to a script.
    qInstallMessageHandler([](QtMsgType, const QMessageLogContext&, const QString&) {});
    // Without a display the usual platform ends the process; nothing is shown here anyway.
    qputenv("QT_QPA_PLATFORM", "offscreen");
    m_own = std::make_unique<QApplication>(argumentCount, arguments);
    useTheme(false);
}

Offscreen::~Offscreen() = default;

void Offscreen::useTheme(bool dark) const {
    Theme theme(*qApp);
    theme.apply(dark ? Preferences::Theme::dark : Preferences::Theme::light);
}

} // namespace borewright
