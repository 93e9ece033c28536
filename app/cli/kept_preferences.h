// SPDX-License-Identifier: GPL-3.0-or-later
// What the user prefers, as the window keeps it.
#pragma once

#include "app/context/preferences.h"
#include "core/storage/file_system.h"

namespace borewright {

// The defaults where there are none or they cannot be read: the window says so.
Preferences keptPreferences(FileSystem& files);

} // namespace borewright
