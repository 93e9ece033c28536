// SPDX-License-Identifier: GPL-3.0-or-later
// A name for a new workbook's file: from engine, customer and date, safe on every disk.
#pragma once

#include "core/storage/file_system.h"
#include "core/workbook/workbook.h"

#include <QString>

namespace borewright {

// "Saltmarsh V6, A. Example, 2026-03-14" without the ending; "Block of 6, 2026-03-14" where
// neither engine nor customer is given. Signs that some disks refuse become spaces.
QString proposedName(const Workbook& workbook, const Timestamp& now);

// `folder`/`name`.borebook, or "name (2)" and so on where there is such a file already.
QString freshPath(FileSystem& files, const QString& folder, const QString& name);

} // namespace borewright
