// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/results/results_file.h"

#include "core/formula_text.h"
#include "core/results/doubt_words.h"
#include "core/results/fit_figures.h"
#include "core/results/fit_words.h"

#include <algorithm>
#include <array>
#include <fmt/format.h>

namespace borewright {
namespace {

// RFC 4180: a field with a comma, a quote or a line break is quoted, its quotes doubled.
std::string quoted(const std::string& text) {
    if (text.find_first_of(",\"\r\n") == std::string::npos) return text;
    std::string result = "\"";
    for (const char c : text)
        result += c == '"' ? std::string("\"\"") : std::string(1, c);
    return result + '"';
}

class Row {
public:
    // A name or a sentence: an apostrophe before it keeps a spreadsheet from running it.
    Row& add(const std::string& text) { return put(beginsLikeFormula(text) ? "'" + text : text); }
    // A number, which may begin with a minus.
    Row& add(const std::optional<Length>& length, Unit unit) {
        return put(length ? format(*length, unit, usualDecimals(unit) + 1, Sign::plain)
                          : std::string());
    }
    [[nodiscard]] std::string line() const { return m_text + "\r\n"; }

private:
    Row& put(const std::string& text) {
        if (!m_text.empty() || m_started) m_text += ',';
        m_started = true;
        m_text += quoted(text);
        return *this;
    }

