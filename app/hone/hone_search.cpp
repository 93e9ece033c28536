// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/hone/hone_search.h"

#include <algorithm>

namespace borewright {
namespace {

// Long enough that fast typing is not held up, short enough not to be noticed.
constexpr int soon_ms = 250;

} // namespace

// Copies: the window goes on with its own.
struct HoneSearch::Question {
    Workbook workbook;
    Results results;
    DisplayUnits units;
    HoneWishes wishes;
    int bore = 0;
    bool alternatives = false;
    std::shared_ptr<HoneMemory> memory;
    quint64 wanted = 0;
    quint64 revision = 0;
};

HoneSearch::HoneSearch(Document& document, const Selection& selection, QObject* parent)
    : QObject(parent)
    , m_document(document)
    , m_selection(selection)
    , m_memory(newHoneMemory()) {
    m_soon.setSingleShot(true);
    m_soon.setInterval(soon_ms);
    connect(&m_soon, &QTimer::timeout, this, &HoneSearch::askNow);
    connect(&m_job, &LatestJob::ended, this, &HoneSearch::stateChanged);
}

void HoneSearch::outdate() {
    ++m_wanted;
    m_job.giveUp();
    emit stateChanged();
}

void HoneSearch::forget() {
    m_outlook = {};
    m_found = 0;
    m_boreFound = {};
    m_memory = newHoneMemory();
    outdate();
}

void HoneSearch::askSoon() {
    m_soon.start();
    emit stateChanged();
}

void HoneSearch::cancel() {
    m_soon.stop();
    m_job.giveUp();
    emit stateChanged();
}

void HoneSearch::finish() {
    if (m_soon.isActive()) askNow();
    m_job.finish();
}

void HoneSearch::setWishes(const HoneWishes& wishes) {
    if (wishes == m_wishes) return;
    m_wishes = wishes;
    outdate();
    askSoon();
}

void HoneSearch::setAlternativesWanted(bool wanted) {
    if (wanted == m_alternatives) return;
    m_alternatives = wanted;
    if (wanted) askSoon();
}

bool HoneSearch::isOfNow(int bore) const {
    return isOfNow() || m_boreFound == std::pair(bore, m_wanted);
}

const BoreOutlook* HoneSearch::bore(int number) const {
    const auto found = std::ranges::find(m_outlook.bores, number, &BoreOutlook::bore);
    return found == m_outlook.bores.end() ? nullptr : &*found;
}

const StoneOutlook* HoneSearch::stone(const std::string& id) const {
    const auto found = std::ranges::find(m_outlook.stones, id, &StoneOutlook::stone);
    return found == m_outlook.stones.end() ? nullptr : &*found;
}

QString HoneSearch::waitingWords() const {
    if (!m_outlook.refused.empty()) return QString::fromStdString(m_outlook.refused);
    return isSearching() ? tr("Working out what comes next …") : tr("What next? F5 works it out.");
}

void HoneSearch::askNow() {
    m_soon.stop();
    const Block& block = m_document.workbook().block;
    Question question{m_document.workbook(),
                      m_document.results(),
                      m_document.units(),
                      m_wishes,
                      block.bores.size() > 1 ? m_selection.bore() : 0,
                      m_alternatives,
                      m_memory,
                      m_wanted,
                      m_document.revision()};
    setProgress(0);
    m_job.start([this, question = std::move(question)](const LatestJob::Line& line) {
        search(question, line);
    });
    emit stateChanged();
}

// In the pool's thread: touches nothing of this object but through the line.
void HoneSearch::search(const Question& question, const LatestJob::Line& line) {
    int told = -1;
    const auto progress = [&](double share) {
        constexpr int steps = 20;
        if (const int now = static_cast<int>(share * steps); now != told) {
            told = now;
            line.tell([this, share] { setProgress(share); });
        }
        return !line.givenUp();
    };
    const auto ask = [&](const std::vector<int>& bores, bool alternatives) {
        return honeOutlook(question.workbook, question.results, question.units, question.wishes,
                           bores, alternatives, progress, question.memory);
    };
    const auto [wanted, revision] = std::pair(question.wanted, question.revision);
    if (question.bore != 0) {
        auto part = std::make_shared<const HoneOutlook>(ask({question.bore}, false));
        line.tell([=, this] { keepBore(*part, wanted, revision); });
        if (line.givenUp()) return;
    }
    auto whole = std::make_shared<HoneOutlook>(ask({}, false));
    line.tell([=, this] { keepAll(std::move(*whole), wanted, revision); });
    if (!question.alternatives || line.givenUp()) return;
    const int bore = question.bore != 0 || question.workbook.block.bores.empty()
                         ? question.bore
                         : question.workbook.block.bores.front().number;
    auto part = std::make_shared<const HoneOutlook>(ask({bore}, true));
    line.tell([=, this] {
        keepAlternatives(*part);
        emit found(revision);
    });
}

void HoneSearch::keepBore(const HoneOutlook& part, quint64 wanted, quint64 revision) {
    if (part.cancelled) return;
    for (const BoreOutlook& bore : part.bores) {
        const auto old = std::ranges::find(m_outlook.bores, bore.bore, &BoreOutlook::bore);
        if (old != m_outlook.bores.end())
            *old = bore;
        else
            m_outlook.bores.push_back(bore);
        m_boreFound = {bore.bore, wanted};
    }
    m_outlook.stones = part.stones;
    m_outlook.cautions = part.cautions;
    m_outlook.refused = part.refused;
    emit found(revision);
}

void HoneSearch::keepAll(HoneOutlook whole, quint64 wanted, quint64 revision) {
    if (whole.cancelled) return;
    for (BoreOutlook& bore : whole.bores)
        if (const BoreOutlook* old = this->bore(bore.bore); old != nullptr && m_found == wanted)
            bore.alternatives = old->alternatives;
    m_outlook = std::move(whole);
    m_found = wanted;
    emit found(revision);
}

void HoneSearch::keepAlternatives(const HoneOutlook& part) {
    if (part.cancelled) return;
    for (const BoreOutlook& bore : part.bores)
        for (BoreOutlook& kept : m_outlook.bores)
            if (kept.bore == bore.bore) kept.alternatives = bore.alternatives;
}

void HoneSearch::setProgress(double progress) {
    m_progress = progress;
    emit stateChanged();
}

} // namespace borewright
