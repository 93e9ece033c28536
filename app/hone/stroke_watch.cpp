// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/hone/stroke_watch.h"

#include <cmath>

namespace borewright {
namespace {

constexpr int tick_ms = 20;
constexpr double ms = 1e-3, secondsAMinute = 60, hair = 1e-9;

} // namespace

StrokeWatch::StrokeWatch(QObject* parent)
    : QObject(parent) {
    m_timer.setInterval(tick_ms);
    m_timer.setTimerType(Qt::PreciseTimer);
    connect(&m_timer, &QTimer::timeout, this,
            [this] { pass(static_cast<double>(m_clock.restart()) * ms); });
}

void StrokeWatch::setUp(const std::vector<PlannedWindow>& windows, double beatsPerMinute) {
    m_planned = windows;
    m_beat = beatsPerMinute;
    reset();
}

void StrokeWatch::reset() {
    m_timer.stop();
    m_running = false;
    m_window = 0;
    m_seconds = 0;
    m_counted.assign(m_planned.size(), 0);
    emit changed();
}

void StrokeWatch::turn() {
    if (m_window >= m_planned.size()) reset();
    if (m_planned.empty()) return;
    m_running = !m_running;
    if (m_running) {
        m_clock.start();
        m_timer.start();
        if (m_seconds == 0) emit beat();
    } else {
        m_timer.stop();
    }
    emit changed();
}

const PlannedWindow* StrokeWatch::planned() const {
    return m_window < m_planned.size() ? &m_planned[m_window] : nullptr;
}

double StrokeWatch::wanted() const {
    const PlannedWindow* window = planned();
    return window == nullptr ? 0 : window->strokes * secondsAMinute / m_beat + window->holdSeconds;
}

int StrokeWatch::strokes() const {
    return static_cast<int>(std::floor(m_seconds * m_beat / secondsAMinute + hair));
}

void StrokeWatch::pass(double seconds) {
    if (!m_running) return;
    const int before = strokes();
    m_seconds += seconds;
    if (m_seconds + hair < wanted()) {
        m_counted[m_window] = m_seconds;
        if (strokes() != before) emit beat();
    } else {
        m_counted[m_window++] = wanted();
        m_seconds = 0;
        m_running = false;
        m_timer.stop();
        emit enough();
    }
    emit changed();
}

} // namespace borewright
