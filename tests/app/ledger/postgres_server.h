// SPDX-License-Identifier: GPL-3.0-or-later
// A real PostgreSQL server of the tests' own, in a temporary folder: on a socket and on a port of
// this machine, with a password that only its password file knows. Ends with the process.
#pragma once

#include "app/ledger/ledger_place.h"

#include <QProcess>
#include <QTemporaryDir>

#include <string>

namespace borewright::test {

class PostgresServer {
public:
    // The one server of this process, started when first asked for.
    static PostgresServer& theOne();

    // Why there is none; empty where it runs. A test fails with it.
    [[nodiscard]] const std::string& problem() const { return m_problem; }
    // A database that is empty, reached over the port.
    LedgerPlace freshDatabase();
    // Of the one user that it knows.
    [[nodiscard]] std::string password() const;
    // The password file is the one that holds it, as at the beginning.
    void usePasswordFile() const;
    // Offers TLS from now on, with a certificate that it made itself, or none any more.
    bool setTls(bool offered);
    // The same database by another host name.
    [[nodiscard]] LedgerPlace at(LedgerPlace place, const std::string& host) const;
    // Ends it at once, as a pulled plug does, and starts it again.
    void kill();
    void startAgain();

private:
    PostgresServer();
    ~PostgresServer();
    bool prepare();
    bool run(const QString& program, const QStringList& arguments, bool asServer);
    void start();
    [[nodiscard]] QStringList command(const QString& program, bool asServer) const;

    QTemporaryDir m_folder;
    QString m_programs; // folder
    QProcess m_server;
    int m_port = 0;
    int m_databases = 0;
    std::string m_problem;
};

} // namespace borewright::test
