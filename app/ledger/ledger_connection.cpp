// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/ledger/ledger_connection.h"

#include <QSqlDatabase>
#include <QSqlError>
#include <QSqlQuery>

#include <atomic>

namespace borewright {
namespace {

// SQLite's own numbers (sqlite.org/rescode.html): busy, locked, full disk, damaged file, no
// database.
constexpr int sqliteBusy = 5;
constexpr int sqliteLocked = 6;
constexpr int sqliteReadOnly = 8;
constexpr int sqliteCorrupt = 11;
constexpr int sqliteFull = 13;
constexpr int sqliteNoDatabase = 26;

QString freshName() {
    static std::atomic<int> last{0};
    return QStringLiteral("ledger-%1").arg(++last);
}

std::string firstLine(const QString& text) {
    return text.trimmed().section(u'\n', 0, 0).toStdString();
}

std::string sqliteWords(int code, const QSqlError& error) {
    switch (code & 0xFF) { // the lower byte tells the kind
    case sqliteBusy:
    case sqliteLocked:
        return "another program is at work in it; try again";
    case sqliteReadOnly:
        return "it may only be read, not written";
    case sqliteFull:
        return "the disk is full";
    case sqliteCorrupt:
    case sqliteNoDatabase:
        return "it is damaged, the workbooks are not; 'borewright ledger rebuild' makes it anew";
    default:
        return "it cannot be used (" + firstLine(error.databaseText()) + ")";
    }
}

// What the server's library says, in words for the bench; its own stand behind. The pieces are
// those of libpq 15 and of PostgreSQL's messages in English.
std::string serverWords(const std::string& told) {
    static constexpr std::pair<const char*, const char*> known[]{
        {"password authentication failed", "the server refuses this user or this password"},
        {"no password supplied", "the server asks for a password, and none was given"},
        {"does not support SSL",
         "the server has no TLS, and nothing goes to another machine in clear"},
        {"no pg_hba.conf entry", "the server lets nobody in from here"},
        {"Connection refused", "nothing answers there"},
        {"could not translate host name", "no machine of that name is known"},
        {"timeout expired", "the server does not answer"},
        {"No such file or directory", "nothing answers there"},
        {"statement timeout", "the server took too long"},
    };
    for (const auto& [piece, words] : known)
        if (told.find(piece) != std::string::npos) return words;
    if (told.find("database \"") != std::string::npos &&
        told.find("does not exist") != std::string::npos)
        return "the server has no database of that name";
    return "the server does not do as asked";
}

} // namespace

LedgerConnection::LedgerConnection(LedgerPlace place)
    : m_place(std::move(place))
    , m_name(freshName()) {}

LedgerConnection::~LedgerConnection() {
    m_prepared.clear();
    if (m_database) m_database->close();
    m_database.reset();
    QSqlDatabase::removeDatabase(m_name);
}

tl::unexpected<Error> LedgerConnection::failed(const QSqlError& error) {
    if (isServer()) {
        const std::string told =
            firstLine(error.databaseText().isEmpty() ? error.driverText() : error.databaseText());
        return refuse(inWords(m_place), serverWords(told) + " (" + told + ")");
    }
    const int code = error.nativeErrorCode().toInt();
    m_damaged = (code & 0xFF) == sqliteCorrupt || (code & 0xFF) == sqliteNoDatabase;
    return refuse(inWords(m_place), sqliteWords(code, error));
}

Result<std::unique_ptr<LedgerConnection>> LedgerConnection::open(const LedgerPlace& place,
                                                                 const std::string& password) {
    const QString driver = place.server ? QStringLiteral("QPSQL") : QStringLiteral("QSQLITE");
    if (!QSqlDatabase::isDriverAvailable(driver))
        return refuse(inWords(place),
                      std::string("the part of Qt that reaches it is not installed (package ") +
                          (place.server ? "libqt6sql6-psql)" : "libqt6sql6-sqlite)"));
    std::unique_ptr<LedgerConnection> connection(new LedgerConnection(place));
    connection->m_database =
        std::make_unique<QSqlDatabase>(QSqlDatabase::addDatabase(driver, connection->m_name));
    QSqlDatabase& database = *connection->m_database;
    bool opened = false;
    if (const auto& server = place.server) {
        database.setHostName(QString::fromStdString(server->host));
        database.setPort(server->port);
        database.setDatabaseName(QString::fromStdString(server->database));
        database.setConnectOptions(QString::fromStdString(connectOptions(*server)));
        opened =
            database.open(QString::fromStdString(server->user), QString::fromStdString(password));
    } else {
        database.setDatabaseName(QString::fromStdString(place.file));
        database.setConnectOptions(QStringLiteral("QSQLITE_BUSY_TIMEOUT=10000"));
        opened = database.open();
    }
    if (!opened) return connection->failed(database.lastError());
    if (const auto started = connection->start(); !started) {
        if (connection->m_damaged) return connection; // whoever asked decides what becomes of it
        return tl::unexpected(started.error());
    }
    return connection;
}

// SQLite: what reads need not wait for what is being written, and the whole ledger of a large shop
// stays in memory. A crash may lose the last entry, never the file; the workbooks have it.
Result<void> LedgerConnection::start() {
    if (isServer()) return {};
    for (const char* setting :
         {"PRAGMA journal_mode=WAL", "PRAGMA synchronous=NORMAL", "PRAGMA foreign_keys=ON",
          "PRAGMA cache_size=-131072", "PRAGMA case_sensitive_like=ON"})
        if (const auto done = run(QString::fromLatin1(setting)); !done) return done;
    return {};
}

Result<void> LedgerConnection::run(const QString& statement, const QVariantList& values,
                                   const Row& row) {
    if (values.isEmpty()) { // a server prepares none that begins, ends or makes something
        QSqlQuery query(*m_database);
        query.setForwardOnly(true);
        if (!query.exec(statement)) return failed(query.lastError());
        return take(query, row);
    }
    auto& query = m_prepared[statement];
    if (!query) {
        query = std::make_unique<QSqlQuery>(*m_database);
        query->setForwardOnly(true);
        if (!query->prepare(statement)) return forget(statement);
    }
    for (qsizetype i = 0; i < values.size(); ++i)
        query->bindValue(static_cast<int>(i), values[i]);
    if (!query->exec()) return forget(statement);
    return take(*query, row);
}

Result<void> LedgerConnection::take(QSqlQuery& query, const Row& row) {
    while (query.isSelect() && query.next())
        if (row) row(query);
    const QSqlError error = query.lastError(); // damage may show on a later row
    query.finish();
    if (error.isValid()) return failed(error);
    return {};
}

Result<void> LedgerConnection::forget(const QString& statement) {
    const QSqlError error = m_prepared[statement]->lastError();
    m_prepared.erase(statement);
    return failed(error);
}

// A server thinks about each search anew (connectOptions()), but what is entered goes the same way
// every time: thinking about that as well costs it more than the entering.
Result<void> LedgerConnection::startWriting() {
    if (!isServer()) return {};
    return run(QStringLiteral("SET LOCAL plan_cache_mode = auto"));
}

Result<void> LedgerConnection::together(const std::function<Result<void>()>& work) {
    if (m_together) return work();
    // SQLite: taking the right to write at once cannot fail half way for want of it.
    const QString begin = isServer() ? QStringLiteral("BEGIN") : QStringLiteral("BEGIN IMMEDIATE");
    if (const auto begun = run(begin); !begun) return begun;
    m_together = true;
    auto done = startWriting();
    if (done) done = work();
    m_together = false;
    if (done) done = run(QStringLiteral("COMMIT"));
    if (!done) (void)run(QStringLiteral("ROLLBACK"));
    return done;
}

} // namespace borewright
