// SPDX-License-Identifier: GPL-3.0-or-later
// What follows the headline: one size lower, how the cut is centred, what was assumed.
#include "core/results/sizing_words.h"

#include <algorithm>
#include <fmt/format.h>

namespace borewright {
namespace {

class Teller {
public:
    Teller(const Workbook& workbook, const DisplayUnits& units, const DecisionRule& rule,
           const SizingResult& result)
        : m_workbook(workbook)
        , m_units(units)
        , m_rule(rule)
        , m_result(result)
        , m_choice(result.choice) {}

    std::vector<std::string> tell() {
        if (m_choice.chosen && !m_workbook.sizing.ownSizes) oneSizeLower();
        taken();
        beyondTheLast();
        unread();
        assumed();
        notAdvised();
        return m_sentences;
    }

private:
    // Bores, as places, for which `wanted` holds of their clean-up.
    template<class Wanted>
    [[nodiscard]] std::vector<int> boresWhere(const Wanted& wanted) const {
        std::vector<int> numbers;
        for (const auto& cleanUp : m_result.cleanUps)
            if (cleanUp && wanted(*cleanUp)) numbers.push_back(cleanUp->bore);
        return numbers;
    }
    [[nodiscard]] std::string margin(const SizeCell& cell, std::size_t b, bool lacks) const {
        return marginWords(lacks ? -cell.margin : cell.margin, cell.u,
                           m_result.cleanUps[b]->coverage, m_units);
    }
    // Places of bores that some size cleans, but not this one; the worst last.
    [[nodiscard]] std::vector<std::size_t> notCleanedBy(const OfferResult& offer) const {
        std::vector<std::size_t> places;
        for (std::size_t b = 0; b < offer.cells.size(); ++b)
            if (!m_choice.beyond[b] &&
                (offer.cells[b].cleans == Cleans::no || offer.cells[b].cleans == Cleans::tooClose))
                places.push_back(b);
        std::ranges::stable_sort(places, std::greater(),
                                 [&](std::size_t b) { return offer.cells[b].margin; });
        return places;
    }

    void oneSizeLower();
    [[nodiscard]] std::string withoutDamage(const SizeCell& cell, std::size_t b) const;
    void taken();
    [[nodiscard]] std::string otherWay() const;
    void beyondTheLast();
    void unread();
    void assumed();
    void felt();
    void notAdvised();

