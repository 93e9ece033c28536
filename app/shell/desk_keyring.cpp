// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/desk_keyring.h"

#include <qt6keychain/keychain.h>

#include <QCoreApplication>

namespace borewright {
namespace {

const QString service = QStringLiteral("borewright");

std::string wordsOf(const QKeychain::Job& job) {
    switch (job.error()) {
    case QKeychain::NoError:
        return {};
    case QKeychain::EntryNotFound:
        // One that stays locked answers the same.
        return "the keyring has no password for it, or stays locked";
    case QKeychain::AccessDeniedByUser:
    case QKeychain::AccessDenied:
        return "the keyring stays locked";
    case QKeychain::NoBackendAvailable:
    case QKeychain::NotImplemented:
        return "no keyring runs on this desk";
    default:
        // Without a desk it says no more than "unknown error".
        if (qEnvironmentVariableIsEmpty("DBUS_SESSION_BUS_ADDRESS"))
            return "no keyring runs on this desk";
        return "the keyring does not do as asked (" + job.errorString().toStdString() + ")";
    }
}

// Starts what gives nothing back.
void finish(QKeychain::Job* job, const Keyring::Done& then) {
    QObject::connect(job, &QKeychain::Job::finished, job, [job, then] {
        const bool nothing = job->error() == QKeychain::EntryNotFound; // was there to be forgotten
        const std::string problem = nothing ? std::string() : wordsOf(*job);
        then(problem.empty() ? Result<void>() : Result<void>(refuse(problem)));
    });
    job->start();
}

} // namespace

void DeskKeyring::read(const QString& name, const Found& then) {
    auto* job = new QKeychain::ReadPasswordJob(service, QCoreApplication::instance());
    job->setKey(name);
    QObject::connect(job, &QKeychain::Job::finished, job, [job, then] {
        if (const std::string problem = wordsOf(*job); !problem.empty())
            then(refuse(problem));
        else
            then(job->textData().toStdString());
    });
    job->start();
}

void DeskKeyring::write(const QString& name, const std::string& secret, const Done& then) {
    auto* job = new QKeychain::WritePasswordJob(service, QCoreApplication::instance());
    job->setKey(name);
    job->setTextData(QString::fromStdString(secret));
    finish(job, then);
}

void DeskKeyring::forget(const QString& name, const Done& then) {
    auto* job = new QKeychain::DeletePasswordJob(service, QCoreApplication::instance());
    job->setKey(name);
    finish(job, then);
}

} // namespace borewright
