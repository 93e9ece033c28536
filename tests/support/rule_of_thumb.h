// SPDX-License-Identifier: GPL-3.0-or-later
// How a practitioner hones without a plan: the full rough stone over all its reach until 4.5 thou
// are to go, the short stone low down until the closed end leads by 0.8, the full stone again until
// 1.0 is to go, going back to the short one as often as that lead is half lost, then the finish
// stone to size, measuring between and reckoning each time by what the last passes took. Common
// practice, no source.
#pragma once

#include "tests/support/closed_loop.h"

namespace borewright::test {

class RuleOfThumb final : public HonePolicy {
public:
    explicit RuleOfThumb(BoreAsStated stated)
        : m_stated(std::move(stated)) {}
    std::optional<HoneSetUp> next(const HoneHistory& history) override;
    static std::unique_ptr<HonePolicy> make(const BoreAsStated& stated);

private:
    enum class Stage { rough, low, roughAgain, finish, done };
    void advance(const std::vector<HoneReading>& read);
    [[nodiscard]] double toGo(const std::vector<HoneReading>& read) const;
    struct Leads {
        double lowest, above; // of the lowest station and the one above it, before the rest, µm
    };
    [[nodiscard]] Leads leads(const std::vector<HoneReading>& read) const;
    [[nodiscard]] std::size_t stone() const;
    [[nodiscard]] HoneWindow window(std::size_t stone, bool lags) const;
    void learn(const HoneHistory& history);

    BoreAsStated m_stated;
    Stage m_stage = Stage::rough;
    std::vector<double> m_rate = std::vector<double>(3, 0); // µm a stroke; 0 = not known yet
};

} // namespace borewright::test
