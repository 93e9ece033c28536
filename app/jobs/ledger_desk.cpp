// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/jobs/ledger_desk.h"

#include "app/ledger/ledger_keeper.h"

#include <QPointer>

namespace borewright {
namespace {

constexpr std::chrono::seconds usualDelay(5);
constexpr std::chrono::seconds closingPatience(1);
constexpr std::chrono::seconds keeperPatience(2);

} // namespace

LedgerDesk::LedgerDesk(LedgerSettingsStore& settings, FileSystem& files, Keyring* keyring,
                       QString file, QObject* parent)
    : QObject(parent)
    , m_settings(settings)
    , m_files(files)
    , m_keyring(keyring)
    , m_file(std::move(file)) {
    m_timer.setSingleShot(true);
    setDelay(usualDelay);
    connect(&m_timer, &QTimer::timeout, this, &LedgerDesk::enterWaiting);
    connect(&settings, &LedgerSettingsStore::changed, this, &LedgerDesk::follow);
    m_waiting = settings.value().waiting;
    if (!m_waiting.isEmpty()) m_timer.start();
    follow();
}

LedgerDesk::~LedgerDesk() {
    disconnect(&m_settings, nullptr, this, nullptr);
    m_opened.clear(); // the next opening looks again
    enterWaiting();
    QStringList left = m_waiting;
    if (m_keeper) {
        (void)m_keeper->settle(closingPatience);
        for (const std::string& file : m_keeper->state().waiting)
            left += QString::fromStdString(file);
    }
    if (m_file.isEmpty()) return;
    LedgerSettings settings = m_settings.value();
    settings.waiting = left;
    m_settings.set(settings);
}

QString LedgerDesk::secretName(const LedgerServer& server) {
    return QStringLiteral("ledger %1@%2:%3/%4")
        .arg(QString::fromStdString(server.user), QString::fromStdString(server.host))
        .arg(server.port)
        .arg(QString::fromStdString(server.database));
}

// The settings changed; only what tells where the ledger lies makes a difference.
void LedgerDesk::follow() {
    LedgerSettings now = m_settings.value();
    now.waiting.clear();
    now.units = {};
    if (m_followed == now) return;
    m_followed = now;
    if (m_file.isEmpty() || !now.kept) return take({}, {}, false);
    const LedgerPlace place = placeOf(now, m_file.toStdString());
    using Password = LedgerSettings::Password;
    if (!place.server || now.password == Password::passwordFile)
        return take(LedgerAccess{place, {}}, {}, false);
    if (now.password == Password::asked || m_keyring == nullptr)
        return take({}, tr("The ledger's password is asked for at each start."), true);
    take({}, tr("The desk's keyring is asked for the ledger's password."), false);
    const QPointer<LedgerDesk> still(this);
    m_keyring->read(secretName(*place.server),
                    [still, now, place](const Result<std::string>& found) {
                        if (!still || still->m_followed != now || still->m_access) return;
                        if (found) return still->take(LedgerAccess{place, *found}, {}, false);
                        still->take({},
                                    tr("The ledger's password is not at hand: %1.")
                                        .arg(QString::fromStdString(found.error().message())),
                                    true);
                    });
}

void LedgerDesk::givePassword(const QString& password) {
    if (!m_followed) return;
    take(LedgerAccess{placeOf(*m_followed, m_file.toStdString()), password.toStdString()}, {},
         false);
}

void LedgerDesk::take(const std::optional<LedgerAccess>& access, const QString& whyNot,
                      bool wants) {
    m_whyNot = whyNot;
    m_wantsPassword = wants;
    if (m_access != access) {
        retireKeeper();
        m_access = access;
        if (!m_waiting.isEmpty() || !m_opened.isEmpty()) m_timer.start();
    }
    emit accessChanged();
    keeperTold();
}

// It may be waiting for a server: it ends by itself, and what it had not entered goes on.
void LedgerDesk::retireKeeper() {
    if (!m_keeper) return;
    for (const std::string& file : m_keeper->state().waiting)
        m_waiting += QString::fromStdString(file);
    m_waiting.removeDuplicates();
    m_retired.emplace_back([ending = std::move(m_keeper)]() mutable { ending.reset(); });
    m_entered = 0;
}

// From the first save of a burst, so that a fast typist does not put it off.
void LedgerDesk::saved(const QString& path) {
    if (m_file.isEmpty() || !m_settings.value().kept) return;
    if (!m_waiting.contains(path)) m_waiting += path;
    if (!m_timer.isActive()) m_timer.start();
}

void LedgerDesk::opened(const QString& path) {
    if (m_file.isEmpty() || !m_settings.value().kept) return;
    if (!m_opened.contains(path)) m_opened += path;
    if (!m_timer.isActive()) m_timer.start();
}

void LedgerDesk::enterWaiting() {
    if ((m_waiting.isEmpty() && m_opened.isEmpty()) || !m_access) return;
    if (!m_keeper)
        m_keeper = std::make_unique<LedgerKeeper>(*m_access, m_files, keeperPatience, [this] {
            QMetaObject::invokeMethod(this, &LedgerDesk::keeperTold, Qt::QueuedConnection);
        });
    for (const QString& path : std::exchange(m_waiting, {}))
        m_keeper->saved(path.toStdString());
    for (const QString& path : std::exchange(m_opened, {}))
        m_keeper->opened(path.toStdString());
}

void LedgerDesk::keeperTold() {
    const std::size_t now = m_keeper ? m_keeper->state().entered : 0;
    if (now > std::exchange(m_entered, now)) emit entered();
    if (const QString said = word(); std::exchange(m_said, said) != said) emit wordChanged();
}

QString LedgerDesk::word() const {
    if (m_wantsPassword) return tr("Ledger: password wanted");
    if (!m_keeper) return {};
    const LedgerKeeper::State state = m_keeper->state();
    if (state.problem.empty() || state.waiting.empty()) return {};
    return tr("Ledger: %1 to enter").arg(state.waiting.size());
}

QString LedgerDesk::whyWaiting() const {
    if (m_wantsPassword) return m_whyNot;
    const QString problem =
        m_keeper ? QString::fromStdString(m_keeper->state().problem) : QString();
    if (problem.isEmpty()) return {};
    return tr("The workbooks are saved; the ledger has not got them yet: %1. It tries again.")
        .arg(problem);
}

} // namespace borewright
