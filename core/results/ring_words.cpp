// SPDX-License-Identifier: GPL-3.0-or-later
// The sentences of the rings: where to measure, what to file, what will not do.
#include "core/results/doubt_words.h"
#include "core/results/fit_words.h"
#include "core/results/sizing_words.h"
#include "core/results/words.h"

#include <algorithm>
#include <fmt/format.h>
#include <map>

namespace borewright {
namespace {

struct Placed {
    int bore = 1;
    const BoreFit::RingHere* here = nullptr;
};

std::vector<Placed> placedRings(const FitResult& result, std::optional<int> groove = {}) {
    std::vector<Placed> placed;
    for (const BoreFit& bore : result.bores)
        for (const BoreFit::RingHere& here : bore.rings)
            if (here.ring && (!groove || here.groove == *groove))
                placed.push_back({bore.bore, &here});
    return placed;
}

// "Measure at 3.05 in, the smallest place."
std::string whereToMeasure(const FitResult& result, const DisplayUnits& units) {
    std::map<Length, std::vector<int>> bores;
    for (const Placed& one : placedRings(result)) {
        if (!one.here->gap) continue;
        std::vector<int>& here = bores[one.here->gap->smallest.depth];
        if (std::ranges::find(here, one.bore) == here.end()) here.push_back(one.bore);
    }
    if (bores.empty()) return {};
    if (bores.size() == 1)
        return "Measure at " + depthWithUnit(bores.begin()->first, units) + ", the smallest place.";
    std::vector<std::string> parts;
    for (const auto& [depth, numbers] : bores)
        parts.push_back(depthWithUnit(depth, units) + " in " + boresWords(numbers));
    return fmt::format("Measure at the smallest place: {}.", fmt::join(parts, ", "));
}

// What is to be done first: "File top 2 by 2.8 thou for bore 2 and top 5 by 3.7 thou for bore 5;
// the others are within."
std::string toFile(const Workbook& workbook, const FitResult& result, const DisplayUnits& units) {
    constexpr std::size_t mostNamed = 3;
    std::vector<std::string> files;
    bool othersWithin = true;
    for (const Placed& one : placedRings(result)) {
        if (one.here->gap && one.here->gap->filing)
            files.push_back(
                fmt::format("{} by {} for bore {}", nameOf(workbook.fit.rings[*one.here->ring]),
                            smallWithUnit(one.here->gap->filing->total, units), one.bore));
        else
            othersWithin = othersWithin && one.here->gap &&
                           one.here->gap->smallestVerdict == Verdict::within &&
                           one.here->gap->largestVerdict == Verdict::within;
    }
    const std::size_t placed = placedRings(result).size();
    if (files.empty())
        return placed > 0 && othersWithin ? "No ring has to be filed: every gap is within." : "";
    const std::string others =
        files.size() < placed && othersWithin ? "; the others are within" : "";
    if (files.size() > mostNamed)
        return fmt::format("{} of {} rings have to be filed{}.", files.size(), placed, others);
    const std::string last = files.back();
    files.pop_back();
    return fmt::format("File {}{}{}{}.", fmt::join(files, ", "), files.empty() ? "" : " and ", last,
                       others);
}

std::string gapWords(const RingGap& gap, const DisplayUnits& units) {
    return marginWords(gap.smallest.gap, gap.u, gap.coverage, units);
}

// "file 4.5 thou, 2 at a time: 2.0, 2.0, 0.5"
std::string filingWords(const Filing& filing, const DisplayUnits& units) {
    std::string words = "file " + smallWithUnit(filing.total, units);
    if (filing.steps.size() > 1) {
        std::vector<std::string> steps;
        for (const Length step : filing.steps)
            steps.push_back(formatSmall(step, units));
        words += steps.size() <= 6 ? fmt::format(" in steps of {}", fmt::join(steps, ", "))
                                   : fmt::format(" in {} steps of {} at most", steps.size(),
                                                 smallWithUnit(filing.steps.front(), units));
        words += ", measuring after each";
    }
    return words;
}

class Teller {
public:
    Teller(const Workbook& workbook, const DisplayUnits& units, const FitResult& result)
        : m_record(workbook.fit)
        , m_units(units)
        , m_result(result) {}

    std::vector<std::string> tell() {
        if (!pistonsFirst(m_result)) {
            for (const RingDeal& deal : m_result.deals)
                groove(deal);
            asFound();
            ports();
        }
        doubts();
        return m_sentences;
    }

private:
    void groove(const RingDeal& deal);
    void ring(const Placed& placed);
    void asFound();
    void ports();
    void doubts();
    [[nodiscard]] std::string label(std::size_t ring) const { return nameOf(m_record.rings[ring]); }

