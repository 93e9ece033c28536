// SPDX-License-Identifier: GPL-3.0-or-later
// The program's own ledger: where it lies by the settings, what opens it, and that it keeps up
// with what is saved. The bench never waits for it.
#pragma once

#include "app/jobs/keyring.h"
#include "app/jobs/ledger_settings.h"
#include "app/ledger/ledger_place.h"
#include "core/storage/file_system.h"

#include <QObject>
#include <QTimer>

#include <chrono>
#include <functional>
#include <memory>
#include <optional>
#include <thread>
#include <vector>

class QWidget;

namespace borewright {

class LedgerKeeper;

// What reaches the ledger's part of the program from outside.
struct LedgerMeans {
    QString file;               // where the ledger lies while the settings name no server; empty =
                                // none is kept
    QString settingsPath;       // empty = in memory alone
    Keyring* keyring = nullptr; // null = there is none
    // Asks for a folder: before which window, under which title, beginning where; empty = none.
    std::function<QString(QWidget*, const QString&, const QString&)> chooseFolder;
};

class LedgerDesk : public QObject {
    Q_OBJECT
public:
    // `file` is where the ledger lies while the settings name no server; empty = this program
    // keeps none. `keyring` may be missing. All must outlive it.
    LedgerDesk(LedgerSettingsStore& settings, FileSystem& files, Keyring* keyring, QString file,
               QObject* parent = nullptr);
    // Enters what still waits if that takes no longer than a second; the rest is remembered in the
    // settings for the next start. Seconds more where a server has just stopped answering.
    ~LedgerDesk() override;

    // A workbook is on the disk at `path`: it is entered some seconds later, once.
    void saved(const QString& path);
    // A workbook was opened from `path`: where the ledger knows it with other content, it is
    // entered anew some seconds later, and nobody is told.
    void opened(const QString& path);
    void setDelay(std::chrono::milliseconds delay) { m_timer.setInterval(delay); }

    // What opens the ledger now; nothing where none is kept, or the password is not known yet.
    [[nodiscard]] const std::optional<LedgerAccess>& access() const { return m_access; }
    // Why there is no access, in a sentence; empty where there is, or none is kept.
    [[nodiscard]] QString whyNot() const { return m_whyNot; }
    // The password was not found and has to be given by hand.
    [[nodiscard]] bool wantsPassword() const { return m_wantsPassword; }
    void givePassword(const QString& password);
    // A few words for the status line; empty where all is well. The whole is whyWaiting().
    [[nodiscard]] QString word() const;
    [[nodiscard]] QString whyWaiting() const;
    [[nodiscard]] Keyring* keyring() const { return m_keyring; }
    // The name that a server's password has in the keyring.
    static QString secretName(const LedgerServer& server);
    // Where the ledger of one's own lies.
    [[nodiscard]] std::string file() const { return m_file.toStdString(); }

signals:
    void accessChanged();
    void wordChanged();
    // A job was entered.
    void entered();

private:
    void follow();
    void take(const std::optional<LedgerAccess>& access, const QString& whyNot, bool wants);
    void enterWaiting();
    void keeperTold();
    void retireKeeper();

    LedgerSettingsStore& m_settings;
    FileSystem& m_files;
    Keyring* m_keyring;
    QString m_file;
    std::optional<LedgerSettings> m_followed;
    std::optional<LedgerAccess> m_access;
    QString m_whyNot;
    bool m_wantsPassword = false;
    QStringList m_waiting; // to be handed to the keeper
    QStringList m_opened;  // the same
    QTimer m_timer;
    std::size_t m_entered = 0; // by this keeper, as far as told
    QString m_said;
    std::vector<std::jthread> m_retired; // keepers of an earlier place, ending
    std::unique_ptr<LedgerKeeper> m_keeper;
};

} // namespace borewright
