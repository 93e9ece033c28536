// SPDX-License-Identifier: GPL-3.0-or-later
// What must hold for any bytes whatever. The fuzzers (tests/fuzz) hunt for bytes that break it; a
// test replays every case kept in tests/fuzz/corpus.
#pragma once

#include <string>
#include <string_view>

namespace borewright::test {

// Each returns what is broken; empty where all holds.

// A workbook that is read is written so that it reads back equal and is written the same again;
// a refusal has words.
std::string brokenByWorkbook(std::string_view bytes);
// Rows that are taken lie on the block, and come back from the table written of them.
std::string brokenByReadings(std::string_view bytes);
// A number that is read has the value of its own text, alone and with its unit behind.
std::string brokenByNumber(std::string_view bytes);
// What is typed at a gauge, a line each: the size it is set to, letters for its kind, the
// temperatures of master and block, then readings ("z" before what zero shows). A reading that is
// accepted is a diameter within the dial's travel, and of a sound text no refusal is unsound.
std::string brokenByGauge(std::string_view bytes);
// The lock beside a workbook, which anybody may have written: read, it is written so that it reads
// back equal.
std::string brokenByLock(std::string_view bytes);

} // namespace borewright::test