    const Workbook& m_workbook;
    const DisplayUnits& m_units;
    const DecisionRule& m_rule;
    const SizingResult& m_result;
    const SizeChoice& m_choice;
    std::vector<std::string> m_sentences;
};

void Teller::oneSizeLower() {
    const std::size_t chosen = *m_choice.chosen;
    if (chosen == 0) {
        m_sentences.emplace_back("There is no smaller size on offer.");
        return;
    }
    const OfferResult& lower = m_choice.offers[chosen - 1];
    const std::vector<std::size_t> places = notCleanedBy(lower);
    std::string words = "One size lower, " + offerWords(m_result, chosen - 1) + ": ";
    if (places.empty()) {
        m_sentences.push_back(words + "it is not for every bore.");
        return;
    }
    const std::size_t worst = places.back();
    const SizeCell& cell = lower.cells[worst];
    std::vector<int> numbers;
    for (const std::size_t b : places)
        numbers.push_back(m_result.bores[b]);
    std::ranges::sort(numbers);
    const std::string bore = "bore " + std::to_string(m_result.bores[worst]);
    if (numbers.size() > 1) words += boresWords(numbers) + " would not clean for certain; ";
    if (cell.cleans == Cleans::no)
        words += bore + " lacks " + margin(cell, worst, true);
    else
        words += bore + " is too close to call, margin " + margin(cell, worst, false);
    words += withoutDamage(cell, worst) + ".";
    const std::size_t others = m_result.bores.size() - numbers.size();
    if (numbers.size() == 1 && others > 0 &&
        std::ranges::count(lower.cells, Cleans::yes, &SizeCell::cleans) ==
            static_cast<std::ptrdiff_t>(others))
        words += others == 1 ? " The other cleans." : " The others clean.";
    m_sentences.push_back(words);
}

// "; without its score it would clean with 5.2 thou to spare"
std::string Teller::withoutDamage(const SizeCell& cell, std::size_t b) const {
    const BoreCleanUp& cleanUp = *m_result.cleanUps[b];
    const CleanUp& with = cleanUpBy(cleanUp, m_result.centring);
    const Damage* damage = decidingDamage(m_workbook.sizing, cleanUp.bore, with);
    if (damage == nullptr) return {};
    const CleanUp& without = borewright::withoutDamage(cleanUp, m_result.centring);
    const Length spare = cell.margin + (with.size - without.size);
    if (spare < guardBand(without, m_rule)) return {};
    return "; without its " + damageWord(*damage) + " it would clean with " +
           smallWithUnit(spare, m_units) + " to spare";
}

void Teller::taken() {
    if (std::ranges::none_of(m_result.cleanUps, &std::optional<BoreCleanUp>::has_value)) return;
    const bool worn = m_result.centring == Centring::wornBore;
    std::string words = m_workbook.sizing.centring ? "As chosen: the cut is centred on "
                        : worn                     ? "Taken: the hone follows "
                                                   : "Taken: the boring bar is set on ";
    words += worn ? "the worn bore." : "the original axis.";
    const std::string other = otherWay();
    m_sentences.push_back(other.empty() ? words : words + " " + other);
    const std::vector<int> unknown =
        boresWhere([](const BoreCleanUp& bore) { return !bore.originalAxis; });
    if (!unknown.empty())
        m_sentences.push_back(capitalized(boresWords(unknown)) +
                              ": the size last bored to is not known, so the original axis "
                              "cannot be reckoned with" +
                              (worn ? "." : "; taken as centred on the worn bore."));
}

// What the chosen size does where the cut is centred the other way.
std::string Teller::otherWay() const {
    if (!m_choice.chosen || m_workbook.sizing.ownSizes) return {};
    const std::size_t chosen = *m_choice.chosen;
    const std::vector<SizeCell>& cells = m_result.otherWay.offers[chosen].cells;
    std::optional<std::size_t> worst;
    for (std::size_t b = 0; b < cells.size(); ++b) {
        const bool cleaned = m_choice.offers[chosen].cells[b].cleans == Cleans::yes;
        if (!cleaned || !m_result.cleanUps[b]->originalAxis) continue;
        if (!worst || cells[b].margin < cells[*worst].margin) worst = b;
    }
    if (!worst) return {};
    const SizeCell& cell = cells[*worst];
    const Centring centring =
        m_result.centring == Centring::wornBore ? Centring::originalAxis : Centring::wornBore;
    const std::string size = offerWords(m_result, chosen);
    const std::string start = fmt::format(
        "Centred on the {} bore {} would need {}: ",
        centring == Centring::wornBore ? "worn bore" : "original axis", m_result.bores[*worst],
        sizeWithUnit(cleanUpBy(*m_result.cleanUps[*worst], centring).size, m_units));
    const std::string around = margin(cell, *worst, cell.cleans == Cleans::no);
    if (cell.cleans == Cleans::yes)
        return start + size +
               (onlyJust(cell, m_result.cleanUps[*worst]->coverage) ? " still cleans it, only just"
                                                                    : " still cleans it") +
               ", margin " + around + ".";
    if (cell.cleans == Cleans::tooClose)
        return start + size + " is then too close to call, margin " + around + ".";
    const auto& instead = m_result.otherWay.own[*worst];
    return start + size + " then lacks " + around +
           (instead ? "; " + offerWords(m_result, *instead) + " would clean it."
                    : "; no size on offer would clean it for certain.");
}

void Teller::beyondTheLast() {
    std::vector<int> numbers;
    for (std::size_t b = 0; b < m_choice.beyond.size(); ++b)
        if (m_choice.beyond[b]) numbers.push_back(m_result.bores[b]);
    std::optional<std::size_t> last;
    for (std::size_t o = 0; o < m_choice.offers.size(); ++o)
        if (!m_choice.offers[o].offer.beyondGreatest) last = o;
    if (numbers.empty() || !last) return;
    for (const int number : numbers) {
        const auto b = static_cast<std::size_t>(std::ranges::find(m_result.bores, number) -
                                                m_result.bores.begin());
        const SizeCell& cell = m_choice.offers[*last].cells[b];
        const std::string bore = "Bore " + std::to_string(number);
        if (cell.cleans == Cleans::tooClose)
            m_sentences.push_back(
                bore + " is too close to call at the last size (" + offerWords(m_result, *last) +
                "), margin " + margin(cell, b, false) + ": reckon with a sleeve, or a new block.");
        else
            m_sentences.push_back(bore + " is beyond the last size (" +
                                  offerWords(m_result, *last) + "): a sleeve, or a new block.");
    }
}

void Teller::unread() {
    std::vector<int> numbers;
    for (std::size_t b = 0; b < m_result.bores.size(); ++b)
        if (!m_result.cleanUps[b]) numbers.push_back(m_result.bores[b]);
    if (!numbers.empty() && numbers.size() < m_result.bores.size())
        m_sentences.push_back(
            capitalized(boresWords(numbers)) + (numbers.size() == 1 ? " was" : " were") +
            " not read as found: nothing is said of " + (numbers.size() == 1 ? "it." : "them."));
}

void Teller::assumed() {
    const auto sides = boresWhere([](const BoreCleanUp& bore) {
        return bore.sideAssumed && bore.originalAxis &&
               bore.originalOnly->size > bore.wornOnly.size;
    });
    // On the worn bore it makes no difference.
    const bool counts = m_result.centring == Centring::originalAxis || !otherWay().empty();
    if (!sides.empty() && counts)
        m_sentences.push_back(
            capitalized(boresWords(sides)) +
            ": which side is worn was not said; reckoned as one side, the worse.");
    felt();
    const auto partly = boresWhere([](const BoreCleanUp& bore) { return !bore.complete; });
    if (!partly.empty())
        m_sentences.push_back(capitalized(boresWords(partly)) +
                              (partly.size() == 1 ? " was" : " were") +
                              " not read everywhere that was asked for: what was not read may be "
                              "worse.");
    const auto unknown =
        boresWhere([](const BoreCleanUp& bore) { return !bore.wornBore.gaugeDoubtKnown; });
    if (!unknown.empty() && !m_choice.offers.empty())
        m_sentences.push_back("How far the readings may be off is not known" +
                              (unknown.size() == m_result.bores.size()
                                   ? std::string()
                                   : " for " + boresWords(unknown)) +
                              ": margins stand as read.");
}

void Teller::felt() {
    for (const auto& [number, wear] : m_workbook.sizing.bores)
        for (const Damage& damage : wear.damages)
            if (damage.felt && findBore(m_workbook.block, number) != nullptr)
                m_sentences.push_back(fmt::format(
                    "Bore {}: how deep the {} is was felt, not measured; taken as {} ± {} {}.",
                    number, damageWord(damage), formatSmall(damage.deep.value(), m_units),
                    formatSmall(Length::fromPicometres(
                                    divideHalfToEven(damage.deep.value().picometres(), 2)),
                                m_units),
                    symbol(m_units.small)));
}

void Teller::notAdvised() {
    std::vector<std::string> names;
    for (std::size_t o = 0; o < m_choice.offers.size(); ++o)
        if (m_choice.offers[o].offer.beyondGreatest) names.push_back(offerWords(m_result, o));
    if (!names.empty() && m_workbook.sizing.greatest)
        m_sentences.push_back(capitalized(fmt::format(
            "{} {} beyond the engine maker's greatest oversize, {} {}: not advised.",
            fmt::join(names, ", "), names.size() == 1 ? "is" : "are",
            m_workbook.sizing.greatest->text(), symbol(m_workbook.sizing.greatest->unit()))));
}

} // namespace

std::vector<std::string> sizingSentences(const Workbook& workbook, const DisplayUnits& units,
                                         const DecisionRule& rule, const SizingResult& result) {
    std::vector<std::string> sentences = Teller(workbook, units, rule, result).tell();
    for (std::string& odd : sizingOddities(workbook, units, result))
        sentences.push_back(std::move(odd));
    return sentences;
}

} // namespace borewright
