// SPDX-License-Identifier: GPL-3.0-or-later
// One connection to the ledger's database. Every statement is prepared once and its values bound;
// no text of a user ever becomes part of a statement. Belongs to the thread that opened it, and has
// to end before the application object does, which takes Qt's list of connections with it.
#pragma once

#include "app/ledger/ledger_place.h"

#include <QString>
#include <QVariantList>

#include <functional>
#include <map>
#include <memory>
#include <string>

class QSqlDatabase;
class QSqlError;
class QSqlQuery;

namespace borewright {

class LedgerConnection {
public:
    // Refuses where the driver is missing, the file cannot be opened, the server does not answer.
    static Result<std::unique_ptr<LedgerConnection>> open(const LedgerPlace& place,
                                                          const std::string& password = {});
    ~LedgerConnection();
    LedgerConnection(const LedgerConnection&) = delete;
    LedgerConnection& operator=(const LedgerConnection&) = delete;

    // Carries out a statement of this program's own. `row` is called for each row; what the row
    // holds is read by its column's place.
    using Row = std::function<void(const QSqlQuery&)>;
    Result<void> run(const QString& statement, const QVariantList& values = {},
                     const Row& row = {});

    // Everything `work` does becomes true together, or nothing of it where it refuses. Inside
    // another one it simply takes part.
    Result<void> together(const std::function<Result<void>()>& work);

    [[nodiscard]] bool isServer() const { return m_place.server.has_value(); }
    [[nodiscard]] const LedgerPlace& place() const { return m_place; }
    // The last failure was of a file that is damaged, or no database at all.
    [[nodiscard]] bool foundDamage() const { return m_damaged; }

private:
    explicit LedgerConnection(LedgerPlace place);
    Result<void> start();
    Result<void> startWriting();
    Result<void> take(QSqlQuery& query, const Row& row);
    Result<void> forget(const QString& statement); // a prepared one that failed
    tl::unexpected<Error> failed(const QSqlError& error);

    LedgerPlace m_place;
    QString m_name; // of the connection, in this process
    std::unique_ptr<QSqlDatabase> m_database;
    std::map<QString, std::unique_ptr<QSqlQuery>> m_prepared;
    bool m_together = false;
    bool m_damaged = false;
};

} // namespace borewright
