// SPDX-License-Identifier: GPL-3.0-or-later
// Where the ledger lies: in a file here, or on a server that several benches share; with a trial of
// the way there. A password goes to the desk's keyring, or is held until the program ends.
#pragma once

#include "app/jobs/ledger_desk.h"

#include <QDialog>

class QCheckBox;
class QComboBox;
class QFormLayout;
class QLabel;
class QLineEdit;
class QPushButton;
class QRadioButton;
class QSpinBox;

namespace borewright {

class PlaceDialog : public QDialog {
    Q_OBJECT
public:
    PlaceDialog(LedgerDesk& desk, LedgerSettingsStore& settings, QWidget* parent = nullptr);

    // What the last trial, or the keeping, came to; empty while one is under way.
    [[nodiscard]] QString told() const;

private:
    void build();
    QWidget* makeServer();
    void fill();
    void follow();
    [[nodiscard]] LedgerSettings typed() const;
    [[nodiscard]] QString lacking() const;
    [[nodiscard]] LedgerAccess typedAccess() const;
    void tryIt();
    void tell(const QString& sentence, bool good);
    void keep();
    void kept();
    void forgetSecretOf(const LedgerSettings& before);

    LedgerDesk& m_desk;
    LedgerSettingsStore& m_settings;
    QCheckBox* m_enters;
    QRadioButton* m_here;
    QRadioButton* m_there;
    QWidget* m_server;
    QLineEdit* m_host;
    QSpinBox* m_port;
    QLineEdit* m_database;
    QLineEdit* m_user;
    QLabel* m_transport;
    QComboBox* m_from; // where the password comes from
    QLabel* m_fromWords;
    QLineEdit* m_password;
    QLabel* m_good;
    QLabel* m_bad;
    QPushButton* m_try;
    QPushButton* m_keep;
    int m_trial = 0; // counts trials: the answer to an earlier one is stale
};

} // namespace borewright
