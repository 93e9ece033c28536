// SPDX-License-Identifier: GPL-3.0-or-later
// A disk may take seconds for what is a moment elsewhere. What the window needs from it before it
// can go on is read on another thread, and the window goes on painting meanwhile.
#pragma once

#include <QEventLoop>
#include <QThreadPool>

#include <optional>

namespace borewright {

// How long the window may stand still for the disk, in ms: half of the time that a screen shows one
// picture. Opening waits several times, and what it does between comes on top.
inline constexpr int unnoticed = 8;

// What `work` returns, run on a thread of its own. Keys and clicks wait until it is there; all else
// that happens in the window meanwhile is done, timers too.
template<class Work>
auto awake(Work work) {
    std::optional<decltype(work())> result;
    QEventLoop loop;
    QThreadPool thread;
    thread.setMaxThreadCount(1);
    thread.start([&] {
        result.emplace(work());
        QMetaObject::invokeMethod(&loop, &QEventLoop::quit, Qt::QueuedConnection);
    });
    if (!thread.waitForDone(unnoticed)) loop.exec(QEventLoop::ExcludeUserInputEvents);
    thread.waitForDone();
    return std::move(*result);
}

} // namespace borewright
