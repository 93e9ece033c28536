// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/jobs/ledger_trial_words.h"

#include <QCoreApplication>

namespace borewright {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("LedgerTrial", text);
}

} // namespace

QString inWords(const LedgerTrial& trial, const LedgerAccess& access) {
    QString text =
        access.place.server
            ? tr("Reached: %1, %2.")
                  .arg(QString::fromStdString(trial.server),
                       trial.encrypted ? tr("encrypted") : tr("not encrypted, on this machine"))
            : tr("The file can be used: %1.").arg(QString::fromStdString(access.place.file));
    text += u' ' + (trial.made ? tr("Its tables were made.") : tr("Its tables are there."));
    if (trial.jobs == 0) return text + u' ' + tr("It holds no job yet.");
    return text + u' ' +
           (trial.jobs == 1 ? tr("It holds 1 job.") : tr("It holds %L1 jobs.").arg(trial.jobs));
}

QString refusalOf(const Error& error) {
    return tr("Not reached: %1.").arg(QString::fromStdString(error.message()));
}

} // namespace borewright
