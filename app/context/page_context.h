// SPDX-License-Identifier: GPL-3.0-or-later
// What every page of the window is handed to work with. Owned by the shell; outlives the pages.
#pragma once

#include "app/context/dialogs.h"
#include "app/context/preferences.h"
#include "app/context/sounds.h"
#include "app/document/document.h"
#include "app/document/selection.h"
#include "core/storage/file_system.h"

namespace borewright {

struct PageContext {
    Document& document;
    Selection& selection;
    PreferencesStore& preferences;
    Dialogs& dialogs;
    Sounds& sounds;
    FileSystem& files; // for the saver: PDF, CSV, PNG
};

} // namespace borewright
