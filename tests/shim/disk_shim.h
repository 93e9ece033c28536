// SPDX-License-Identifier: GPL-3.0-or-later
// A shared library preloaded into a child process: it stands between the program and the system's
// own calls, and makes a bad or a slow disk of one folder. Everything else goes through untouched.
#pragma once

extern "C" {

// What the disk under a folder does; plain data, since it crosses into a preloaded library.
struct DiskShimOrders {
    int call;         // the call that fails, counting from 0; below 0: none
    int fromThenOn;   // not 0: every later one too
    int error;        // errno; 0: a write takes half of its bytes, others pass
    int share;        // not 0: files without a name cannot be made there
    int milliseconds; // that each flush and rename takes; where below 0, each opening does too
};

// Sets the orders for what lies in `folder` (at most 500 bytes) and counts from 0 again.
using DiskShimOrder = void (*)(const char* folder, const DiskShimOrders* orders);
// Calls counted since: open, write, read back, fsync, linkat, rename, unlink.
using DiskShimCalls = int (*)();
}

inline constexpr char diskShimOrderName[] = "diskShimOrder";
inline constexpr char diskShimCallsName[] = "diskShimCalls";
