// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/form/profile.h"

#include "core/statistics/distributions.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <map>
#include <numeric>
#include <optional>

namespace borewright {
namespace {

constexpr double sameDepth_mm = 1e-6;
constexpr std::size_t mostDepths = 200;
constexpr std::size_t mostAxes = 36;
// About the chance beyond which a shape is called seen, and how much the excess may be widened.
constexpr double excessCovered = 0.9995;
constexpr double mostWidening = 7;

// A station: its readings' weights, and their weighted mean.
struct Cell {
    double weight = 0;
    double size_um = 0;
};

// Cells by depth and axis; a weight of 0 where nothing was read.
struct Table {
    std::vector<double> depths;
    std::vector<std::vector<Cell>> cells;
    std::size_t axes = 0;

    [[nodiscard]] double weightAt(std::size_t depth) const {
        double sum = 0;
        for (const Cell& cell : cells[depth])
            sum += cell.weight;
        return sum;
    }
};

std::optional<Error> trouble(std::span<const ShapeReading> readings) {
    if (readings.empty()) return Error{{}, "no readings, so no shape"};
    for (const ShapeReading& reading : readings) {
        if (!isDepthAndSize(reading.depth_mm, reading.size_um))
            return Error{"shape", "a reading whose depth or size is no number"};
        if (!isWeighable(reading.u_um))
            return Error{"shape", "a reading without a doubt above zero; the shape is weighed "
                                  "against it"};
    }
    return std::nullopt;
}

Table tableOf(std::vector<ShapeReading> readings) {
    std::ranges::stable_sort(readings, {}, &ShapeReading::depth_mm);
    std::map<int, std::size_t> places;
    for (const ShapeReading& reading : readings)
        places.try_emplace(reading.axis, places.size());
    Table table;
    table.axes = places.size();
    for (const ShapeReading& reading : readings) {
        if (table.depths.empty() || reading.depth_mm - table.depths.back() > sameDepth_mm) {
            table.depths.push_back(reading.depth_mm);
            table.cells.emplace_back(table.axes);
        }
        Cell& cell = table.cells.back()[places[reading.axis]];
        const double weight = 1 / (reading.u_um * reading.u_um);
        cell.size_um += weight / (cell.weight + weight) * (reading.size_um - cell.size_um);
        cell.weight += weight;
    }
    return table;
}

// A number a depth, the same for depths that hang together by the axes read there.
std::vector<std::size_t> groupsOf(const Table& table) {
    std::vector<std::size_t> group(table.depths.size());
    std::iota(group.begin(), group.end(), 0U);
    for (std::size_t axis = 0; axis < table.axes; ++axis) {
        std::optional<std::size_t> first;
        for (std::size_t d = 0; d < group.size(); ++d) {
            if (table.cells[d][axis].weight == 0) continue;
            if (!first) first = d;
            const std::size_t from = group[d], to = group[*first];
            std::ranges::replace(group, from, to);
        }
    }
    return group;
}

void dropUnreadAxes(Table& table) {
    for (std::size_t axis = table.axes; axis-- > 0;) {
        if (std::ranges::any_of(table.cells, [&](const auto& row) { return row[axis].weight > 0; }))
            continue;
        --table.axes;
        for (auto& row : table.cells)
            row.erase(row.begin() + static_cast<std::ptrdiff_t>(axis));
    }
}

// Keeps the group with most depths; of two as large, the one that begins higher up. Gives the
// depths left out.
std::vector<double> keepWhatHangsTogether(Table& table) {
    const std::vector<std::size_t> group = groupsOf(table);
    const std::size_t kept = *std::ranges::max_element(
        group, {}, [&](std::size_t g) { return std::ranges::count(group, g); });
    Table rest;
    rest.axes = table.axes;
    std::vector<double> leftOut;
    for (std::size_t d = 0; d < group.size(); ++d) {
        if (group[d] != kept) {
            leftOut.push_back(table.depths[d]);
            continue;
        }
        rest.depths.push_back(table.depths[d]);
        rest.cells.push_back(table.cells[d]);
    }
    table = std::move(rest);
    dropUnreadAxes(table);
    return leftOut;
}

using Matrix = std::vector<std::vector<double>>;

// Inverse of a positive definite matrix, by Gauss and Jordan; it needs no exchange of rows.
Matrix inverse(Matrix a) {
    const std::size_t n = a.size();
    Matrix b(n, std::vector<double>(n));
    for (std::size_t i = 0; i < n; ++i)
        b[i][i] = 1;
    for (std::size_t i = 0; i < n; ++i) {
        const double pivot = a[i][i];
        for (std::size_t k = 0; k < n; ++k) {
            a[i][k] /= pivot;
            b[i][k] /= pivot;
        }
        for (std::size_t j = 0; j < n; ++j) {
            if (j == i) continue;
            const double factor = a[j][i];
            for (std::size_t k = 0; k < n; ++k) {
                a[j][k] -= factor * a[i][k];
                b[j][k] -= factor * b[i][k];
            }
        }
    }
    return b;
}

class AxisFit {
public:
    explicit AxisFit(const Table& table)
        : m_table(table)
        , m_axes(table.axes)
        , m_effect(table.axes)
        , m_covariance(table.axes, std::vector<double>(table.axes)) {
        if (m_axes > 1) solve();
    }

