// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/hone/latest_job.h"

#include <QCoreApplication>
#include <QEvent>

namespace borewright {

void LatestJob::Line::tell(std::function<void()> what) const {
    QMetaObject::invokeMethod(
        m_job,
        [givenUp = m_givenUp, what = std::move(what)] {
            if (!*givenUp) what();
        },
        Qt::QueuedConnection);
}

LatestJob::LatestJob(QObject* parent)
    : QObject(parent) {
    m_pool.setMaxThreadCount(1);
}

LatestJob::~LatestJob() {
    giveUp();
    m_pool.waitForDone();
}

void LatestJob::start(std::function<void(const Line&)> work) {
    giveUp();
    m_givenUp = std::make_shared<std::atomic<bool>>(false);
    m_busy = true;
    Line line;
    line.m_job = this;
    line.m_givenUp = m_givenUp;
    m_pool.start([this, line, work = std::move(work)] {
        if (line.givenUp()) return;
        work(line);
        line.tell([this] {
            m_busy = false;
            emit ended();
        });
    });
}

void LatestJob::giveUp() {
    if (m_givenUp) *m_givenUp = true;
    m_pool.clear();
    m_busy = false;
}

void LatestJob::finish() {
    m_pool.waitForDone();
    QCoreApplication::sendPostedEvents(this, QEvent::MetaCall);
}

} // namespace borewright
