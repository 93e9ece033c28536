// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/fit/fit_verbs.h"

#include <algorithm>
#include <cctype>

namespace borewright {
namespace {

// A number behind a label, as far as it can be counted on.
constexpr std::size_t mostDigits = 6;

std::size_t startOfNumber(const std::string& label) {
    std::size_t start = label.size();
    while (start > 0 && label.size() - start < mostDigits &&
           std::isdigit(static_cast<unsigned char>(label[start - 1])) != 0)
        --start;
    return start;
}

template<class Item>
std::vector<std::string> labelsOf(const std::vector<Item>& items) {
    std::vector<std::string> labels;
    for (const Item& item : items)
        labels.push_back(item.label);
    return labels;
}

} // namespace

FitRecord withPistonFixed(FitRecord fit, std::size_t piston, int bore) {
    if (piston >= fit.pistons.size()) return fit;
    for (Piston& other : fit.pistons)
        if (other.bore == bore) other.bore.reset();
    fit.pistons[piston].bore = bore;
    return fit;
}

FitRecord withPistonFreed(FitRecord fit, std::size_t piston) {
    if (piston < fit.pistons.size()) fit.pistons[piston].bore.reset();
    return fit;
}

FitRecord withMatching(FitRecord fit, const Matching& matching) {
    for (std::size_t i = 0; i < matching.bores.size() && i < matching.chosen.size(); ++i)
        if (const auto place = matching.chosen[i])
            fit = withPistonFixed(std::move(fit), matching.pistons[*place], matching.bores[i]);
    return fit;
}

FitRecord withPistonsFreed(FitRecord fit) {
    for (Piston& piston : fit.pistons)
        piston.bore.reset();
    return fit;
}

FitRecord withRingFixed(FitRecord fit, std::size_t ring, int bore) {
    if (ring >= fit.rings.size()) return fit;
    for (Ring& other : fit.rings)
        if (other.bore == bore && other.groove == fit.rings[ring].groove) other.bore.reset();
    fit.rings[ring].bore = bore;
    return fit;
}

FitRecord withRingFreed(FitRecord fit, std::size_t ring) {
    if (ring < fit.rings.size()) fit.rings[ring].bore.reset();
    return fit;
}

FitRecord withDeals(FitRecord fit, const std::vector<RingDeal>& deals) {
    for (const RingDeal& deal : deals)
        for (std::size_t i = 0; i < deal.bores.size() && i < deal.ring.size(); ++i)
            if (deal.ring[i]) fit = withRingFixed(std::move(fit), *deal.ring[i], deal.bores[i]);
    return fit;
}

FitRecord withRingsFreed(FitRecord fit) {
    for (Ring& ring : fit.rings)
        ring.bore.reset();
    return fit;
}

std::string nextLabel(const std::vector<std::string>& taken) {
    if (taken.empty()) return "1";
    const std::string& last = taken.back();
    const std::size_t start = startOfNumber(last);
    const std::string stem = last.substr(0, start);
    const bool spaced = start == last.size() && !stem.empty();
    int number = start < last.size() ? std::stoi(last.substr(start)) : 1;
    for (;;) {
        const std::string label = stem + (spaced ? " " : "") + std::to_string(++number);
        if (std::ranges::find(taken, label) == taken.end()) return label;
    }
}

void appendPiston(FitRecord& fit) {
    Piston piston;
    piston.id = freshPistonId(fit);
    piston.label = nextLabel(labelsOf(fit.pistons));
    if (!fit.pistons.empty()) {
        const Piston& above = fit.pistons.back();
        piston.measuredWith = above.measuredWith;
        piston.temperature = above.temperature;
        piston.doubt = above.doubt;
    }
    fit.pistons.push_back(std::move(piston));
}

void appendRing(FitRecord& fit) {
    Ring ring;
    ring.id = freshRingId(fit);
    ring.label = nextLabel(labelsOf(fit.rings));
    if (!fit.rings.empty()) {
        const Ring& above = fit.rings.back();
        ring.groove = above.groove;
        ring.measuredIn = above.measuredIn;
        ring.measuredAt = above.measuredAt;
        ring.doubt = above.doubt;
    }
    fit.rings.push_back(std::move(ring));
}

} // namespace borewright
