// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verdict/prospect.h"

#include "core/gauging/budget.h"
#include "core/statistics/range.h"
#include "core/verdict/remedy.h"
#include "core/verdict/verdict.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace borewright {
namespace {

class Teller {
public:
    Teller(const Workbook& workbook, const SurveyHeader& survey, const Bore& bore, Length size,
           const LimitSet* set, const DisplayUnits& units)
        : m_workbook(workbook)
        , m_survey(survey)
        , m_bore(bore)
        , m_size(size)
        , m_set(set)
        , m_units(units)
        , m_budget(budgetOf(survey, size)) {}

    std::vector<std::string> tell() {
        const DecisionRule rule = m_set != nullptr ? m_set->decision : DecisionRule();
        m_sizeFactor = guardFactor(rule, m_budget.freedom);
        m_differenceFactor = guardFactor(rule, m_budget.differenceFreedom);
        if (m_set != nullptr && rule.kind != DecisionRule::Kind::plain) {
            const Limits& limits = limitsFor(*m_set, m_bore.number);
            tellSizes(limits);
            tellDifference("out-of-round", limits.outOfRound);
            tellDifference("taper", limits.taper);
        }
        if (m_workbook.straightAim && purposeOf(m_survey.kind) == LimitPurpose::finish) tellAim();
        return std::move(m_sentences);
    }

private:
    [[nodiscard]] std::string small(double um) const {
        return smallWithUnit(Length::nearest(um, Unit::micrometre), m_units, Sign::negative, 1);
    }
    [[nodiscard]] std::string best(DoubtOf of, double factor) const {
        const auto list = remedies(m_survey, m_size, of);
        return list.empty()
                   ? std::string()
                   : " What helps most: " + remedyWords(list.front(), factor, m_units) + ".";
    }

    void tellSizes(const Limits& limits) {
        const double w = m_sizeFactor * m_budget.single_um;
        if (!limits.sizeLower && !limits.sizeUpper) return;
        if (!limits.sizeLower || !limits.sizeUpper) return tellOneSize(limits, w);
        const double band =
            (limits.sizeUpper->value() - limits.sizeLower->value()).in(Unit::micrometre);
        const double left = acceptBand_um(band, m_budget.single_um, m_sizeFactor);
        if (left <= 0)
            m_sentences.push_back(fmt::format("Between the size limits lie {}, and this gear needs "
                                              "{} at either end: no bore could "
                                              "ever be called within.{}",
                                              small(band), small(w),
                                              best(DoubtOf::size, m_sizeFactor)));
        else
            m_sentences.push_back(fmt::format(
                "Of the {} between the size limits, {} are left to call within in.{}", small(band),
                small(left), left < band / 2 ? best(DoubtOf::size, m_sizeFactor) : std::string()));
    }

    void tellOneSize(const Limits& limits, double w_um) {
        const Length w = Length::nearest(w_um, Unit::micrometre);
        const auto& upper = limits.sizeUpper;
        const Length limit = upper ? upper->value() : limits.sizeLower->value();
        m_sentences.push_back(fmt::format(
            "Sizes {} {} can be called within, of {} allowed.", upper ? "up to" : "from",
            sizeWithUnit(upper ? limit - w : limit + w, m_units, 1), sizeWithUnit(limit, m_units)));
    }

    void tellDifference(const char* name, const std::optional<TypedLength>& limit) {
        if (!limit) return;
        const double w = m_differenceFactor * m_budget.difference_um;
        const double allowed = limit->value().in(Unit::micrometre);
        if (w >= allowed)
            m_sentences.push_back(fmt::format(
                "The limit for {} is {}, and this gear cannot tell less than {}: no bore "
                "could ever be called within.{}",
                name, small(allowed), small(w), best(DoubtOf::difference, m_differenceFactor)));
        else
            m_sentences.push_back(
                fmt::format("{} up to {} can be called within, of the {} allowed.", name,
                            small(allowed - w), small(allowed)));
        m_sentences.back()[0] =
            static_cast<char>(std::toupper(static_cast<unsigned char>(m_sentences.back()[0])));
    }

    void tellAim() {
        const int levels = static_cast<int>(m_bore.levels.size());
        const int axes = static_cast<int>(m_workbook.block.axes.size());
        if (levels < 2) return;
        const double aim = m_workbook.straightAim->value().in(Unit::micrometre);
        const double chance = straightShowsMore(aim, m_budget.own_um, levels, axes);
        const int inHundred = static_cast<int>(std::lround(100 * chance));
        const double left = aim - m_differenceFactor * m_budget.difference_um;
        const long met =
            left > 0
                ? std::lround(100 * (1 - straightShowsMore(left, m_budget.own_um, levels, axes)))
                : 0;
        if (inHundred < 5 && met > 50) return;
        m_sentences.push_back(
            fmt::format("A truly straight bore would show more than the aim of {} {} times in 100, "
                        "by the gauge "
                        "alone, and be called met {}.{}",
                        small(aim), inHundred,
                        left > 0 ? fmt::format("{} times in 100", met) : std::string("never"),
                        best(DoubtOf::difference, m_differenceFactor)));
    }

    const Workbook& m_workbook;
    const SurveyHeader& m_survey;
    const Bore& m_bore;
    Length m_size;
    const LimitSet* m_set;
    const DisplayUnits& m_units;
    Budget m_budget;
    double m_sizeFactor = 0;
    double m_differenceFactor = 0;
    std::vector<std::string> m_sentences;
};

} // namespace

double acceptBand_um(double band_um, double u_um, double factor) {
    return band_um - 2 * factor * u_um;
}

double straightShowsMore(double aim_um, double own_um, int levels, int axes) {
    if (!(own_um > 0) || levels < 2 || axes < 1) return 0;
    return 1 - std::pow(rangeBelow(aim_um / own_um, levels), axes);
}

std::vector<std::string> prospect(const Workbook& workbook, const SurveyHeader& survey,
                                  const DisplayUnits& units) {
    if (workbook.block.bores.empty()) return {};
    const Bore& bore = workbook.block.bores.front();
    const auto size = survey.gauge.setSize ? survey.gauge.setSize : bore.standardSize;
    if (!size || !budgetOf(survey, size->value()).known()) return {};
    const auto set = judgingSet(workbook, survey);
    return Teller(workbook, survey, bore, size->value(), set ? *set : nullptr, units).tell();
}

} // namespace borewright
