// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/ledger/ledger_store.h"

#include "app/ledger/ledger_aside.h"
#include "app/ledger/ledger_connection.h"
#include "app/ledger/ledger_fold.h"
#include "app/ledger/ledger_order.h"
#include "app/ledger/ledger_rows.h"
#include "app/ledger/ledger_schema.h"

#include <QDir>
#include <QFileInfo>
#include <QSqlQuery>

namespace borewright {
namespace {

// A damaged or newer file, as words for the notice; nothing where the file can be used.
struct Looked {
    LedgerState state = LedgerState::ready;
    std::string why; // to put it aside
};

Result<Looked> lookAt(LedgerConnection& connection, LedgerStore::Check check) {
    const Looked damaged{LedgerState::empty, "was damaged"};
    const auto state = ledgerState(connection);
    if (!state && connection.foundDamage()) return damaged;
    if (!state) return tl::unexpected(state.error());
    if (*state == LedgerState::foreign)
        return refuse(inWords(connection.place()), "it holds something else, not jobs");
    if (*state == LedgerState::newer && connection.isServer())
        return refuse(inWords(connection.place()),
                      "it was made by a newer Borewright; bring this one up to date");
    if (*state == LedgerState::newer) return Looked{*state, "was made by a newer Borewright"};
    if (check == LedgerStore::Check::whole && !connection.isServer()) {
        QString found;
        const auto checked =
            connection.run(QStringLiteral("PRAGMA quick_check(1)"), {},
                           [&](const QSqlQuery& row) { found = row.value(0).toString(); });
        if (!checked && !connection.foundDamage()) return tl::unexpected(checked.error());
        if (!checked || found != QLatin1String("ok")) return damaged;
    }
    return Looked{*state, {}};
}

// What it was made from, as far as that can still be read.
std::vector<std::string> foldersOf(LedgerConnection& connection) {
    std::vector<std::string> paths;
    (void)connection.run(QStringLiteral("SELECT path FROM folder ORDER BY path"), {},
                         [&](const QSqlQuery& query) { paths.push_back(textOf(query.value(0))); });
    return paths;
}

Result<void> putFolders(LedgerConnection& connection, const std::vector<std::string>& paths) {
    if (const auto done = connection.run(QStringLiteral("DELETE FROM folder")); !done) return done;
    for (const std::string& path : paths)
        if (const auto done =
                connection.run(QStringLiteral("INSERT INTO folder VALUES (?) ON CONFLICT DO "
                                              "NOTHING"),
                               {sqlText(path)});
            !done)
            return done;
    return {};
}

Result<void> makeRoom(const LedgerPlace& place) {
    if (place.server) return {};
    const QString folder = QFileInfo(QString::fromStdString(place.file)).absolutePath();
    if (!QDir().mkpath(folder)) return refuse(inWords(place), "its folder cannot be made");
    return {};
}

} // namespace

LedgerStore::LedgerStore(std::unique_ptr<LedgerConnection> connection)
    : m_connection(std::move(connection)) {}

LedgerStore::~LedgerStore() = default;

Result<std::unique_ptr<LedgerStore>> LedgerStore::open(const LedgerPlace& place, Check check,
                                                       const std::string& password) {
    if (const auto room = makeRoom(place); !room) return tl::unexpected(room.error());
    auto connection = LedgerConnection::open(place, password);
    if (!connection) return tl::unexpected(connection.error());
    auto looked = lookAt(**connection, check);
    if (!looked) return tl::unexpected(looked.error());
    std::string notice;
    std::vector<std::string> madeFrom;
    if (!looked->why.empty()) {
        if (!looksLikeLedger(place.file)) return refuse(place.file, "it is no ledger of jobs");
        madeFrom = foldersOf(**connection);
        connection->reset();
        const auto aside = setAside(place.file);
        if (!aside) return tl::unexpected(aside.error());
        notice = "The ledger " + place.file + " " + looked->why + "; it stands aside as " + *aside +
                 ", and a new one is made from the workbooks.";
        connection = LedgerConnection::open(place);
        if (!connection) return tl::unexpected(connection.error());
    }
    std::unique_ptr<LedgerStore> store(new LedgerStore(std::move(*connection)));
    store->m_notice = std::move(notice);
    store->m_made = looked->state != LedgerState::ready;
    if (!store->m_made) {
        const auto filled = isFilled(*store->m_connection);
        if (!filled) return tl::unexpected(filled.error());
        store->m_new = !*filled;
    }
    if (looked->state == LedgerState::older) {
        madeFrom = foldersOf(*store->m_connection);
        store->m_notice = "The ledger was made by an older Borewright and is made anew from the "
                          "workbooks.";
    }
    if (store->m_made) {
        store->m_new = true;
        const auto done = store->m_connection->together([&]() -> Result<void> {
            if (looked->state == LedgerState::older)
                if (auto gone = dropLedger(*store->m_connection); !gone) return gone;
            if (auto tables = makeLedger(*store->m_connection); !tables) return tables;
            return putFolders(*store->m_connection, madeFrom);
        });
        if (!done) return tl::unexpected(done.error());
    }
    return store;
}

Result<std::vector<LedgerRow>> LedgerStore::find(const LedgerQuestion& question) {
    const QStringList words = searchWords(QString::fromStdString(question.text));
    QVariantList values = held(words);
    QString chosen = QStringLiteral("SELECT f.id AS found FROM job f WHERE TRUE") +
                     holdsEach(QStringLiteral("f.search"), words.size());
    if (question.most >= 0) {
        chosen += orderOf(QStringLiteral("f"), question, m_connection->isServer()) +
                  QStringLiteral(" LIMIT ? OFFSET ?");
        values << static_cast<qlonglong>(question.most) << static_cast<qlonglong>(question.skip);
    }
    std::vector<LedgerRow> rows;
    const auto done = m_connection->run(
        QStringLiteral("SELECT %1 FROM (%2) AS chosen JOIN job ON job.id = chosen.found%3")
            .arg(rowColumns(), chosen,
                 orderOf(QStringLiteral("job"), question, m_connection->isServer())),
        values, [&](const QSqlQuery& query) { rows.push_back(rowOf(query)); });
    if (!done) return tl::unexpected(done.error());
    return rows;
}

Result<std::int64_t> LedgerStore::count(const std::string& text) {
    const QStringList words = searchWords(QString::fromStdString(text));
    std::int64_t found = 0;
    const auto done = m_connection->run(
        QStringLiteral("SELECT COUNT(*) FROM job WHERE TRUE") +
            holdsEach(QStringLiteral("search"), words.size()),
        held(words), [&](const QSqlQuery& query) { found = query.value(0).toLongLong(); });
    if (!done) return tl::unexpected(done.error());
    return found;
}

Result<void> LedgerStore::settle() {
    return m_connection->run(m_connection->isServer() ? QStringLiteral("ANALYZE job")
                                                      : QStringLiteral("PRAGMA optimize"));
}

Result<void> LedgerStore::forget(const std::string& file) {
    return m_connection->run(QStringLiteral("DELETE FROM job WHERE file = ?"), {sqlText(file)});
}

Result<std::vector<std::string>> LedgerStore::folders() {
    std::vector<std::string> paths;
    const auto done =
        m_connection->run(QStringLiteral("SELECT path FROM folder ORDER BY path"), {},
                          [&](const QSqlQuery& query) { paths.push_back(textOf(query.value(0))); });
    if (!done) return tl::unexpected(done.error());
    return paths;
}

Result<void> LedgerStore::setFolders(const std::vector<std::string>& paths) {
    return m_connection->together([&]() -> Result<void> {
        if (const auto done = putFolders(*m_connection, paths); !done) return done;
        return markFilled(*m_connection);
    });
}

} // namespace borewright
