// SPDX-License-Identifier: GPL-3.0-or-later
// Where a ledger lies: a SQLite file, or a PostgreSQL server that several benches share. No
// password is part of it: the server's own password file (~/.pgpass) is read by its library, or one
// is handed over beside it.
#pragma once

#include "core/result.h"

#include <optional>
#include <string>

namespace borewright {

struct LedgerServer {
    std::string host; // name, address, or a folder ("/run/postgresql") that holds its socket
    int port = 5432;  // 1 … 65535; 5432 is PostgreSQL's own
    std::string database;
    std::string user;
    friend bool operator==(const LedgerServer&, const LedgerServer&) = default;
};

struct LedgerPlace {
    std::string file;                   // of SQLite; counts where there is no server
    std::optional<LedgerServer> server; // of PostgreSQL
    friend bool operator==(const LedgerPlace&, const LedgerPlace&) = default;
};

// A place, and what opens it.
struct LedgerAccess {
    LedgerPlace place;
    // Of the server's user; empty = the server's own password file is asked. It is held in memory
    // and handed to the server's library, and never written anywhere.
    std::string password;
    friend bool operator==(const LedgerAccess&, const LedgerAccess&) = default;
};

// The ledger in the user's data folder.
LedgerPlace usualLedger();

// A file's name, or postgresql://USER@HOST:PORT/DATABASE (port may be left out). Refuses an
// address with a password in it, or without user, host or database.
Result<LedgerPlace> ledgerPlaceFrom(const std::string& text);

// Whether the server is this machine, reached without any network.
bool isThisMachine(const LedgerServer& server);

// What the connection is opened with: TLS is required for any other machine, and a server that
// does not answer is given up after seconds, so that nobody waits for it.
std::string connectOptions(const LedgerServer& server);

// "the ledger /home/…/ledger.sqlite", "the ledger 'jobs' on bench-server".
std::string inWords(const LedgerPlace& place);

} // namespace borewright
