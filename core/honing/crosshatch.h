// SPDX-License-Identifier: GPL-3.0-or-later
// Crosshatch: the angle at which the scratches of the stroke down and those of the stroke up cross.
//
// Method: geometry of the unrolled wall, uniform speed both ways.
//     v_axial = 2·travel·strokes a minute,   v_turn = π·bore·rpm,   tan(α/2) = v_axial / v_turn.
// Convention: α is the angle between the two families of scratches that the direction round the
// bore halves; a slow stroke at a fast turn gives a small α. The other convention counts the angle
// that the bore's axis halves, 180° − α. Near the reversals the stroke is slower and the angle
// smaller than this.
#pragma once

#include "core/result.h"

#include <string>

namespace borewright {

struct HoneMotion {
    double bore_mm = 0;
    double rpm = 0;       // of the spindle
    double travel_mm = 0; // of the stone, from one reversal to the other
    double beats = 0;     // strokes a minute; a stroke is down and back
};

// α in degrees, 0 < α < 180. Refuses, saying which, what is not above zero.
Result<double> crosshatchDegrees(const HoneMotion& motion);

// The speed (1/min), or the beats a minute, that give a wanted angle; what is asked for is not read
// from `motion`. Refuses likewise, and an angle not between 0° and 180°.
Result<double> rpmForCrosshatch(double degrees, const HoneMotion& motion);
Result<double> beatsForCrosshatch(double degrees, const HoneMotion& motion);

// For beside a figure: "where the scratches of the down and the up strokes cross, …".
std::string crosshatchConvention();

} // namespace borewright
