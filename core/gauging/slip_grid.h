// SPDX-License-Identifier: GPL-3.0-or-later
// A survey's readings laid out for judging: bore by bore, in µm, larger = plus.
#pragma once

#include "core/gauging/bore_model.h"
#include "core/workbook/workbook.h"

#include <optional>
#include <string>
#include <vector>

namespace borewright::slips {

struct Cell {
    std::size_t reading = 0; // in survey.readings
    Spot spot;
    double x_um = 0;
    bool settled = false; // kept as it is, or corrected already: evidence, but not accused
};

struct BoreCells {
    int number = 0;
    double middle_um = 0;    // what x_um counts from
    std::vector<Cell> cells; // by axis, then level, then order typed
};

// The diameter that a typed number means, less that of the gauge's setting where it is a deviation.
double size_um(const TypedLength& typed, const GaugeSetting& gauge);

class Grid {
public:
    // Struck readings are left out.
    explicit Grid(const Survey& survey);

    std::vector<BoreCells> bores; // by number
    [[nodiscard]] const std::vector<Length>& depths() const { return m_depths; }
    // The spot of a station; depths and axes that nothing was read at get numbers of their own.
    Spot spotOf(const Station& station);

private:
    std::vector<Length> m_depths; // rising, of what was read
    std::vector<std::string> m_axes;
    Length m_span;
};

// What the other bores do at each of the spots, by deviations from their own middles: of three or
// more their median, where at least two were read; of one or two each by itself, since one of them
// may be wrong. Empty where they tell nothing.
Patterns patternsFor(const std::vector<BoreCells>& bores, std::size_t bore,
                     const std::vector<Spot>& spots);

} // namespace borewright::slips
