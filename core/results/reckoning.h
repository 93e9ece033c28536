// SPDX-License-Identifier: GPL-3.0-or-later
// Where the doubts of bores come from: reckoned by trials, remembered by what they were reckoned
// from, so that a reading typed in one bore sends no other bore through its trials again.
#pragma once

#include "core/form/trials.h"

#include <functional>
#include <map>
#include <memory>
#include <string>
#include <vector>

namespace borewright {

enum class Reckoning {
    quick, // few trials, good to about a tenth of u, for the next picture; settle() does the rest
    whole, // until the figures stand still
};

class DoubtMemory {
public:
    // The doubts of the bores, in their order: remembered ones, the others reckoned now. A quick
    // one may be remembered where a whole one is not known yet.
    std::vector<std::shared_ptr<const BoreDoubt>> doubtsFor(const std::vector<TrialBore>& bores,
                                                            Reckoning reckoning);
    [[nodiscard]] bool isSettled() const;
    // Bores known quickly only.
    [[nodiscard]] std::vector<TrialBore> unsettled() const;
    // Takes what settle() found.
    void learn(const std::vector<TrialBore>& bores, std::vector<BoreDoubt> doubts);

private:
    struct Known {
        TrialBore bore;
        std::shared_ptr<const BoreDoubt> doubt;
        bool whole = false;
    };
    std::map<std::string, Known> m_known;
};

// Trials until the figures stand still, for another thread: bores hang on different surveys, so
// they run one by one. Empty where cancelled.
std::vector<BoreDoubt> settle(const std::vector<TrialBore>& bores,
                              const std::function<bool()>& cancelled);

} // namespace borewright
