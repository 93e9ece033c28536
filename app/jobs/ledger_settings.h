// SPDX-License-Identifier: GPL-3.0-or-later
// Where the ledger of jobs is kept, and how it is shown: in a small file of its own in the user's
// configuration folder. Never a password.
#pragma once

#include "app/ledger/ledger_place.h"
#include "core/length/format.h"
#include "core/result.h"
#include "core/storage/file_system.h"

#include <QObject>
#include <QString>
#include <QStringList>

#include <optional>
#include <string>
#include <string_view>

namespace borewright {

struct LedgerSettings {
    // Where the password of a server comes from: the server's own password file, the desk's
    // keyring, or the user at each start.
    enum class Password { passwordFile, keyring, asked };
    enum class Units { ofEachJob, inch, metric };

    bool kept = true;      // jobs are entered as they are saved
    bool onServer = false; // else in a file in the user's data folder
    QString host;
    int port = 5432; // 1 … 65535
    QString database;
    QString user;
    Password password = Password::passwordFile;
    Units units = Units::ofEachJob;
    QStringList waiting; // files that were saved but had not been entered when the program ended
    friend bool operator==(const LedgerSettings&, const LedgerSettings&) = default;
};

// The units chosen; nothing = as each job is naturally shown.
std::optional<DisplayUnits> chosenUnits(LedgerSettings::Units units);

// Where the ledger lies by these settings; `file` is that of one's own.
LedgerPlace placeOf(const LedgerSettings& settings, const std::string& file);

std::string writeLedgerSettings(const LedgerSettings& settings);
// Refuses what is not such a file, naming the field; a field that is missing has its default.
Result<LedgerSettings> readLedgerSettings(std::string_view bytes);

// Holds the settings while the program runs, tells when they change, and keeps them in a file.
class LedgerSettingsStore : public QObject {
    Q_OBJECT
public:
    // `path` empty = in memory alone. A damaged file is put aside, and notice() says so.
    LedgerSettingsStore(FileSystem& files, QString path, QObject* parent = nullptr);
    [[nodiscard]] const LedgerSettings& value() const { return m_value; }
    void set(const LedgerSettings& value);
    // What has to be said about loading or the last save; empty where all is well.
    [[nodiscard]] const QString& notice() const { return m_notice; }

signals:
    void changed();
    void failed(const QString& sentence);

private:
    void load();
    void save();

    FileSystem& m_files;
    QString m_path;
    QString m_notice;
    LedgerSettings m_value;
};

} // namespace borewright
