// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/results/reckoning.h"

#include <algorithm>
#include <cstring>

namespace borewright {
namespace {

constexpr std::size_t mostRemembered = 20'000;

// All that a doubt depends on, as bytes.
class Key {
public:
    explicit Key(const TrialBore& bore) {
        add(static_cast<double>(bore.stations.size()));
        for (const TrialStation& s : bore.stations)
            for (const double value :
                 {static_cast<double>(s.level), static_cast<double>(s.axis), s.size_um,
                  s.judged ? 1.0 : 0.0, s.own.normal_um, s.own.step_um, s.own.local_um})
                add(value);
        for (const SharedDoubt& shared : bore.shared) {
            add(shared.u_um);
            add(static_cast<double>(shared.distribution));
            add(shared.freedom);
            for (const double loading : shared.loading)
                add(loading);
        }
        add(bore.ownFreedom);
        add(static_cast<double>(bore.rule));
    }
    [[nodiscard]] const std::string& text() const { return m_text; }

private:
    void add(double value) {
        char bytes[sizeof value];
        std::memcpy(bytes, &value, sizeof value);
        m_text.append(bytes, sizeof value);
    }
    std::string m_text;
};

TrialOptions optionsFor(Reckoning reckoning) {
    TrialOptions options;
    if (reckoning == Reckoning::quick) {
        options.leastRuns = options.mostRuns = 2;
        options.batchesARun = 2;
    }
    return options;
}

} // namespace

std::vector<std::shared_ptr<const BoreDoubt>>
DoubtMemory::doubtsFor(const std::vector<TrialBore>& bores, Reckoning reckoning) {
    if (m_known.size() > mostRemembered) m_known.clear();
    std::vector<std::string> keys;
    std::vector<TrialBore> missing;
    std::vector<std::string> missingKeys;
    for (const TrialBore& bore : bores) {
        keys.push_back(Key(bore).text());
        const auto found = m_known.find(keys.back());
        if (found != m_known.end() && (found->second.whole || reckoning == Reckoning::quick))
            continue;
        missing.push_back(bore);
        missingKeys.push_back(keys.back());
    }
    const std::vector<BoreDoubt> doubts = doubtsOf(missing, optionsFor(reckoning));
    for (std::size_t i = 0; i < doubts.size(); ++i)
        m_known[missingKeys[i]] = {missing[i], std::make_shared<const BoreDoubt>(doubts[i]),
                                   reckoning == Reckoning::whole};
    std::vector<std::shared_ptr<const BoreDoubt>> result;
    for (const std::string& key : keys) {
        const auto found = m_known.find(key);
        result.push_back(found == m_known.end() ? nullptr : found->second.doubt);
    }
    return result;
}

bool DoubtMemory::isSettled() const {
    return std::ranges::all_of(m_known, [](const auto& entry) { return entry.second.whole; });
}

std::vector<TrialBore> DoubtMemory::unsettled() const {
    std::vector<TrialBore> bores;
    for (const auto& [key, known] : m_known)
        if (!known.whole) bores.push_back(known.bore);
    return bores;
}

void DoubtMemory::learn(const std::vector<TrialBore>& bores, std::vector<BoreDoubt> doubts) {
    for (std::size_t i = 0; i < bores.size() && i < doubts.size(); ++i)
        m_known[Key(bores[i]).text()] = {
            bores[i], std::make_shared<const BoreDoubt>(std::move(doubts[i])), true};
}

std::vector<BoreDoubt> settle(const std::vector<TrialBore>& bores,
                              const std::function<bool()>& cancelled) {
    std::vector<BoreDoubt> doubts;
    for (const TrialBore& bore : bores) {
        std::vector<BoreDoubt> one = doubtsOf({&bore, 1}, {}, cancelled);
        if (one.empty()) return {};
        doubts.push_back(std::move(one.front()));
    }
    return doubts;
}

} // namespace borewright
