// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/jobs/place_dialog.h"

#include "app/fields/refusal_label.h"
#include "app/jobs/ledger_trial_words.h"

#include <QCheckBox>
#include <QComboBox>
#include <QCoreApplication>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPointer>
#include <QPushButton>
#include <QRadioButton>
#include <QSpinBox>
#include <QThreadPool>
#include <QVBoxLayout>

namespace borewright {

using Password = LedgerSettings::Password;

PlaceDialog::PlaceDialog(LedgerDesk& desk, LedgerSettingsStore& settings, QWidget* parent)
    : QDialog(parent)
    , m_desk(desk)
    , m_settings(settings)
    , m_enters(new QCheckBox(tr("&Jobs enter the ledger as they are saved"), this))
    , m_here(new QRadioButton(tr("In a &file of your own, on this machine"), this))
    , m_there(new QRadioButton(tr("On a &server that several benches share (PostgreSQL)"), this))
    , m_server(new QWidget(this))
    , m_host(new QLineEdit(m_server))
    , m_port(new QSpinBox(m_server))
    , m_database(new QLineEdit(m_server))
    , m_user(new QLineEdit(m_server))
    , m_transport(new QLabel(m_server))
    , m_from(new QComboBox(m_server))
    , m_fromWords(new QLabel(m_server))
    , m_password(new QLineEdit(m_server))
    , m_good(new QLabel(this))
    , m_bad(makeRefusalLabel(this))
    , m_try(new QPushButton(tr("&Try it"), this))
    , m_keep(new QPushButton(tr("&Keep it there"), this)) {
    setAttribute(Qt::WA_DeleteOnClose);
    setWindowTitle(tr("Where the ledger lies"));
    build();
    fill();
    follow();
    resize(620, sizeHint().height());
}

void PlaceDialog::build() {
    m_good->setWordWrap(true);
    m_good->setTextFormat(Qt::PlainText);
    m_good->setAccessibleName(tr("Answer"));
    auto* close = new QPushButton(tr("Close"), this);
    connect(m_try, &QPushButton::clicked, this, &PlaceDialog::tryIt);
    connect(m_keep, &QPushButton::clicked, this, &PlaceDialog::keep);
    connect(close, &QPushButton::clicked, this, &QWidget::close);
    m_try->setDefault(true);
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(m_try);
    buttons->addStretch(1);
    buttons->addWidget(m_keep);
    buttons->addWidget(close);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(24, 20, 24, 18);
    column->setSpacing(10);
    column->addWidget(m_enters);
    column->addWidget(m_here);
    column->addWidget(m_there);
    column->addWidget(makeServer());
    column->addWidget(m_good);
    column->addWidget(m_bad);
    column->addStretch(1);
    column->addLayout(buttons);
    for (const QLineEdit* edit : {m_host, m_database, m_user, m_password})
        connect(edit, &QLineEdit::textChanged, this, &PlaceDialog::follow);
    connect(m_port, &QSpinBox::valueChanged, this, &PlaceDialog::follow);
    connect(m_enters, &QCheckBox::toggled, this, &PlaceDialog::follow);
    connect(m_there, &QRadioButton::toggled, this, &PlaceDialog::follow);
    connect(m_from, &QComboBox::currentIndexChanged, this, &PlaceDialog::follow);
}

QWidget* PlaceDialog::makeServer() {
    constexpr int highestPort = 65535;
    m_port->setRange(1, highestPort);
    m_from->addItems({tr("from the server's password file"), tr("from the desk's keyring"),
                      tr("typed in at each start")});
    m_password->setEchoMode(QLineEdit::Password);
    for (QLabel* words : {m_transport, m_fromWords}) {
        words->setWordWrap(true);
        words->setForegroundRole(QPalette::PlaceholderText);
    }
    auto* form = new QFormLayout(m_server);
    form->setContentsMargins(24, 0, 0, 0);
    form->setVerticalSpacing(8);
    const auto add = [&](const QString& label, QWidget* control) {
        control->setAccessibleName(QString(label).remove(u'&'));
        form->addRow(label, control);
    };
    add(tr("&Machine"), m_host);
    form->addRow(QString(), m_transport);
    add(tr("P&ort"), m_port);
    add(tr("&Database"), m_database);
    add(tr("&User"), m_user);
    add(tr("Password &comes"), m_from);
    form->addRow(QString(), m_fromWords);
    add(tr("&Password"), m_password);
    m_host->setPlaceholderText(tr("its name or address in the shop's network"));
    return m_server;
}

void PlaceDialog::fill() {
    const LedgerSettings& ledger = m_settings.value();
    m_enters->setChecked(ledger.kept);
    (ledger.onServer ? m_there : m_here)->setChecked(true);
    m_host->setText(ledger.host);
    m_port->setValue(ledger.port);
    m_database->setText(ledger.database);
    m_user->setText(ledger.user);
    m_from->setCurrentIndex(static_cast<int>(ledger.password));
}

LedgerSettings PlaceDialog::typed() const {
    LedgerSettings ledger = m_settings.value();
    ledger.kept = m_enters->isChecked();
    ledger.onServer = m_there->isChecked();
    ledger.host = m_host->text().trimmed();
    ledger.port = m_port->value();
    ledger.database = m_database->text().trimmed();
    ledger.user = m_user->text().trimmed();
    ledger.password = static_cast<Password>(m_from->currentIndex());
    return ledger;
}

QString PlaceDialog::lacking() const {
    const LedgerSettings ledger = typed();
    if (!ledger.onServer) return {};
    if (ledger.host.isEmpty()) return tr("Say which machine the server runs on.");
    if (ledger.database.isEmpty()) return tr("Say which database of the server it is.");
    if (ledger.user.isEmpty()) return tr("Say as which user of the server.");
    return {};
}

// What was told is about something else as soon as anything is changed.
void PlaceDialog::follow() {
    ++m_trial;
    m_try->setEnabled(true);
    tell({}, true);
    m_server->setEnabled(m_there->isChecked());
    const LedgerSettings ledger = typed();
    const bool here = isThisMachine({ledger.host.toStdString(), ledger.port, {}, {}});
    m_transport->setText(ledger.host.isEmpty()
                             ? tr("Another machine is reached encrypted (TLS) only.")
                         : here ? tr("This machine: nothing leaves it.")
                                : tr("Another machine: encrypted (TLS), always."));
    switch (ledger.password) {
    case Password::passwordFile:
        m_fromWords->setText(tr("The server's own library reads it from .pgpass in your home "
                                "folder, a line host:port:database:user:password that only you "
                                "may read. Borewright never sees it."));
        break;
    case Password::keyring:
        m_fromWords->setText(tr("Kept in the desk's keyring, in no file of Borewright's."));
        break;
    case Password::asked:
        m_fromWords->setText(tr("Kept nowhere. The ledger waits at each start until it is typed "
                                "in; the bench does not."));
        break;
    }
    m_password->setEnabled(ledger.password != Password::passwordFile);
}

LedgerAccess PlaceDialog::typedAccess() const {
    const LedgerSettings ledger = typed();
    LedgerAccess access{placeOf(ledger, m_desk.file()), {}};
    if (!ledger.onServer || ledger.password == Password::passwordFile) return access;
    access.password = m_password->text().toStdString();
    // Nothing typed: the one that is in use for the same place.
    const auto& now = m_desk.access();
    if (access.password.empty() && now && now->place == access.place)
        access.password = now->password;
    return access;
}

void PlaceDialog::tell(const QString& sentence, bool good) {
    m_good->setText(good ? sentence : QString());
    m_bad->setText(good ? QString() : sentence);
    m_bad->setHidden(good);
    m_good->setHidden(!good || sentence.isEmpty());
}

QString PlaceDialog::told() const {
    return m_good->text().isEmpty() ? m_bad->text() : m_good->text();
}

// On a thread of the pool: a server that does not answer takes seconds.
void PlaceDialog::tryIt() {
    if (const QString lack = lacking(); !lack.isEmpty()) return tell(lack, false);
    follow();
    m_try->setEnabled(false);
    m_good->show();
    m_good->setText({});
    const QPointer<PlaceDialog> still(this);
    QThreadPool::globalInstance()->start([still, access = typedAccess(), trial = m_trial] {
        auto answer = std::make_shared<Result<LedgerTrial>>(tryLedger(access));
        QMetaObject::invokeMethod(
            QCoreApplication::instance(),
            [still, answer, access, trial] {
                if (!still || still->m_trial != trial) return;
                still->m_try->setEnabled(true);
                still->tell(*answer ? inWords(**answer, access) : refusalOf(answer->error()),
                            answer->has_value());
            },
            Qt::QueuedConnection);
    });
}

void PlaceDialog::keep() {
    if (const QString lack = lacking(); !lack.isEmpty()) return tell(lack, false);
    const LedgerSettings ledger = typed();
    const LedgerAccess access = typedAccess();
    const bool toKeyring = ledger.onServer && ledger.password == Password::keyring;
    if (!toKeyring || m_password->text().isEmpty()) return kept();
    const QString choices = tr("Choose the server's password file, or type it in at each start.");
    Keyring* keyring = m_desk.keyring();
    if (keyring == nullptr)
        return tell(tr("No keyring runs on this desk.") + u' ' + choices, false);
    const QPointer<PlaceDialog> still(this);
    keyring->write(LedgerDesk::secretName(*access.place.server), access.password,
                   [still, choices, trial = m_trial](const Result<void>& done) {
                       if (!still || still->m_trial != trial) return;
                       if (done) return still->kept();
                       still->tell(tr("The password was not kept: %1. Nothing was changed.")
                                           .arg(QString::fromStdString(done.error().message())) +
                                       u' ' + choices,
                                   false);
                   });
}

void PlaceDialog::kept() {
    const LedgerAccess access = typedAccess();
    const LedgerSettings before = m_settings.value();
    m_settings.set(typed());
    if (!m_password->text().isEmpty()) m_desk.givePassword(m_password->text());
    m_password->clear();
    tell(m_settings.value().kept
             ? tr("Kept. It is %1 now.").arg(QString::fromStdString(inWords(access.place)))
             : tr("Kept. No job enters a ledger any more."),
         true);
    forgetSecretOf(before);
}

// A password that nobody asks for any more does not stay in the keyring.
void PlaceDialog::forgetSecretOf(const LedgerSettings& before) {
    const auto secretOf = [this](const LedgerSettings& ledger) {
        const LedgerPlace place = placeOf(ledger, m_desk.file());
        return place.server && ledger.password == Password::keyring
                   ? LedgerDesk::secretName(*place.server)
                   : QString();
    };
    const QString name = secretOf(before);
    if (name.isEmpty() || name == secretOf(m_settings.value()) || !m_desk.keyring()) return;
    const QPointer<PlaceDialog> still(this);
    m_desk.keyring()->forget(name, [still, trial = m_trial](const Result<void>& done) {
        if (done || !still || still->m_trial != trial) return;
        still->tell(still->told() + u' ' +
                        tr("The earlier password is still in the keyring: %1.")
                            .arg(QString::fromStdString(done.error().message())),
                    true);
    });
}

} // namespace borewright
