// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/loop_table.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace borewright::test {
namespace {

constexpr double slip_sd = 8;

template<class Of>
std::vector<double> each(const std::vector<LoopResult>& results, Of of) {
    std::vector<double> values;
    for (const LoopResult& result : results)
        values.push_back(static_cast<double>(of(result)));
    return values;
}

double mean(const std::vector<double>& values) {
    double sum = 0;
    for (const double value : values)
        sum += value;
    return values.empty() ? 0 : sum / static_cast<double>(values.size());
}

void addPromises(LoopSummary& summary, const std::vector<LoopResult>& results) {
    std::size_t inside = 0, happened = 0;
    double promised = 0;
    for (const LoopResult& result : results)
        for (std::size_t i = 0; i < result.setUps(); ++i) {
            const HoneStep& step = result.history.steps[i];
            for (std::size_t k = 0; k < step.setUp.expected.size(); ++k) {
                const auto [middle, sd] = step.setUp.expected[k];
                const double off = std::fabs(step.readings[k].size_um - middle) / sd;
                if (off > slip_sd) continue;
                ++summary.promises;
                if (off <= 1.96) ++inside;
            }
            if (!step.setUp.chanceOver) continue;
            ++summary.chances;
            promised += *step.setUp.chanceOver;
            summary.chanceLargest = std::max(summary.chanceLargest, *step.setUp.chanceOver);
            const bool was = result.truths[i].largest > overCap_um;
            if (!was && result.truths[i + 1].largest > overCap_um) ++happened;
        }
    const auto share = [](double part, std::size_t of) {
        return of == 0 ? 0 : part / static_cast<double>(of);
    };
    summary.covered = share(static_cast<double>(inside), summary.promises);
    summary.chanceMean = share(promised, summary.chances);
    summary.chanceHappened = share(static_cast<double>(happened), summary.chances);
}

} // namespace

double quantileOf(std::vector<double> values, double p) {
    if (values.empty()) return 0;
    std::ranges::sort(values);
    const double place = p * static_cast<double>(values.size() - 1);
    const auto below = static_cast<std::size_t>(place);
    const std::size_t above = std::min(below + 1, values.size() - 1);
    return values[below] + (place - std::floor(place)) * (values[above] - values[below]);
}

LoopSummary summaryOf(const std::vector<LoopResult>& results) {
    using R = LoopResult;
    LoopSummary s;
    s.runs = results.size();
    s.straight =
        mean(each(results, [](const R& r) { return r.last().overStations <= straight_um; }));
    const auto setUps = each(results, [](const R& r) { return r.setUps(); });
    s.setUps = quantileOf(setUps, 0.5);
    s.setUpsP90 = quantileOf(setUps, 0.9);
    const auto spread = each(results, [](const R& r) { return r.last().overStations; });
    s.spread = quantileOf(spread, 0.5);
    s.spreadP95 = quantileOf(spread, 0.95);
    const auto all = each(results, [](const R& r) { return r.last().overAll; });
    s.spreadAll = quantileOf(all, 0.5);
    s.spreadAllP90 = quantileOf(all, 0.9);
    s.spreadMost = quantileOf(each(results, [](const R& r) { return r.last().overMost; }), 0.5);
    s.most = quantileOf(each(results, [](const R& r) { return r.most(); }), 1);
    s.over = mean(each(results, [](const R& r) { return r.most() > overCap_um; }));
    s.underP90 = quantileOf(each(results, [](const R& r) { return -r.last().smallest; }), 0.9);
    s.changes = mean(each(results, [](const R& r) { return r.stoneChanges; }));
    s.windows = mean(each(results, [](const R& r) { return r.windows; }));
    s.unsaid = mean(each(results, [](const R& r) { return !r.said; }));
    s.thinking_s = mean(each(
        results, [](const R& r) { return r.thinking_s / static_cast<double>(r.setUps() + 1); }));
    s.slowest_s = quantileOf(each(results, [](const R& r) { return r.slowest_s; }), 1);
    addPromises(s, results);
    return s;
}

std::string loopTableHead() {
    return fmt::format("{:<14} {:<15} {:>4} {:>8} {:>11} {:>12} {:>12} {:>8} {:>6} {:>6} {:>6} "
                       "{:>7} {:>7} {:>7} {:>9}",
                       "policy", "bench", "n", "straight", "set-ups", "spread um", "all um",
                       "but stop", "most", "over", "under", "changes", "windows", "unsaid",
                       "s a plan");
}

std::string loopTableRow(const std::string& policy, const std::string& bench,
                         const LoopSummary& s) {
    std::string row = fmt::format(
        "{:<14} {:<15} {:>4} {:>7.0f}% {:>5.1f}/{:>5.1f} {:>5.1f}/{:>6.1f} {:>5.1f}/{:>6.1f} "
        "{:>8.1f} {:>6.1f} {:>5.1f}% {:>6.1f} {:>7.1f} {:>7.1f} {:>6.0f}% {:>4.2f}/{:>4.2f}",
        policy, bench, s.runs, 100 * s.straight, s.setUps, s.setUpsP90, s.spread, s.spreadP95,
        s.spreadAll, s.spreadAllP90, s.spreadMost, s.most, 100 * s.over, s.underP90, s.changes,
        s.windows, 100 * s.unsaid, s.thinking_s, s.slowest_s);
    if (s.promises > 0)
        row += fmt::format("\n{:>30} covered {:.1f} % of {}; chance over: promised {:.2f} % (at "
                           "most {:.2f} %), happened {:.2f} % of {}",
                           "", 100 * s.covered, s.promises, 100 * s.chanceMean,
                           100 * s.chanceLargest, 100 * s.chanceHappened, s.chances);
    return row;
}

} // namespace borewright::test
