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
        return "the keyring has no password for it";
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
    QObject::connect(job, &QKeychain::Job::finished, job, [job, then] {
        if (const std::string problem = wordsOf(*job); !problem.empty())
            then(refuse(problem));
        else
            then({});
    });
    job->start();
}

} // namespace borewright
