// SPDX-License-Identifier: GPL-3.0-or-later
// What follows the headline of the pistons: the other ways, pairs that are not within, what is not
// known.
#include "core/constants.h"
#include "core/gauging/gauging.h"
#include "core/results/doubt_words.h"
#include "core/results/fit_words.h"
#include "core/results/sizing_words.h"
#include "core/results/words.h"

#include <algorithm>
#include <fmt/format.h>
#include <map>

namespace borewright {
namespace {

class Teller {
public:
    Teller(const Workbook& workbook, const DisplayUnits& units, const FitResult& result)
        : m_record(workbook.fit)
        , m_workbook(workbook)
        , m_units(units)
        , m_result(result)
        , m_matching(result.matching) {}

    std::vector<std::string> tell() {
        if (m_record.pistons.empty()) return {};
        const bool first = pistonsFirst(m_result);
        finishSizes();
        if (!m_result.finishRefused.empty() && !first)
            m_sentences.push_back("Finish sizes cannot be given: " + m_result.finishRefused + ".");
        if (m_matching.best && !first) {
            otherWays();
            leftOver();
        }
        if (!first) {
            notWithin();
            asFound();
        }
        notUsable();
        doubts();
        return m_sentences;
    }

private:
    [[nodiscard]] std::string label(std::size_t place) const {
        return nameOf(m_record.pistons[place]);
    }
    [[nodiscard]] static std::string pistonsWords(const std::vector<std::string>& labels) {
        return (labels.size() == 1 ? "piston " : "pistons ") + listed(labels);
    }
    [[nodiscard]] std::string clearanceWords(const Clearance& clearance) const {
        return marginWords(clearance.value, clearance.u, clearance.coverage, m_units);
    }
    void finishSizes();
    void otherWays();
    void leftOver();
    void notWithin();
    void asFound();
    void notUsable();
    void temperatures();
    void doubts();

