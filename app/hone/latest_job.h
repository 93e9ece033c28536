// SPDX-License-Identifier: GPL-3.0-or-later
// Work off the window's thread of which only the latest counts: a new job tells the one before to
// give up, and nothing that it still finds arrives.
#pragma once

#include <QObject>
#include <QThreadPool>

#include <atomic>
#include <functional>
#include <memory>

namespace borewright {

class LatestJob : public QObject {
    Q_OBJECT
public:
    // What a job uses to tell: whether it was given up, and what is to happen on the window's
    // thread if it was not.
    class Line {
    public:
        [[nodiscard]] bool givenUp() const { return *m_givenUp; }
        void tell(std::function<void()> what) const;

    private:
        friend class LatestJob;
        LatestJob* m_job = nullptr;
        std::shared_ptr<std::atomic<bool>> m_givenUp;
    };
    explicit LatestJob(QObject* parent = nullptr);
    ~LatestJob() override;

    void start(std::function<void(const Line&)> work);
    void giveUp();
    [[nodiscard]] bool isBusy() const { return m_busy; }
    // Waits for the job and has what it told happen.
    void finish();

signals:
    void ended(); // done, not given up

private:
    QThreadPool m_pool; // of one thread: a job begins when the one before has given up
    std::shared_ptr<std::atomic<bool>> m_givenUp;
    bool m_busy = false;
};

} // namespace borewright
