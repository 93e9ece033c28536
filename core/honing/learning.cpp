// SPDX-License-Identifier: GPL-3.0-or-later
// The learner: the log gone through with stones as long as they seem to be, and beside it what
// speaks for other lengths.
#include "core/honing/learning.h"

#include "core/honing/learning_lengths.h"

namespace borewright {

struct HoneLearner::Account {
    Bench stated;
    std::size_t bores = 0;
    LearningOptions given;
    LogLearner log;
    LengthsTried lengths;
};

namespace {

LearningEvent careOf(std::size_t stone, LearningEvent::Kind kind) {
    LearningEvent event;
    event.kind = kind;
    event.place = stone;
    return event;
}

} // namespace

HoneLearner::HoneLearner(Bench bench, std::size_t bores, const LearningOptions& options) {
    const Account account{bench, bores, options, LogLearner(bench, bores, options),
                          LengthsTried(bench, bores, options)};
    becomes(std::make_shared<Account>(account));
}

void HoneLearner::becomes(std::shared_ptr<const Account> account) {
    m_account = std::move(account);
    m_bench = m_account->log.bench();
    m_options = m_account->log.options();
}

Found HoneLearner::take(const LearningEvent& event) {
    auto account = std::make_shared<Account>(*m_account);
    Found found = account->log.take(event);
    account->lengths.take(event);
    if (event.kind == LearningEvent::Kind::survey && account->lengths.improve()) {
        account->log =
            LogLearner(account->lengths.with(account->stated), account->bores, account->given);
        for (const LearningEvent& told : account->lengths.told())
            account->log.take(told);
    }
    becomes(std::move(account));
    return found;
}

void HoneLearner::pass(std::size_t bore, const SetUp& setUp) {
    LearningEvent event;
    event.place = bore;
    event.setUp = setUp;
    take(event);
}

Found HoneLearner::survey(std::size_t bore, const std::vector<BoreReading>& readings,
                          double shared_um) {
    LearningEvent event;
    event.kind = LearningEvent::Kind::survey;
    event.place = bore;
    event.readings = readings;
    event.shared_um = shared_um;
    return take(event);
}

void HoneLearner::turned(std::size_t stone) {
    take(careOf(stone, LearningEvent::Kind::turned));
}

void HoneLearner::dressed(std::size_t stone) {
    take(careOf(stone, LearningEvent::Kind::dressed));
}

void HoneLearner::reversed(std::size_t stone) {
    take(careOf(stone, LearningEvent::Kind::reversed));
}

double HoneLearner::longer_mm(std::size_t stone) const {
    return m_account->lengths.longer_mm(stone);
}

Belief HoneLearner::belief(std::size_t bore) const {
    return m_account->log.belief(bore);
}

int HoneLearner::passes(std::size_t stone) const {
    return m_account->log.passes(stone);
}

double HoneLearner::errorFactor() const {
    return m_account->log.errorFactor();
}

bool HoneLearner::surveyed(std::size_t bore) const {
    return m_account->log.surveyed(bore);
}

} // namespace borewright
