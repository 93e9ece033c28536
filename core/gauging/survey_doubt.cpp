// SPDX-License-Identifier: GPL-3.0-or-later
// The covariance of a survey's stations, from the lines of its budget and the times of its
// readings.
#include "core/gauging/budget.h"

#include <algorithm>
#include <cmath>

namespace borewright {
namespace {

class DoubtBuilder {
public:
    DoubtBuilder(const Workbook& workbook, const SurveyHeader& survey, const Budget& one,
                 const std::vector<ReadAt>& stations)
        : m_workbook(workbook)
        , m_zero(survey)
        , m_budget(one)
        , m_stations(stations) {}

    SurveyDoubt build() {
        for (const BudgetLine& line : m_budget.lines)
            if (isShared(line.source)) addShared(line);
        for (const BudgetLine& line : m_budget.lines)
            if (line.source == Source::repeatability) m_doubt.ownFreedom = line.freedom;
        addZeroChecks();
        for (const ReadAt& read : m_stations)
            m_doubt.own.push_back(ownOf(read));
        return std::move(m_doubt);
    }

private:
    [[nodiscard]] double oneReading(Source source) const {
        const auto line = std::ranges::find(m_budget.lines, source, &BudgetLine::source);
        return line == m_budget.lines.end() ? 0 : line->contribution_um;
    }

    // m_budget is that of a single reading.
    [[nodiscard]] OwnDoubt ownOf(const ReadAt& read) const {
        const double root = std::sqrt(std::max<std::size_t>(1, read.times.size()));
        double wander_um = 0;
        for (const Timestamp time : read.times)
            wander_um += m_zero.wanderDoubt(time).in(Unit::micrometre);
        if (!read.times.empty()) wander_um /= static_cast<double>(read.times.size());
        wander_um /= divisor(Distribution::rectangular);
        return {
            oneReading(Source::repeatability) / root, oneReading(Source::step) / root,
            std::hypot(oneReading(Source::dialLocalError), oneReading(Source::rocking), wander_um)};
    }

    void addShared(const BudgetLine& line) {
        SharedDoubt shared{line.source, line.contribution_um, line.distribution, line.freedom, {}};
        if (line.source == Source::drift) {
            shared.loading = loadings([&](const ReadAt& read) { return uncheckedShare(read); });
            if (std::ranges::all_of(shared.loading, [](double l) { return l == 0; })) return;
        }
        if (line.source == Source::warmEnd)
            shared.loading = loadings([&](const ReadAt& read) { return fromTheMiddle(read); });
        m_doubt.shared.push_back(std::move(shared));
    }

    // A check on the master is a reading like any other; it moves what it corrects.
    void addZeroChecks() {
        const double check_um =
            std::hypot(oneReading(Source::repeatability), oneReading(Source::step));
        const Contribution parts[] = {
            {oneReading(Source::repeatability), m_doubt.ownFreedom},
            {oneReading(Source::step), std::numeric_limits<double>::infinity()}};
        for (std::size_t check = 0; check < m_zero.checks(); ++check) {
            SharedDoubt shared{
                Source::zeroChecks, check_um, Distribution::normal, welchSatterthwaite(parts), {}};
            shared.loading = loadings([&](const ReadAt& read) { return checkShare(read, check); });
            if (std::ranges::any_of(shared.loading, [](double l) { return l != 0; }))
                m_doubt.shared.push_back(std::move(shared));
        }
    }

    template<class Of>
    [[nodiscard]] std::vector<double> loadings(Of of) const {
        std::vector<double> loading;
        loading.reserve(m_stations.size());
        for (const ReadAt& read : m_stations)
            loading.push_back(of(read));
        return loading;
    }

    [[nodiscard]] double uncheckedShare(const ReadAt& read) const {
        if (read.times.empty()) return 1;
        const auto unchecked = std::ranges::count_if(
            read.times, [&](Timestamp time) { return !m_zero.checkedAfter(time); });
        return static_cast<double>(unchecked) / static_cast<double>(read.times.size());
    }

    [[nodiscard]] double checkShare(const ReadAt& read, std::size_t check) const {
        double sum = 0;
        for (const Timestamp time : read.times)
            for (const ZeroHistory::Share& share : m_zero.shares(time))
                if (share.check == check) sum -= share.share;
        return read.times.empty() ? 0 : sum / static_cast<double>(read.times.size());
    }

    // −1 at the open end, 1 at the closed end: the budget's line is for an end.
    [[nodiscard]] double fromTheMiddle(const ReadAt& read) const {
        const Bore* bore = findBore(m_workbook.block, read.station.bore);
        if (bore == nullptr || !bore->depth || bore->depth->value() <= Length()) return 0;
        const double share =
            read.station.depth.in(Unit::millimetre) / bore->depth->value().in(Unit::millimetre);
        return 2 * std::clamp(share, 0.0, 1.0) - 1;
    }

    const Workbook& m_workbook;
    ZeroHistory m_zero;
    const Budget& m_budget;
    const std::vector<ReadAt>& m_stations;
    SurveyDoubt m_doubt;
};

} // namespace

std::optional<SurveyDoubt> doubtOf(const Workbook& workbook, const SurveyHeader& survey,
                                   Length size, const std::vector<ReadAt>& stations) {
    const Budget one = budgetOf(survey, size);
    if (!one.known()) return std::nullopt;
    return DoubtBuilder(workbook, survey, one, stations).build();
}

std::vector<double> covarianceOf(const SurveyDoubt& doubt) {
    const std::size_t n = doubt.own.size();
    std::vector<double> covariance(n * n, 0.0);
    for (std::size_t i = 0; i < n; ++i)
        for (std::size_t j = 0; j < n; ++j) {
            double& c = covariance[i * n + j];
            if (i == j) c = doubt.own[i].square();
            for (const SharedDoubt& shared : doubt.shared)
                c += shared.u_um * shared.u_um * shared.at(i) * shared.at(j);
        }
    return covariance;
}

} // namespace borewright
