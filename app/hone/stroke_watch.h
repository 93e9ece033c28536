// SPDX-License-Identifier: GPL-3.0-or-later
// The stop-watch of a set-up: counts strokes and seconds of one window after another, sounds the
// beat, and stands still when a window has had its share, so that the hand can move its stop. No
// widget; time is handed in.
#pragma once

#include "core/results/hone_outlook.h"

#include <QElapsedTimer>
#include <QObject>
#include <QTimer>

namespace borewright {

class StrokeWatch : public QObject {
    Q_OBJECT
public:
    explicit StrokeWatch(QObject* parent = nullptr);

    // Another set-up: from its beginning, standing still.
    void setUp(const std::vector<PlannedWindow>& windows, double beatsPerMinute);
    // Starts, stops in the middle of a window, goes on, or begins the next.
    void turn();
    void reset();
    // What the timer does: so many seconds went by.
    void pass(double seconds);

    [[nodiscard]] bool isRunning() const { return m_running; }
    [[nodiscard]] std::size_t window() const { return m_window; } // = windows(): all are done
    [[nodiscard]] std::size_t windows() const { return m_planned.size(); }
    [[nodiscard]] double seconds() const { return m_seconds; } // of the current window
    [[nodiscard]] int strokes() const;                         // whole, of the current window
    // Seconds counted in each window so far.
    [[nodiscard]] const std::vector<double>& counted() const { return m_counted; }
    [[nodiscard]] const PlannedWindow* planned() const;

signals:
    void beat();
    void enough();  // a window has had its share
    void changed(); // what is shown differs

private:
    [[nodiscard]] double wanted() const; // seconds of the current window, hold included

    std::vector<PlannedWindow> m_planned;
    std::vector<double> m_counted;
    double m_beat = 60;
    std::size_t m_window = 0;
    double m_seconds = 0;
    bool m_running = false;
    QTimer m_timer;
    QElapsedTimer m_clock;
};

} // namespace borewright
