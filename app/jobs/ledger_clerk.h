// SPDX-License-Identifier: GPL-3.0-or-later
// Asks the ledger from a thread of its own, so that no window waits for it. Of several questions
// of one kind only the latest is answered.
#pragma once

#include "app/ledger/ledger_store.h"

#include <QObject>
#include <QString>

#include <condition_variable>
#include <functional>
#include <list>
#include <map>
#include <mutex>
#include <optional>
#include <thread>

namespace borewright {

class LedgerClerk : public QObject {
    Q_OBJECT
public:
    explicit LedgerClerk(QObject* parent = nullptr);
    // Waits for the question under way: seconds where a server does not answer.
    ~LedgerClerk() override;

    // The ledger that is asked from now on; nothing = none. What was asked before is forgotten.
    void setAccess(const std::optional<LedgerAccess>& access);

    // `work` is carried out on the clerk's thread, `then` afterwards in the window's, unless
    // another question of this kind was asked meanwhile. Where it is refused, refused() is told
    // instead. Without a ledger nothing happens.
    template<class Answer>
    void ask(const QString& kind, std::function<Result<Answer>(LedgerStore&)> work,
             std::function<void(const Answer&)> then) {
        post(kind, [work = std::move(work), then = std::move(then)](LedgerStore& store) {
            auto answer = std::make_shared<Result<Answer>>(work(store));
            Told told;
            if (*answer)
                told.then = [answer, then] { then(**answer); };
            else
                told.problem = QString::fromStdString(answer->error().message());
            return told;
        });
    }
    // The next question opens the ledger anew: it may have been put aside meanwhile.
    void reopen();
    // Whatever of this kind was asked is not answered any more.
    void forget(const QString& kind);

signals:
    // Why a question of this kind has no answer, in a sentence part.
    void refused(const QString& kind, const QString& problem);
    // The ledger was opened: what has to be said about it (empty where nothing has), and whether
    // it was begun just now.
    void opened(const QString& notice, bool isNew);

private:
    struct Told {
        std::function<void()> then;
        QString problem;
    };
    using Work = std::function<Told(LedgerStore&)>;
    struct Question {
        QString kind;
        std::uint64_t number = 0;
        Work work;
    };

    void post(const QString& kind, Work work);
    void work();
    Told answer(const Question& question, const LedgerAccess& access);
    void deliver(const QString& kind, std::uint64_t number, const Told& told);

    std::map<QString, std::uint64_t> m_latest; // of the window's thread
    std::uint64_t m_number = 0;

    std::mutex m_mutex;
    std::condition_variable m_changed;
    std::list<Question> m_waiting;
    std::optional<LedgerAccess> m_access;
    bool m_moved = false; // the access is another than the store was opened with
    bool m_ending = false;
    std::unique_ptr<LedgerStore> m_store; // of the thread alone
    std::thread m_thread;                 // last: it uses all above
};

} // namespace borewright
