// SPDX-License-Identifier: GPL-3.0-or-later
// A bore honed for show: the demonstration's stand-in for iron, stones and gauge. The wall is what
// was last read before the first pass, drawn through the stations, with a little of its own between
// them; every pass logged since is stroked through the contact model with rates, compliance and
// scatter that nothing else in the program is told. Invented figures throughout, the same for the
// same workbook: seeds are the number of the bore and the ids of stones and passes.
// Only a show: it shares its contact model with the planner and proves nothing about it.
#pragma once

#include "core/workbook/workbook.h"

#include <map>
#include <string>
#include <vector>

namespace borewright {

// The wall of one bore as it is now, known to nobody but the played gauge.
class PlayedBore {
public:
    // Plays all that was logged in the whole block, since stones wear in one bore and cut in the
    // next. Refuses a bore that no survey has read, or a pass that its stone cannot do.
    static Result<PlayedBore> replay(const Workbook& workbook, int bore);
    // The true size there; axes that were not read have the mean of those that were.
    [[nodiscard]] Length sizeAt(Length depth, const std::string& axis) const;

private:
    friend class PlayedBlock;
    double m_cell_mm = 1;
    Length m_from;                                     // what the diameters below count from
    std::vector<double> m_wall_um;                     // mean of the axes, a cell each
    std::map<std::string, std::vector<double>> m_axes; // what an axis differs by
};

// What the gauge of that heading would show at the stations, in their order: 1.3 µm of noise, then
// the nearest graduation; a reading every seven seconds from the heading's time on.
Result<std::vector<Reading>> playedReadings(const Workbook& workbook, const SurveyHeader& header,
                                            const std::vector<Station>& stations);

} // namespace borewright
