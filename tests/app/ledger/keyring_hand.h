// SPDX-License-Identifier: GPL-3.0-or-later
// One use of the desk's keyring in a process of its own, since a process stays with the desk that
// it found first.
#pragma once

namespace borewright::test {

// RUNNER --keyring read|write|forget NAME [SECRET]: prints the secret, "done", or "refused: why".
int useKeyring(int argc, char** argv);

} // namespace borewright::test
