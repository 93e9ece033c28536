// SPDX-License-Identifier: GPL-3.0-or-later
// A ledger's desk over a folder of its own, with a keyring that the test holds.
#pragma once

#include "app/jobs/ledger_desk.h"
#include "app/ledger/ledger_store.h"
#include "app/shell/workshop.h"
#include "core/storage/posix_file_system.h"
#include "core/storage/workbook_file.h"
#include "tests/support/bench_context.h"
#include "tests/support/blocks.h"

#include <QFile>
#include <QTemporaryDir>
#include <QTest>

#include <gtest/gtest.h>

#include <map>

namespace borewright::test {

// Answers later, as a real one does.
class HeldKeyring final : public Keyring {
public:
    std::map<QString, std::string> secrets;
    std::string problem; // why it does nothing; empty = it does

    void read(const QString& name, const Found& then) override {
        QTimer::singleShot(1, [this, name, then] {
            if (!problem.empty()) return then(refuse(problem));
            if (!secrets.contains(name)) return then(refuse("the keyring has no password for it"));
            then(secrets.at(name));
        });
    }
    void write(const QString& name, const std::string& secret, const Done& then) override {
        QTimer::singleShot(1, [this, name, secret, then] {
            if (!problem.empty()) return then(refuse(problem));
            secrets[name] = secret;
            then({});
        });
    }
    void forget(const QString& name, const Done& then) override {
        QTimer::singleShot(1, [this, name, then] {
            if (!problem.empty()) return then(refuse(problem));
            secrets.erase(name);
            then({});
        });
    }
};

class LedgerDeskTest : public testing::Test {
protected:
    // Begins the program's part anew, as its next start does.
    void start(const LedgerSettings& first = {}) {
        desk.reset();
        settings = std::make_unique<LedgerSettingsStore>(files, path("config/ledger.json"));
        if (!(first == LedgerSettings())) settings->set(first);
        desk = std::make_unique<LedgerDesk>(*settings, files, &keyring, path("data/ledger.sqlite"));
        desk->setDelay(std::chrono::milliseconds(20));
    }
    [[nodiscard]] QString path(const QString& name) const { return folder.filePath(name); }
    QString write(const QString& name, const std::string& customer, bool invented = false) const {
        Workbook workbook = inchBlock(1);
        workbook.job.customer = customer;
        workbook.invented = invented;
        const std::string bytes = writeWorkbook(workbook);
        QFile file(path(name));
        EXPECT_TRUE(file.open(QIODevice::WriteOnly));
        file.write(bytes.data(), static_cast<qint64>(bytes.size()));
        return file.fileName();
    }
    // Customers in a ledger, in the order of their names, joined.
    static std::string customersIn(const LedgerAccess& access) {
        const auto store =
            LedgerStore::open(access.place, LedgerStore::Check::beginning, access.password);
        if (!store) return store.error().message();
        const auto rows = (*store)->find({"", LedgerColumn::customer, false, -1});
        if (!rows) return rows.error().message();
        std::string names;
        for (const LedgerRow& row : *rows)
            names += (names.empty() ? "" : ", ") + row.customer;
        return names;
    }
    std::string customers() const {
        return customersIn({{path("data/ledger.sqlite").toStdString(), {}}, {}});
    }
    bool comesTo(const std::string& wanted) const {
        return QTest::qWaitFor([&] { return customers() == wanted; }, 20'000);
    }

    QTemporaryDir folder;
    PosixFileSystem files;
    HeldKeyring keyring;
    std::unique_ptr<LedgerSettingsStore> settings;
    std::unique_ptr<LedgerDesk> desk; // ends before its settings
};

// A bench whose jobs enter that ledger.
class LedgerBenchTest : public LedgerDeskTest {
protected:
    Outside outside() {
        return {files,
                clock,
                dialogs,
                sounds,
                preferences,
                path("rescue"),
                path("workbooks"),
                {},
                {},
                nullptr,
                LedgerMeans{path("data/ledger.sqlite"), path("config/ledger.json"), &keyring, {}}};
    }

    StandingClock clock;
    AnsweringDialogs dialogs;
    CountingSounds sounds;
    PreferencesStore preferences;
};

} // namespace borewright::test