    const FitRecord& m_record;
    const DisplayUnits& m_units;
    const FitResult& m_result;
    std::vector<std::string> m_sentences;
};

void Teller::groove(const RingDeal& deal) {
    const std::string name = "Groove " + std::to_string(deal.groove);
    const std::vector<Placed> placed = placedRings(m_result, deal.groove);
    if (!deal.why.empty()) m_sentences.push_back(name + ": " + deal.why + ".");
    if (placed.empty()) return;
    std::vector<int> bores;
    std::vector<std::string> labels;
    bool decided = true;
    for (const Placed& one : placed) {
        bores.push_back(one.bore);
        labels.push_back(label(*one.here->ring));
        decided = decided && one.here->decided;
    }
    m_sentences.push_back(fmt::format("{}, {} {}{}: {}.", name,
                                      bores.size() == 1 ? "bore" : "bores", numbersInShort(bores),
                                      decided ? ", as decided" : "", fmt::join(labels, ", ")));
    for (const Placed& one : placed)
        ring(one);
}

// What there is to do or to know of one ring.
void Teller::ring(const Placed& placed) {
    const BoreFit::RingHere& here = *placed.here;
    const std::string start =
        "Bore " + std::to_string(placed.bore) + ", ring " + label(*here.ring) + ": ";
    if (!here.gap) {
        if (!here.refused.empty()) m_sentences.push_back(start + "no gap, " + here.refused + ".");
        return;
    }
    const RingGap& gap = *here.gap;
    std::vector<std::string> parts;
    if (!gap.why.empty()) parts.push_back(gap.why);
    if (gap.filing) parts.push_back(filingWords(*gap.filing, m_units));
    if (gap.smallestVerdict == Verdict::tooCloseToCall)
        parts.emplace_back("too close to its limit to call");
    if (gap.largestVerdict == Verdict::tooCloseToCall)
        parts.push_back("at " + depthWithUnit(gap.largest.depth, m_units) + " " +
                        smallWithUnit(gap.largest.gap, m_units) +
                        " is too close to its limit to call");
    if (!parts.empty())
        m_sentences.push_back(fmt::format("{}{} at {}: {}.", start, gapWords(gap, m_units),
                                          depthWithUnit(gap.smallest.depth, m_units),
                                          fmt::join(parts, "; ")));
}

void Teller::asFound() {
    std::vector<int> bores;
    for (const BoreFit& bore : m_result.bores)
        if (!bore.finished && !bore.survey.empty()) bores.push_back(bore.bore);
    if (!bores.empty())
        m_sentences.push_back(capitalized(boresWords(bores)) +
                              ": gaps as found, not in a finished bore.");
}

void Teller::ports() {
    for (const Placed& one : placedRings(m_result))
        if (one.here->gap && (one.here->gap->abovePorts || one.here->gap->belowPorts)) {
            m_sentences.emplace_back("The rings pass the ports: gaps are given for the wall above "
                                     "and below them. See that no end can catch in a port.");
            return;
        }
}

void Teller::doubts() {
    std::vector<std::string> unknown;
    for (const Ring& ring : m_record.rings)
        if (ring.gap && !ring.doubt) unknown.push_back(nameOf(ring));
    if (!unknown.empty())
        m_sentences.push_back(fmt::format("How far the gap of {} may be off is not given.",
                                          fmt::join(unknown, ", ")));
    if (!m_record.ringGap.lower && !m_record.ringGap.upper)
        m_sentences.emplace_back("No ring gap is given to judge by: the engine maker's manual has "
                                 "it.");
}

} // namespace

void wordRings(const Workbook& workbook, const DisplayUnits& units, FitResult& result) {
    if (workbook.fit.rings.empty()) {
        result.ringHeadline = "Enter the rings: groove, and a gap measured in a bore.";
        return;
    }
    // Whatever is taken off a bore opens every gap in it: to file before that is to file too much.
    result.ringHeadline =
        pistonsFirst(result)
            ? "Rings come after the last honing: a thou off the bore opens a gap by about three."
            : toFile(workbook, result, units);
    result.ringSentences = Teller(workbook, units, result).tell();
    const std::string where = pistonsFirst(result) ? "" : whereToMeasure(result, units);
    if (result.ringHeadline.empty() && where.empty())
        result.ringHeadline = result.measured.empty()
                                  ? "No bore has been read: measure the block first."
                                  : "No gap can be given yet.";
    else if (result.ringHeadline.empty())
        result.ringHeadline = where;
    else if (!where.empty())
        result.ringSentences.insert(result.ringSentences.begin(), where);
}

} // namespace borewright
