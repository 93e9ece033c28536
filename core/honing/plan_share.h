// SPDX-License-Identifier: GPL-3.0-or-later
// Pieces of work shared out to the cores of the machine.
#pragma once

#include <cstddef>
#include <functional>

namespace borewright {

// Does the pieces 0 … count − 1, which must not depend on each other, in any order on several
// threads, and returns when all are done. `goesOn` is asked between pieces, by the calling thread
// alone, with how many are done; false = no further piece is begun, but the first is done always.
// An exception of a piece is thrown here.
void shareOut(std::size_t count, const std::function<void(std::size_t)>& work,
              const std::function<bool(std::size_t)>& goesOn);

} // namespace borewright
