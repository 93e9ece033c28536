// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/size/size_steps.h"

#include <algorithm>

namespace borewright {
namespace {

// With as many decimals as the steps were typed with: 0.010, not 0.01.
TypedLength typedLike(Length value, const TypedLength& like) {
    const std::string& text = like.text();
    const auto point = text.find_first_of(".,");
    const int decimals = point == std::string::npos ? 0 : static_cast<int>(text.size() - point - 1);
    if (decimals <= 12) {
        const auto typed =
            readTyped(format(value, like.unit(), decimals, Sign::plain), like.unit());
        if (typed && typed->value() == value) return *typed;
    }
    return typedFrom(value, like.unit());
}

// The finest-typed of the three says how the sizes between are written.
const TypedLength& finest(const SizeSteps& steps) {
    const auto decimals = [](const TypedLength& length) {
        const auto point = length.text().find_first_of(".,");
        return point == std::string::npos ? 0 : length.text().size() - point - 1;
    };
    const TypedLength& ends = decimals(steps.to) > decimals(steps.from) ? steps.to : steps.from;
    return decimals(steps.step) >= decimals(ends) || steps.step.unit() != ends.unit() ? steps.step
                                                                                      : ends;
}

// A step that passes the end at once, with the small unit it may have been meant in.
std::string passesTheEnd(const SizeSteps& steps) {
    std::string why = "a step of " + steps.step.withUnit() + " passes the end at once";
    const bool inch = isInchFamily(steps.step.unit());
    const auto small = readTyped(steps.step.text(), inch ? Unit::thou : Unit::micrometre);
    if (small && small->value() <= steps.to.value() - steps.from.value())
        why += "; for a small unit write " + steps.step.text() + (inch ? " thou" : " µm");
    return why;
}

Result<Length> commonStandard(const Block& block) {
    if (block.bores.empty() || !block.bores.front().standardSize)
        return refuse("give the standard size on the Block page first: limits are set about it");
    const Length standard = block.bores.front().standardSize->value();
    for (const Bore& bore : block.bores)
        if (!bore.standardSize || bore.standardSize->value() != standard)
            return refuse("the bores have different standard sizes: leave this empty and give "
                          "each its finish limits on the Block page");
    return standard;
}

} // namespace

Result<SizingPlan> withSteps(SizingPlan plan, const SizeSteps& steps) {
    const Length from = steps.from.value();
    const Length to = steps.to.value();
    const Length step = steps.step.value();
    if (step <= Length()) return refuse("step", "a step is more than zero");
    if (from < Length()) return refuse("from", "an oversize is counted from the standard size up");
    if (to < from) return refuse("to", "lies below where the steps begin");
    if (to > from && step > to - from) return refuse("step", passesTheEnd(steps));
    const auto count = (to - from).picometres() / step.picometres() + 1;
    if (static_cast<std::size_t>(count) > mostSizesOnOffer)
        return refuse("step", "that would be " + std::to_string(count) + " sizes; at most " +
                                  std::to_string(mostSizesOnOffer) + " can be offered");
    for (std::int64_t i = 0; i < count; ++i) {
        const Length oversize = from + i * step;
        const auto has = [&](const SizeOnOffer& size) { return size.oversize.value() == oversize; };
        if (std::ranges::none_of(plan.sizes, has))
            plan.sizes.push_back({typedLike(oversize, finest(steps)), {}, {}});
    }
    std::ranges::stable_sort(plan.sizes, {},
                             [](const SizeOnOffer& size) { return size.oversize.value(); });
    return plan;
}

Result<SizingPlan> withLimitsAbout(SizingPlan plan, const std::optional<TypedLength>& below,
                                   const std::optional<TypedLength>& above, const Block& block) {
    if (plan.sizes.empty()) return refuse("there is no size on offer yet");
    const auto standard = commonStandard(block);
    if (!standard) return tl::unexpected(standard.error());
    if (below && above && -below->value() > above->value())
        return refuse("the largest size allowed would lie below the smallest");
    for (SizeOnOffer& size : plan.sizes) {
        const Length aim = *standard + size.oversize.value();
        const Unit unit = block.bores.front().standardSize->unit();
        size.lower = below ? std::optional(typedFrom(aim - below->value(), unit)) : std::nullopt;
        size.upper = above ? std::optional(typedFrom(aim + above->value(), unit)) : std::nullopt;
    }
    return plan;
}

} // namespace borewright