    std::string m_text;
    bool m_started = false;
};

// Each with how far the true figure may lie below and above it, 95 %.
constexpr std::array doubted{"largest", "smallest",     "mean", "out-of-round",
                             "taper",   "straightness", "lead"};
constexpr std::array judgedOnes{"largest", "smallest", "out-of-round", "taper"};
constexpr std::array qualities{Quality::largestSize, Quality::smallestSize, Quality::outOfRound,
                               Quality::taper};

// What is known of the doubt of a bore; empty fields where it is not.
void addDoubt(Row& row, const SurveyResult& judged, const BoreResult& bore,
              const DisplayUnits& units) {
    const Budget& budget = judged.doubts.budget;
    for (const auto& one :
         {around(bore, Quality::largestSize), around(bore, Quality::smallestSize),
          aroundMean(bore, budget), around(bore, Quality::outOfRound), around(bore, Quality::taper),
          aroundStraightness(bore), aroundLead(bore, budget)}) {
        row.add(one ? std::optional(one->below) : std::nullopt, units.small);
        row.add(one ? std::optional(one->above) : std::nullopt, units.small);
    }
    std::vector<Judgement> judgements(qualities.size());
    for (std::size_t i = 0; i < qualities.size(); ++i) {
        const auto found = std::ranges::find(bore.judgements, qualities[i], &Judgement::quality);
        if (found != bore.judgements.end()) judgements[i] = *found;
        row.add(judgements[i].guard, units.small);
        const auto& chance = judgements[i].chanceWrong;
        row.add(chance ? fmt::format("{:.5f}", *chance) : std::string());
    }
    row.add(judgements[2].gaugeAlone, units.small).add(judgements[3].gaugeAlone, units.small);
    row.add(bore.shape ? shapeWord(*bore.shape) : std::string());
    row.add(bore.shape ? std::optional(Length::nearest(bore.shape->amount_um, Unit::micrometre))
                       : std::nullopt,
            units.small);
    row.add(bore.shapeWords);
    row.add(judged.hasLimits && budget.known() ? ruleWords(judged.doubts.rule) : std::string());
    row.add(bore.settles);
}

// By groove of the rings that were dealt.
std::vector<int> groovesOf(const Results& results) {
    std::vector<int> grooves;
    for (const RingDeal& deal : results.fit.deals)
        grooves.push_back(deal.groove);
    return grooves;
}

void addFitHeads(Row& row, const Results& results, const std::string& size,
                 const std::string& small) {
    row.add("clean-up on the worn bore" + size).add("clean-up on the original axis" + size);
    row.add("size that cleans").add("margin" + small).add("piston").add("piston decided");
    row.add("least clearance" + small).add("clearance doubt" + small).add("clearance verdict");
    for (const int groove : groovesOf(results)) {
        const std::string name = " groove " + std::to_string(groove);
        row.add("ring" + name).add("smallest gap" + name + small).add("largest gap" + name + small);
        row.add("to file" + name + small);
    }
}

// The block's size, else the bore's own; empty fields in rows of other surveys.
void addSizing(Row& row, const SizingResult& sizing, const std::string& survey, int bore,
               const DisplayUnits& units) {
    const auto place = std::ranges::find(sizing.bores, bore);
    const auto b = static_cast<std::size_t>(place - sizing.bores.begin());
    const bool here =
        place != sizing.bores.end() && sizing.cleanUps[b] && sizing.cleanUps[b]->survey == survey;
    std::optional<Length> worn, original, margin;
    std::string cleans;
    if (here) {
        worn = sizing.cleanUps[b]->wornBore.size;
        if (sizing.cleanUps[b]->originalAxis) original = sizing.cleanUps[b]->originalAxis->size;
        const SizeChoice& choice = sizing.choice;
        if (b < choice.own.size() && choice.own[b]) {
            const OfferResult& offer = choice.offers[choice.chosen.value_or(*choice.own[b])];
            cleans = offer.offer.name;
            margin = offer.cells[b].margin;
        }
    }
    row.add(worn, units.size).add(original, units.size).add(cleans).add(margin, units.small);
}

void addFit(Row& row, const Workbook& workbook, const Results& results, const std::string& survey,
            int bore, const DisplayUnits& units) {
    const auto fit = std::ranges::find(results.fit.bores, bore, &BoreFit::bore);
    const bool here = fit != results.fit.bores.end() && fit->survey == survey;
    const bool piston = here && fit->piston;
    row.add(piston ? nameOf(workbook.fit.pistons[*fit->piston]) : std::string());
    row.add(piston ? (fit->decided ? "yes" : "no") : "");
    const bool clearance = here && fit->clearance;
    row.add(clearance ? std::optional(fit->clearance->value) : std::nullopt, units.small);
    row.add(clearance ? wholeDoubt(*fit->clearance) : std::nullopt, units.small);
    row.add(clearance ? std::string(nameOf(fit->clearance->verdict)) : std::string());
    for (const int groove : groovesOf(results)) {
        const BoreFit::RingHere* ring = nullptr;
        if (here)
            for (const BoreFit::RingHere& one : fit->rings)
                if (one.groove == groove && one.ring) ring = &one;
        row.add(ring != nullptr ? nameOf(workbook.fit.rings[*ring->ring]) : std::string());
        const RingGap* gap = ring != nullptr && ring->gap ? &*ring->gap : nullptr;
        row.add(gap != nullptr ? std::optional(gap->smallest.gap) : std::nullopt, units.small);
        row.add(gap != nullptr ? std::optional(gap->largest.gap) : std::nullopt, units.small);
        row.add(gap != nullptr && gap->filing ? std::optional(gap->filing->total) : std::nullopt,
                units.small);
    }
}

std::string head(const Results& results, const DisplayUnits& units) {
    const std::string size = " (" + std::string(key(units.size)) + ")";
    const std::string small = " (" + std::string(key(units.small)) + ")";
    Row row;
    row.add("survey").add("kind").add("time").add("bore");
    for (const char* name : {"largest", "smallest", "mean"})
        row.add(name + size);
    for (const char* name :
         {"out-of-round", "taper", "lead", "straightness", "least to go", "most to go"})
        row.add(name + small);
    row.add("asked").add("measured").add("judged by").add("verdict").add("why").add("straight aim");
    for (const char* name : doubted)
        row.add(std::string(name) + " below" + small).add(std::string(name) + " above" + small);
    for (const char* name : judgedOnes)
        row.add(std::string(name) + " guard" + small).add(std::string(name) + " chance wrong");
    row.add("out-of-round by the gauge alone" + small).add("taper by the gauge alone" + small);
    row.add("shape").add("shape amount" + small).add("shape in words").add("rule").add("settles");
    addFitHeads(row, results, size, small);
    return row.line();
}

std::string line(const Workbook& workbook, const Results& results, const SurveyHeader& survey,
                 const SurveyResult& judged, const BoreResult& bore, const DisplayUnits& units) {
    std::optional<Length> largest, smallest, mean, outOfRound, taper, lead;
    if (bore.form) {
        largest = bore.form->largest.value;
        smallest = bore.form->smallest.value;
        mean = bore.form->mean;
        if (bore.form->outOfRound) outOfRound = bore.form->outOfRound->value;
        if (bore.form->worstTaper) taper = bore.form->worstTaper->taper;
        lead = bore.form->lead;
    }
    Row row;
    row.add(survey.name).add(std::string(nameOf(survey.kind))).add(toIso(survey.time));
    row.add(std::to_string(bore.bore));
    for (const auto& size : {largest, smallest, mean})
        row.add(size, units.size);
    for (const auto& small :
         {outOfRound, taper, lead, bore.straightness, bore.leastToGo, bore.mostToGo})
        row.add(small, units.small);
    row.add(std::to_string(bore.asked)).add(std::to_string(bore.measured));
    row.add(judged.hasLimits ? judged.judgedBy : std::string());
    row.add(std::string(nameOf(bore.verdict))).add(bore.why);
    row.add(std::string(nameOf(bore.straight)));
    addDoubt(row, judged, bore, units);
    addSizing(row, results.sizing, survey.id, bore.bore, units);
    addFit(row, workbook, results, survey.id, bore.bore, units);
    return row.line();
}

} // namespace

std::string resultsCsv(const Workbook& workbook, const Results& results,
                       const std::vector<std::string>& ids, const DisplayUnits& units) {
    std::string text = head(results, units);
    for (const Survey& survey : workbook.surveys) {
        const SurveyResult* result = findResult(results, survey.header.id);
        if (result == nullptr) continue;
        if (!ids.empty() && std::ranges::find(ids, survey.header.id) == ids.end()) continue;
        for (const BoreResult& bore : result->bores)
            text += line(workbook, results, survey.header, *result, bore, units);
    }
    return text;
}

} // namespace borewright