    // Mean of a depth over all axes, the axes' effects taken off.
    [[nodiscard]] double meanAt(std::size_t d) const {
        const double all = m_table.weightAt(d);
        double sum = 0;
        for (std::size_t a = 0; a < m_axes; ++a)
            sum += m_table.cells[d][a].weight / all * (m_table.cells[d][a].size_um - m_effect[a]);
        return sum;
    }
    [[nodiscard]] double shared(std::size_t d, std::size_t e) const {
        double sum = 0;
        for (std::size_t a = 0; a < m_axes; ++a)
            for (std::size_t b = 0; b < m_axes; ++b)
                sum += lean(d, a) * m_covariance[a][b] * lean(e, b);
        return sum;
    }
    // What the residuals may hold beyond u, over u²; 0 where they show none.
    [[nodiscard]] double excess() const;

private:
    void solve();
    // How far the mean of a depth leans on an axis.
    [[nodiscard]] double lean(std::size_t d, std::size_t a) const {
        return m_table.cells[d][a].weight / m_table.weightAt(d) - 1 / static_cast<double>(m_axes);
    }

    const Table& m_table;
    std::size_t m_axes;
    std::vector<double> m_effect; // sum 0
    // Of the effects with the first axis held at 0: a lean sums to 0, so that what is held does
    // not show in a mean.
    Matrix m_covariance;
};

void AxisFit::solve() {
    Matrix normal(m_axes - 1, std::vector<double>(m_axes - 1));
    std::vector<double> right(m_axes - 1);
    for (std::size_t d = 0; d < m_table.depths.size(); ++d) {
        const std::vector<Cell>& row = m_table.cells[d];
        const double all = m_table.weightAt(d);
        const double mean = meanAt(d); // the effects are still 0
        for (std::size_t a = 1; a < m_axes; ++a) {
            right[a - 1] += row[a].weight * (row[a].size_um - mean);
            for (std::size_t b = 1; b < m_axes; ++b)
                normal[a - 1][b - 1] +=
                    (a == b ? row[a].weight : 0) - row[a].weight * row[b].weight / all;
        }
    }
    const Matrix solved = inverse(std::move(normal));
    for (std::size_t a = 1; a < m_axes; ++a)
        for (std::size_t b = 1; b < m_axes; ++b) {
            m_covariance[a][b] = solved[a - 1][b - 1];
            m_effect[a] += solved[a - 1][b - 1] * right[b - 1];
        }
    const double mean =
        std::accumulate(m_effect.begin(), m_effect.end(), 0.0) / static_cast<double>(m_axes);
    for (double& effect : m_effect)
        effect -= mean;
}

double AxisFit::excess() const {
    double chiSquare = 0;
    int cells = 0;
    for (std::size_t d = 0; d < m_table.depths.size(); ++d) {
        const double mean = meanAt(d);
        for (std::size_t a = 0; a < m_axes; ++a) {
            const Cell& cell = m_table.cells[d][a];
            if (cell.weight == 0) continue;
            const double residual = cell.size_um - m_effect[a] - mean;
            chiSquare += cell.weight * residual * residual;
            ++cells;
        }
    }
    const int freedom = cells - static_cast<int>(m_table.depths.size() + m_axes) + 1;
    if (freedom < 1) return 0;
    const double widening = std::min(mostWidening, studentQuantile(excessCovered, freedom) /
                                                       normalQuantile(excessCovered));
    return std::max(0.0, widening * widening * chiSquare / freedom - 1);
}

// Variance that a depth has of its own: noise, and what its missing axes may have been.
double own_um2(const Table& table, std::size_t d, double excess) {
    const std::vector<Cell>& row = table.cells[d];
    const auto read =
        static_cast<double>(std::ranges::count_if(row, [](const Cell& c) { return c.weight > 0; }));
    const double noise = 1 / table.weightAt(d);
    return noise + excess * noise * (1 - read / static_cast<double>(table.axes));
}

} // namespace

Result<Profile> profileOf(std::span<const ShapeReading> readings) {
    if (const auto error = trouble(readings)) return tl::unexpected<Error>(*error);
    Table table = tableOf({readings.begin(), readings.end()});
    if (table.depths.size() > mostDepths || table.axes > mostAxes)
        return refuse("shape", "more depths or axes than a shape is told from");
    Profile profile;
    profile.leftOut_mm = keepWhatHangsTogether(table);
    const AxisFit fit(table);
    const double excess = fit.excess();
    const std::size_t n = table.depths.size();
    profile.covariance_um2.resize(n * n);
    bool sharing = false;
    for (std::size_t d = 0; d < n; ++d) {
        for (std::size_t e = 0; e < n; ++e) {
            const double shared = fit.shared(d, e) * (1 + excess);
            profile.covariance_um2[d * n + e] = shared + (d == e ? own_um2(table, d, excess) : 0);
            sharing = sharing || (d != e && shared != 0);
        }
        profile.points.push_back(
            {table.depths[d], fit.meanAt(d), std::sqrt(profile.covariance_um2[d * n + d])});
    }
    if (!sharing) profile.covariance_um2.clear();
    return profile;
}

} // namespace borewright
