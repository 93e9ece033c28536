// SPDX-License-Identifier: GPL-3.0-or-later
// The few calls that saving and loading need, as an interface, so that faults and loss of power
// can be played in memory. posix_file_system.h is the real one.
#pragma once

namespace borewright {

class FileSystem {
public:
    virtual ~FileSystem() = default;
};

} // namespace borewright
