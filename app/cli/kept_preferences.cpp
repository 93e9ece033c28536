// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/kept_preferences.h"

#include "app/shell/preferences_file.h"
#include "app/shell/system_outside.h"

namespace borewright {

Preferences keptPreferences(FileSystem& files) {
    constexpr std::size_t largest = 1UL * 1024 * 1024;
    const auto bytes = files.read(preferencesPath().toStdString(), largest);
    if (!bytes) return {};
    Preferences preferences = readPreferences(*bytes).value_or(Preferences());
    if (!isWholePath(preferences.copiesFolder))
        preferences.copiesFolder.clear(); // the window says so
    return preferences;
}

} // namespace borewright
