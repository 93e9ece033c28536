// SPDX-License-Identifier: GPL-3.0-or-later
// A machinist who never stops: the runner of the window tests started as a program that types
// readings by keys into the real page, until it is killed.
#pragma once

#include <QString>

namespace borewright::test {

inline constexpr char robotVariable[] = "BOREWRIGHT_ROBOT_FOLDER";

// Begins a workbook in `folder` and types. Prints "path …" first, then "saved N" each time that the
// workbook with N readings is shown as saved. Returns only where something is wrong.
int typeUntilKilled(const QString& folder);

} // namespace borewright::test