    const FitRecord& m_record;
    const Workbook& m_workbook;
    const DisplayUnits& m_units;
    const FitResult& m_result;
    const Matching& m_matching;
    std::vector<std::string> m_sentences;
};

// "Bores 3 and 6: hone to 3.4402 in (3.4398–3.4408), for pistons 3 and 6."
void Teller::finishSizes() {
    std::map<Length, std::vector<const FinishForPiston*>> bySize;
    for (const FinishForPiston& one : m_result.finish)
        bySize[one.finish].push_back(&one);
    for (const auto& [size, all] : bySize) {
        std::vector<int> bores;
        std::vector<std::string> labels;
        for (const FinishForPiston* one : all) {
            bores.push_back(one->bore);
            labels.push_back(label(one->piston));
        }
        std::string limits;
        if (all.front()->lower && all.front()->upper)
            limits = " (" + formatSize(*all.front()->lower, m_units) + "–" +
                     formatSize(*all.front()->upper, m_units) + ")";
        m_sentences.push_back(capitalized(boresWords(bores)) + ": hone to " +
                              sizeWithUnit(size, m_units) + limits + ", for " +
                              pistonsWords(labels) + ".");
    }
    m_sentences.insert(m_sentences.end(), m_result.finishWarnings.begin(),
                       m_result.finishWarnings.end());
}

void Teller::otherWays() {
    const auto& best = *m_matching.best;
    const auto& own = m_matching.ownOrder;
    if (m_matching.anyOfThese && m_matching.chosen != best.piston) {
        m_sentences.push_back(
            "Own order: " + pairsWords(m_workbook, m_matching, m_matching.chosen) + ".");
        m_sentences.push_back(fmt::format(
            "Best as read: {}, at most {} off{}.", pairsWords(m_workbook, m_matching, best.piston),
            claimed(best.worst, m_units),
            m_matching.equals > 1
                ? "; " + numberWord(std::min(m_matching.equals, mostTies)) + " ways are as good"
                : std::string()));
    } else if (m_matching.anyOfThese) {
        m_sentences.push_back(capitalized(cannotTell(m_matching, m_units)) +
                              "; but it leaves more clearances too close to their limits.");
    } else if (own && own->piston != best.piston) {
        m_sentences.push_back(
            fmt::format("The pistons' own order would miss by up to {}: {} in all, for {}.",
                        claimed(own->worst, m_units), smallWithUnit(own->sum, m_units),
                        smallWithUnit(best.sum, m_units)));
    }
    std::vector<int> decided;
    for (std::size_t b = 0; b < m_matching.fixed.size(); ++b)
        if (m_matching.fixed[b]) decided.push_back(m_matching.bores[b]);
    if (!decided.empty() && decided.size() < m_matching.bores.size())
        m_sentences.push_back(capitalized(boresWords(decided)) + ": as decided, left alone.");
}

void Teller::leftOver() {
    std::vector<std::string> labels;
    for (std::size_t p = 0; p < m_matching.pistons.size(); ++p)
        if (std::ranges::find(m_matching.chosen, std::optional(p)) == m_matching.chosen.end())
            labels.push_back(label(m_matching.pistons[p]));
    if (!labels.empty()) m_sentences.push_back("Left over: " + pistonsWords(labels) + ".");
}

void Teller::notWithin() {
    std::vector<std::string> open; // "bore 2 with piston 2 (4.0 ± 0.4 thou)"
    for (const BoreFit& bore : m_result.bores) {
        if (!bore.piston) continue;
        const std::string pair =
            "bore " + std::to_string(bore.bore) + " with piston " + label(*bore.piston);
        if (!bore.clearance) {
            if (!bore.clearanceRefused.empty())
                m_sentences.push_back(capitalized(pair) + ": no clearance, " +
                                      bore.clearanceRefused + ".");
            continue;
        }
        const Clearance& clearance = *bore.clearance;
        if (clearance.verdict == Verdict::tooCloseToCall)
            open.push_back(pair + " (" + clearanceWords(clearance) + ")");
        else if (clearance.verdict == Verdict::outside)
            m_sentences.push_back(capitalized(pair) + ": " + clearanceWords(clearance) +
                                  (clearance.why.empty() ? "" : ", " + clearance.why) + ".");
    }
    if (!open.empty())
        m_sentences.push_back(
            fmt::format("Too close to a limit to call: {}.", fmt::join(open, ", ")));
}

void Teller::asFound() {
    std::vector<int> found, honing, partly;
    for (const BoreFit& bore : m_result.bores) {
        const Survey* survey = findSurvey(m_workbook, bore.survey);
        if (survey == nullptr) continue;
        if (survey->header.kind == SurveyKind::check)
            honing.push_back(bore.bore);
        else if (!bore.finished)
            found.push_back(bore.bore);
        const auto measured = std::ranges::find(m_result.measured, bore.bore, &MeasuredBore::bore);
        if (measured != m_result.measured.end() && !measured->complete) partly.push_back(bore.bore);
    }
    if (!found.empty())
        m_sentences.push_back(capitalized(boresWords(found)) +
                              ": clearance as found, not of a finished bore.");
    if (!honing.empty())
        m_sentences.push_back(capitalized(boresWords(honing)) +
                              ": clearance as it stands while honing, not of a finished bore.");
    if (!partly.empty())
        m_sentences.push_back(capitalized(boresWords(partly)) +
                              (partly.size() == 1 ? " was" : " were") +
                              " not read everywhere that was asked for: it may be smaller "
                              "elsewhere.");
    std::vector<int> unread;
    for (const BoreFit& bore : m_result.bores)
        if (bore.survey.empty()) unread.push_back(bore.bore);
    if (!unread.empty() && !m_result.measured.empty())
        m_sentences.push_back(capitalized(boresWords(unread)) +
                              (unread.size() == 1 ? " has" : " have") + " not been read.");
}

void Teller::notUsable() {
    for (const Piston& piston : m_record.pistons)
        if (const auto size = sizeOf(piston); !size)
            m_sentences.push_back(size.error().where.empty()
                                      ? "Piston " + nameOf(piston) + ": " + size.error().what + "."
                                      : capitalized(size.error().message()) + ".");
}

// A warm piston brought to 20 °C beside a bore that is not: the difference looks like clearance.
void Teller::temperatures() {
    const bool warm = std::ranges::any_of(m_record.pistons, [](const Piston& piston) {
        return piston.temperature && piston.temperature->celsius() != constants::referenceCelsius;
    });
    std::vector<int> bores;
    for (const BoreFit& bore : m_result.bores) {
        const Survey* survey = findSurvey(m_workbook, bore.survey);
        if (survey != nullptr && !correctsTemperature(survey->header.gauge))
            bores.push_back(bore.bore);
    }
    if (warm && !bores.empty())
        m_sentences.push_back("The pistons are brought to 20 °C, " + boresWords(bores) +
                              (bores.size() == 1 ? " is" : " are") +
                              " not: give the temperatures of the survey.");
}

void Teller::doubts() {
    std::vector<std::string> warm, doubtless;
    for (const Piston& piston : m_record.pistons) {
        const auto size = sizeOf(piston);
        if (!size) continue;
        if (!size->corrected) warm.push_back(nameOf(piston));
        if (!size->u) doubtless.push_back(nameOf(piston));
    }
    if (!warm.empty())
        m_sentences.push_back("No temperature is given for " + pistonsWords(warm) +
                              ": taken as 20 °C.");
    if (m_result.measured.empty()) return;
    temperatures();
    if (std::ranges::none_of(m_result.measured,
                             [](const MeasuredBore& bore) { return bore.ownU.has_value(); }))
        m_sentences.emplace_back(
            "How far the bores' readings may be off is not known: clearances stand as read.");
    else if (!doubtless.empty())
        m_sentences.push_back("How far " + pistonsWords(doubtless) +
                              " may be off is not given: the doubt of a clearance is the bore's "
                              "alone.");
}

} // namespace

std::vector<std::string> pistonSentences(const Workbook& workbook, const DisplayUnits& units,
                                         const FitResult& result) {
    return Teller(workbook, units, result).tell();
}

} // namespace borewright
