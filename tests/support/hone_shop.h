// SPDX-License-Identifier: GPL-3.0-or-later
// A job in the shop: a block on a simulated bench and the workbook that is kept of it. What the
// outlook says is done on the bench and logged, what the bench shows is read and recorded.
#pragma once

#include "core/results/hone_outlook.h"
#include "tests/support/simulated_bench.h"

#include <string>
#include <vector>

namespace borewright::test {

class HoneShop {
public:
    // Metric bores of 85 mm finish size, 84.990 to 85.005 allowed, no oval limits, straight within
    // 6.35 µm; measured as found.
    explicit HoneShop(std::vector<SimulatedBench> block);

    Workbook workbook;

    // Reads these stations, or all of a bore, into a new check; `bores` empty = all.
    void measure(const std::vector<int>& bores);
    void measure(const std::vector<Station>& stations);
    // Strokes what is proposed and logs it.
    void hone(int bore, const PlannedSetUp& setUp);
    // Logs it, though nothing is stroked.
    void log(int bore, const PlannedSetUp& setUp);
    // Strokes it, though nothing is logged.
    void stroke(int bore, const PlannedSetUp& setUp);

    [[nodiscard]] HoneOutlook outlook(const HoneWishes& wishes = {},
                                      const std::shared_ptr<HoneMemory>& memory = {},
                                      const std::vector<int>& bores = {}) const;
    [[nodiscard]] Results results() const;
    [[nodiscard]] const SimulatedBench& bench(int bore) const;
    [[nodiscard]] std::vector<Station> stationsOf(int bore) const;

private:
    void pass_min(int minutes) { m_now.secondsSinceEpoch += 60 * minutes; }

    std::vector<SimulatedBench> m_block;
    Timestamp m_now{1'774'000'000, 60};
};

} // namespace borewright::test
