// SPDX-License-Identifier: GPL-3.0-or-later
// A survey's readings taken into the joint of bore and tools: single readings that do not fit weigh
// less, and where all of them surprise, the model's error was larger than thought.
#pragma once

#include "core/honing/learning_memory.h"

namespace borewright {

// What a correction starts from beside the joint.
struct CorrectionInput {
    std::vector<BoreReading> readings;
    double shared_um = 0;
    // What may be larger than thought, and the factors it was added with.
    Added added;
    AddedFactors factors;
    bool remembers = false;      // the memory learns from it
    std::vector<Look> oddBefore; // where the last survey of this bore was not believed
};

// Corrects `joint` in place and says what was found beside what was expected.
Found correctJoint(const WallGrid& grid, const LearningOptions& options,
                   const CorrectionInput& input, ErrorMemory& memory, Joint& joint);

} // namespace borewright
