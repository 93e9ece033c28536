// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/ledger/ledger_place.h"

#include <QRegularExpression>
#include <QStandardPaths>
#include <QUrl>

namespace borewright {

LedgerPlace usualLedger() {
    const QString folder = QStandardPaths::writableLocation(QStandardPaths::GenericDataLocation);
    return {(folder + QStringLiteral("/borewright/ledger.sqlite")).toStdString(), {}};
}

Result<LedgerPlace> ledgerPlaceFrom(const std::string& text) {
    if (text.empty()) return refuse("ledger", "no file is named");
    if (!text.starts_with("postgresql://")) return LedgerPlace{text, {}};
    const QUrl url(QString::fromStdString(text), QUrl::StrictMode);
    if (!url.isValid())
        return refuse("ledger", "'" + text +
                                    "' is no address; write "
                                    "postgresql://USER@HOST:PORT/DATABASE");
    if (!url.password().isEmpty())
        return refuse("ledger", "a password has no place in the address; the server's password "
                                "file ~/.pgpass is for it");
    LedgerServer server;
    server.host = url.host().toStdString();
    server.port = url.port(server.port);
    server.database = url.path().mid(1).toStdString();
    server.user = url.userName().toStdString();
    if (server.host.empty() || server.database.empty() || server.user.empty())
        return refuse("ledger", "the address lacks its user, host or database; write "
                                "postgresql://USER@HOST:PORT/DATABASE");
    return LedgerPlace{{}, server};
}

bool isThisMachine(const LedgerServer& server) {
    const std::string& host = server.host;
    if (host.empty() || host.front() == '/' || host == "localhost") return true;
    // A name that merely begins so ("127.example") is another machine.
    static const QRegularExpression loopback(
        QStringLiteral(R"(\A(::1|127\.\d{1,3}\.\d{1,3}\.\d{1,3})\z)"));
    return loopback.match(QString::fromStdString(host)).hasMatch();
}

std::string connectOptions(const LedgerServer& server) {
    const std::string transport = isThisMachine(server) ? "sslmode=prefer" : "sslmode=require";
    // A search takes one core of the server: it is over before a second one would have begun. How
    // it is done is chosen by the words that are searched for, each time.
    return transport + ";connect_timeout=5;tcp_user_timeout=10000;application_name=borewright;"
                       "options='-c statement_timeout=30000 -c max_parallel_workers_per_gather=0 "
                       "-c plan_cache_mode=force_custom_plan'";
}

std::string inWords(const LedgerPlace& place) {
    if (!place.server) return "the ledger " + place.file;
    const std::string& host = place.server->host;
    return "the ledger '" + place.server->database + "' on " +
           (isThisMachine(*place.server) ? "this machine" : host);
}

} // namespace borewright
