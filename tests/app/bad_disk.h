// SPDX-License-Identifier: GPL-3.0-or-later
// The runner of the window tests started as a program on a bad, a slow or a small disk. Each kind
// of work prints what it found, line by line; the test that started it reads that.
#pragma once

#include <QString>

namespace borewright::test {

// Names the work ("faults", "interrupted", "slow", "opening",
// "small"), then ':' and the folder to work in.
inline constexpr char badDiskVariable[] = "BOREWRIGHT_BAD_DISK";

// What must be done before the application begins its threads: mounting a small disk of its own
// over the folder. Nothing without the variable.
void prepareBadDisk();

// Does the work named by the variable; returns the exit status.
int workOnBadDisk(const QString& work);

// Types and saves while each call of the disk fails in turn, by the preloaded library. Prints
// "cases N saved N told N rescued N false N damaged N unhealed N".
int workUnderFaults(const QString& folder, bool interruptedOnly);
// Types for some seconds while each flush and rename takes two, then on a disk where each opening
// does so too. Prints "worst MS" for each: how long the window stood still.
int workOnSlowDisk(const QString& folder);
// Opens another workbook while one is unsaved, and closes the window, on such disks. Prints "opened
// 1" and "worst MS" for each.
int openOnSlowDisk(const QString& folder);
// Saves, keeps rescue copies, prints the sheet and exports readings at every level of a nearly
// full disk. Prints "levels N …".
int workOnSmallDisk(const QString& folder);

} // namespace borewright::test
