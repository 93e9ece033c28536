// SPDX-License-Identifier: GPL-3.0-or-later
// Where each stone stops, with common practice in place of what the user did not say.
#pragma once

#include "core/workbook/hone_record.h"

namespace borewright {

// On the diameter, what is still to go.
struct Stages {
    Length roughStopsAt;  // full rough stones stop; the short stone works the closed end
    Length closedEndLead; // by how much the short stone brings the closed end to lead
    Length nextStopsAt;   // every rough stone stops: what the finish stones take
    Length coolBelow;     // less than this to go: only on a cool bore
    friend bool operator==(const Stages&, const Stages&) = default;
};

// 4.5, 0.8, 1.0 and 0.3 thou: common practice, no source. A stage the user gave counts as he gave
// it; one taken from practice gives way to it, so that what is to go never rises from roughStopsAt
// over nextStopsAt to coolBelow.
Stages stagesOf(const HoneStages& stages);

} // namespace borewright
