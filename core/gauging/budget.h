// SPDX-License-Identifier: GPL-3.0-or-later
// The doubt of a survey's readings, source by source, and how it is shared between them.
//
// Method: JCGM 100:2008 (GUM). A reading's diameter is the set size plus what the dial showed, less
// drift, brought to 20 °C; each source moves it by sensitivity × value. Two parts are kept apart:
//   own     a reading's own: repeatability, step, the dial's local error, rocking, wander between
//           checks. Repeats lessen repeatability and step, by √n, and nothing else: the dial is at
//           the same place each time.
//   shared  master, setting, the dial's largest error, drift, temperatures: they move all readings
//           alike, count in a size and cancel in out-of-round and taper.
// Covariance of two readings: Σ over shared sources u²·loading·loading, plus own² on the diagonal.
#pragma once

#include "core/gauging/zero_history.h"
#include "core/statistics/coverage.h"
#include "core/workbook/workbook.h"

#include <limits>
#include <optional>
#include <string>
#include <vector>

namespace borewright {

enum class Source {
    repeatability,
    step,
    dialLocalError,
    rocking,
    wander, // between zero checks
    dialError,
    master,
    setting,
    drift,
    zeroChecks,
    difference,  // block warmer than master
    temperature, // both off 20 °C, or what a thermometer leaves
    blockExpansion,
    masterExpansion,
    gaugeWarmth,
    warmEnd, // one end of the block warmer
};
// "repeatability of a reading", "the ring or micrometer it was set on", …
std::string_view nameOf(Source source);
bool isShared(Source source);

// A line of the budget. u_i = |sensitivity| · value/divisor.
struct BudgetLine {
    Source source = Source::repeatability;
    double value = 0; // ± or standard deviation, in µm, °C or 1/°C
    enum class In { micrometre, celsius, perCelsius } in = In::micrometre;
    Distribution distribution = Distribution::normal;
    double divisor = 1;
    double sensitivity = 1; // µm per unit of value
    double contribution_um = 0;
    double freedom = std::numeric_limits<double>::infinity();
};

struct Budget {
    std::vector<BudgetLine> lines;    // largest contribution first; none of them zero
    std::vector<std::string> missing; // figures without which nothing is reckoned; empty = known
    double own_um = 0;                // standard uncertainty of a reading's own part
    double shared_um = 0;
    double single_um = 0;     // of one diameter: √(own² + shared²)
    double difference_um = 0; // of a difference of two diameters: √2·own
    double freedom = std::numeric_limits<double>::infinity(); // effective, of single_um
    double differenceFreedom = std::numeric_limits<double>::infinity();
    double coverage = 2; // k for 95 %, by Student's t
    [[nodiscard]] bool known() const { return missing.empty(); }
};

// The budget of one station's mean diameter from `repeats` readings, for a bore of `size`, with the
// zero as uncertain as before any check. Known where repeatability and master are given.
Budget budgetOf(const SurveyHeader& survey, Length size, int repeats = 1);

// Own part of a station's mean, by kind of spread (µm, standard).
struct OwnDoubt {
    double normal_um = 0; // repeatability; known with SurveyDoubt::freedom
    double step_um = 0;   // rectangular
    double local_um = 0;  // rectangular: dial, rocking, wander
    [[nodiscard]] double square() const {
        return normal_um * normal_um + step_um * step_um + local_um * local_um;
    }
};
// A source that moves several stations at once: station i by u·loading[i].
struct SharedDoubt {
    Source source = Source::master;
    double u_um = 0;
    Distribution distribution = Distribution::normal;
    double freedom = std::numeric_limits<double>::infinity();
    std::vector<double> loading; // one a station; empty = 1 for all
    [[nodiscard]] double at(std::size_t i) const { return loading.empty() ? 1 : loading[i]; }
};
// The doubt of a list of stations.
struct SurveyDoubt {
    std::vector<OwnDoubt> own;
    std::vector<SharedDoubt> shared;
    double ownFreedom = std::numeric_limits<double>::infinity();
};

// A station and when its unstruck readings were taken.
struct ReadAt {
    Station station;
    std::vector<Timestamp> times;
};
// Nothing where the budget is not known.
std::optional<SurveyDoubt> doubtOf(const Workbook& workbook, const SurveyHeader& survey,
                                   Length size, const std::vector<ReadAt>& stations);
// Row by row, µm².
std::vector<double> covarianceOf(const SurveyDoubt& doubt);

} // namespace borewright
