// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/ledger/ledger_trial.h"

#include "app/ledger/ledger_connection.h"
#include "app/ledger/ledger_rows.h"

#include <QSqlQuery>

namespace borewright {

Result<LedgerTrial> tryLedger(const LedgerAccess& access) {
    const auto store =
        LedgerStore::open(access.place, LedgerStore::Check::beginning, access.password);
    if (!store) return tl::unexpected(store.error());
    LedgerTrial trial;
    trial.made = (*store)->wasMade();
    const auto jobs = (*store)->count();
    if (!jobs) return tl::unexpected(jobs.error());
    trial.jobs = *jobs;
    if (!access.place.server) return trial;
    const auto told = (*store)->connection().run(
        QStringLiteral("SELECT current_setting('server_version'), "
                       "(SELECT ssl FROM pg_stat_ssl WHERE pid = pg_backend_pid())"),
        {}, [&](const QSqlQuery& row) {
            // "15.18 (Debian 15.18-0+deb12u1)"
            trial.server = "PostgreSQL " + textOf(row.value(0).toString().section(u' ', 0, 0));
            trial.encrypted = row.value(1).toBool();
        });
    if (!told) return tl::unexpected(told.error());
    return trial;
}

} // namespace borewright
