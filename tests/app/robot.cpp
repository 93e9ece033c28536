// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/robot.h"

#include "tests/app/typist.h"

#include <QApplication>
#include <QTimer>

#include <cstdio>

namespace borewright::test {

int typeUntilKilled(const QString& folder) {
    Typist typist(folder, folder + "/rescue");
    Autosaver& saver = typist.workshop.autosaver();
    // Soon after each change, so that many saves are under way when the kill comes.
    Autosaver::Delays delays;
    delays.afterChange = std::chrono::milliseconds(2);
    saver.setDelays(delays);
    std::size_t saved = 0;
    QObject::connect(&saver, &Autosaver::stateChanged, [&] {
        if (saver.state() != Autosaver::State::saved) return;
        saved = typist.typed();
        std::printf("saved %zu\n", saved);
        std::fflush(stdout);
    });
    std::printf("path %s\n", qPrintable(saver.path()));
    std::fflush(stdout);

    QTimer keys;
    QObject::connect(&keys, &QTimer::timeout, [&] {
        // "Saved" is told when the hand pauses: without, a robot would outrun it for ever.
        if (typist.typed() > saved + saved % 5) return;
        if (!typist.typeNext()) QApplication::exit(4); // refused, or the block is full
    });
    keys.start(3);
    return QApplication::exec();
}

} // namespace borewright::test
