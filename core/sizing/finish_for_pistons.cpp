// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sizing/matching.h"

#include <algorithm>
#include <fmt/format.h>

namespace borewright {
namespace {

Result<FinishForPiston> finishFor(int bore, std::size_t place, const FitRecord& fit) {
    const auto size = sizeOf(fit.pistons[place]);
    if (!size) return tl::unexpected(size.error());
    const FitLimits& limits = fit.clearance;
    FinishForPiston finish{bore, place, size->at20 + *aimOf(limits), {}, {}};
    if (limits.lower) finish.lower = size->at20 + limits.lower->value();
    if (limits.upper) finish.upper = size->at20 + limits.upper->value();
    return finish;
}

} // namespace

Result<std::vector<FinishForPiston>> finishForPistons(const std::vector<int>& bores,
                                                      const FitRecord& fit,
                                                      const std::set<std::string>& taken) {
    if (!aimOf(fit.clearance)) return refuse("no clearance to aim at");
    std::vector<int> rising = bores;
    std::ranges::sort(rising);
    const std::vector<std::size_t> order = ownOrder(fit.pistons);
    auto next = order.begin();
    std::vector<FinishForPiston> all;
    for (const int bore : rising) {
        auto place =
            std::ranges::find_if(order, [&](std::size_t p) { return fit.pistons[p].bore == bore; });
        if (place == order.end()) {
            next = std::find_if(next, order.end(), [&](std::size_t p) {
                const Piston& piston = fit.pistons[p];
                return !piston.bore && !taken.contains(piston.id) && sizeOf(piston);
            });
            if (next == order.end())
                return refuse(fmt::format("no piston with its size and measuring height is left "
                                          "for bore {}",
                                          bore));
            place = next++;
        }
        const auto finish = finishFor(bore, *place, fit);
        if (!finish) return tl::unexpected(finish.error());
        all.push_back(*finish);
    }
    return all;
}

} // namespace borewright
